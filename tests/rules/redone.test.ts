import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { entryLines } from '../../src/journal/where.ts';
import { isBlank } from '../../src/notation/read-line.ts';
import { judge } from '../../src/rules/judging.ts';
import { openSession } from '../../src/rules/session.ts';

const DAY = '2026-11-25';

const SHELF = `salon quay "Quay"
  money GBP
stylist io "Io" at quay
range cream "Larkfield cream" permanent
  mix 1:1.5
  pack 60 g 6.80
range gloss "Tidewater gloss" demi
  mix 1:2
  pack 60 g 5.90
product clay "Peregrine clay" lightener
  mix 1:2
  pack 500 g 24.00
product dev-6 "Cream developer 6" developer 6%
  pack 1 l 7.50
product bond "Mender" additive
  pack 250 ml 32.00
`;

const NAMES = Array.from({ length: 30 }, (_, index) => `client-${'abcdefghijklmnopqrstuvwxyzäöüß'[index]}`);
const CLIENTS = NAMES.map((name) => `client ${name} "${name.toUpperCase()}"\n  natural 6\n`).join('\n');
const MIXES = ['40 cream 6/0 + 60 dev-6', '30 gloss 7/1 + 60 dev-6', '40 clay + 20vol 1:2'];
const VISITS = NAMES.map(
  (name, index) =>
    `visit ${DAY} ${String(9 + (index % 9)).padStart(2, '0')}:00 ${name} by io at quay\n  bowl A ${MIXES[index % 3]}\n  on 10:00 A roots\n  off 10:40 A\n  charge roots 48.00\n`,
).join('\n');

const SHELF_FILE = 'a/shelf.bowl';
const DAY_FILE = 'a/day.bowl';
const begun = () => {
  const files = new Map([
    [SHELF_FILE, SHELF],
    ['a/clients.bowl', CLIENTS],
    [DAY_FILE, VISITS],
  ]);
  const session = openSession();
  for (const [path, text] of files) session.put(path, Buffer.from(text));
  session.settle(DAY).all();
  const change = (path: string, text: string) => {
    files.set(path, text);
    session.put(path, Buffer.from(text));
    return session.settle(DAY);
  };
  return { files, change };
};

const joined = (files: ReadonlyMap<string, string>) =>
  joinSources([...files].map(([path, text]) => readSource(path, Buffer.from(text))));

/** The lines up to the last that says something. */
const spokenTo = (lines: readonly string[]): string =>
  lines.slice(0, lines.findLastIndex((line) => !isBlank(line)) + 1).join('\n');

/** What is typed of each client, what says nothing after her entries apart. */
const typedOf = (files: ReadonlyMap<string, string>): ReadonlyMap<string, string> => {
  const journal = joined(files);
  const textOf = ({ entries, visits }: { entries: readonly { file: string }[]; visits: readonly { file: string }[] }) =>
    [...entries, ...visits].map((stood) => spokenTo(entryLines(journal, stood))).join('\n\n');
  return new Map([...journal.clients].map(([name, client]) => [name, textOf(client)]));
};

const changedIn = (before: ReadonlyMap<string, string>, now: ReadonlyMap<string, string>): string[] =>
  [...new Set([...before.keys(), ...now.keys()])].filter((name) => before.get(name) !== now.get(name)).sort();

const linesOf = (text: string): string[] => text.split('\n');

describe('in a day file with thirty clients', () => {
  const PASTED = [
    [''],
    ['', '', ''],
    ['# looked through'],
    ['  note she was early'],
    ['  left A 4 binned', '  result roots 6'],
    [`visit 2026-11-26 ${NAMES[4]} by io`, '  bowl A 40 cream 6/0 + 60 dev-6', ''],
  ];
  const edit = fc.record({ kind: fc.nat(2), line: fc.nat(400), what: fc.nat(), count: fc.integer({ min: 1, max: 9 }) });

  test('Enter, deletion and pasting anywhere work out the clients typed in, and no other', () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
        const { files, change } = begun();
        for (const { kind, line, what, count } of edits) {
          const before = typedOf(files);
          const lines = linesOf(files.get(DAY_FILE) ?? '');
          const at = line % (lines.length + 1);
          const pasted = PASTED[what % PASTED.length] as string[];
          const text =
            kind === 0
              ? lines.toSpliced(at, 0, '')
              : kind === 1
                ? lines.toSpliced(at, count)
                : lines.toSpliced(at, 0, ...pasted);
          const settled = change(DAY_FILE, text.join('\n'));
          expect([...settled.redone].sort()).toEqual(changedIn(before, typedOf(files)));
          const { findings, answered } = judge(joined(files), DAY).all();
          expect(settled.all()).toEqual({ findings, answered });
        }
      }),
      { numRuns: 8, seed: 13 },
    );
  });
});

describe('on the shelf', () => {
  test('a comment or a blank line works out nobody, and every line is named where it stands', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(60), fc.nat(2)), { minLength: 1, maxLength: 5 }), (typed) => {
        const { files, change } = begun();
        for (const [line, what] of typed) {
          const lines = linesOf(files.get(SHELF_FILE) ?? '');
          const at = line % lines.length;
          const text =
            what === 2
              ? lines.with(at, `${lines[at]}   # the new tube`)
              : lines.toSpliced(at, 0, ['', '  # as delivered'][what] ?? '');
          const settled = change(SHELF_FILE, text.join('\n'));
          expect([...settled.redone]).toEqual([]);
          const { findings, answered } = judge(joined(files), DAY).all();
          expect(settled.all()).toEqual({ findings, answered });
        }
      }),
      { numRuns: 6, seed: 13 },
    );
  });

  const usersOf = (index: number): string[] => NAMES.filter((_, at) => at % 3 === index).sort();

  test.each([
    ['cream', '6.80', usersOf(0)],
    ['gloss', '5.90', usersOf(1)],
    ['clay', '24.00', usersOf(2)],
    ['dev-6', '7.50', [...NAMES].sort()],
    ['bond', '32.00', []],
  ])('a new price of %s works out those who used it', (_name, price, users) => {
    const { files, change } = begun();
    const settled = change(SHELF_FILE, SHELF.replace(price, '9.99'));
    expect([...settled.redone].sort()).toEqual(users);
    expect(settled.all().findings).toEqual(judge(joined(files), DAY).all().findings);
  });

  test('a product works out whoever asked for it in vain, and for none of the others', () => {
    const { files, change } = begun();
    const day = VISITS.replace('bowl A 40 cream 6/0 + 60 dev-6', 'bowl A 40 cream 6/0 + 60 dev-6 + 2 serum');
    change(DAY_FILE, day);
    // Bare strengths were looked for among the developers.
    const settled = change(SHELF_FILE, `${SHELF}product serum "Serum" additive\n`);
    expect([...settled.redone]).toEqual([NAMES[0]]);
    expect(settled.all().findings).toEqual(judge(joined(files), DAY).all().findings);
  });

  test('a developer works out whoever could mean it by its strength', () => {
    const { files, change } = begun();
    const settled = change(SHELF_FILE, `${SHELF}product other-6 "Other 6" developer 6%\n`);
    expect([...settled.redone]).toEqual(expect.arrayContaining(usersOf(2)));
    expect(settled.all().findings).toEqual(judge(joined(files), DAY).all().findings);
  });
});

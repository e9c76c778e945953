import fc from 'fast-check';
import { expect, it } from 'vitest';
import { reckonAll } from '../../src/reckon/visit.ts';
import { toNumber } from '../../src/text/exact.ts';
import { journalOfNotes, SHELF } from './bowls-of.ts';

/** A bowl by client, day and letter. */
type At = { readonly client: string; readonly day: string; readonly bowl: string };
type Line =
  | { readonly kind: 'mix' }
  | { readonly kind: 'pour'; readonly out: string }
  | { readonly kind: 'again'; readonly from: At; readonly half: boolean };
type Bowls = ReadonlyMap<string, { readonly at: At; readonly line: Line }>;
type Portion = { readonly label: string; readonly grams: number; readonly out?: string };

const CLIENTS = ['ada', 'bea', 'cleo'];
const DAYS = ['2026-01-05', '2026-02-05'];
const LETTERS = ['A', 'B', 'C'];

const keyOf = ({ client, day, bowl }: At): string => `${client} ${day} ${bowl}`;
const ALL: readonly At[] = CLIENTS.flatMap((client) =>
  DAYS.flatMap((day) => LETTERS.map((bowl): At => ({ client, day, bowl }))),
);

const at = fc.constantFrom(...ALL);
const line = fc.oneof(
  fc.constant<Line>({ kind: 'mix' }),
  fc.constantFrom(...LETTERS).map((out): Line => ({ kind: 'pour', out })),
  fc.tuple(at, fc.boolean()).map(([from, half]): Line => ({ kind: 'again', from, half })),
  fc.tuple(at, fc.boolean()).map(([from, half]): Line => ({ kind: 'again', from, half })),
);
const bowls = fc.tuple(...ALL.map(() => fc.option(line, { freq: 3 }))).map((lines): Bowls => {
  const made = ALL.flatMap((one, index) => {
    const own = lines[index];
    // A bowl made again from itself names no other bowl, which is another matter than a circle.
    return own === null || own === undefined || (own.kind === 'again' && keyOf(own.from) === keyOf(one))
      ? []
      : [[keyOf(one), { at: one, line: own }] as const];
  });
  return new Map(made);
});

const typed = ({ client, bowl }: At, own: Line): string => {
  if (own.kind === 'mix') return `  bowl ${bowl} 40 clay + 60 dev-6`;
  if (own.kind === 'pour') return `  bowl ${bowl} 10 from ${own.out} + 5 clay`;
  const { from, half } = own;
  return `  again ${bowl} from ${from.client === client ? '' : `${from.client} `}${from.day} ${from.bowl}${half ? ' 50%' : ''}`;
};

const notesOf = (all: Bowls): string =>
  CLIENTS.flatMap((client) =>
    DAYS.flatMap((day) => [
      `visit ${day} ${client}`,
      ...[...all.values()]
        .filter((one) => one.at.client === client && one.at.day === day)
        .map((one) => typed(one.at, one.line)),
    ]),
  ).join('\n');

/** What is in a bowl, by plain recursion. */
const portionsOf = (all: Bowls, circled: ReadonlySet<string>, of: At, path: readonly string[] = []): Portion[] => {
  const key = keyOf(of);
  const line = all.get(key)?.line;
  if (line === undefined || circled.has(key) || path.includes(key)) return [];
  if (line.kind === 'mix')
    return [
      { label: 'clay', grams: 40 },
      { label: 'dev-6', grams: 60 },
    ];
  if (line.kind === 'pour')
    return [
      { label: `out of ${line.out}`, grams: 10, out: line.out },
      { label: 'clay', grams: 5 },
    ];
  const { from, half } = line;
  const isOneVisit = from.client === of.client && from.day === of.day;
  const isThere = (bowl: string): boolean => isOneVisit || (bowl !== of.bowl && all.has(keyOf({ ...of, bowl })));
  const repeat = (source: At, share: number, way: readonly string[]): Portion[] =>
    portionsOf(all, circled, source, way).flatMap(({ label, grams, out }) => {
      if (out === undefined) return [{ label, grams: grams * share }];
      if (isThere(out)) return [{ label, grams: grams * share, out }];
      const then = { ...from, bowl: out };
      const total = portionsOf(all, circled, then, way).reduce((sum, one) => sum + one.grams, 0);
      return total === 0
        ? [{ label, grams: grams * share }]
        : repeat(then, (grams * share) / total, [...way, keyOf(source)]);
    });
  return repeat(from, half ? 0.5 : 1, [...path, key]);
};

/** The bowls that each bowl is made out of, and from there on; on a circle it leads back to itself. */
const reachesOf = (all: Bowls, circled: ReadonlySet<string>): Map<string, Set<string>> => {
  const sources = new Map(
    [...all].map(([key, { at, line }]) => {
      const others = new Set([...circled].filter((one) => one !== key));
      const outs = portionsOf(all, others, at).flatMap(({ out }) => (out === undefined ? [] : [{ ...at, bowl: out }]));
      const typedOnes = line.kind === 'again' ? [line.from] : line.kind === 'pour' ? [{ ...at, bowl: line.out }] : [];
      return [key, [...typedOnes, ...outs].map(keyOf).filter((one) => all.has(one))];
    }),
  );
  return new Map(
    [...sources].map(([key, first]) => {
      const reached = new Set(first);
      for (const one of reached) for (const next of sources.get(one) ?? []) reached.add(next);
      return [key, reached];
    }),
  );
};

/** The circles, each with its bowls. */
const circlesOf = (all: Bowls): string[][] => {
  let circled = new Set(all.keys());
  for (let turn = 0; turn < 10; turn++) {
    const reaches = reachesOf(all, circled);
    const now = new Set([...reaches].filter(([key, reached]) => reached.has(key)).map(([key]) => key));
    const isSettled = now.size === circled.size && [...now].every((key) => circled.has(key));
    circled = now;
    if (!isSettled) continue;
    const reach = (from: string, to: string): boolean => from === to || reaches.get(from)?.has(to) === true;
    const rounds = [...now].map((key) => [...now].filter((one) => reach(key, one) && reach(one, key)).join('\n'));
    return [...new Set(rounds)].map((round) => round.split('\n'));
  }
  throw new Error('the reference does not settle');
};

const rounded = (grams: number): number => Math.round(grams * 1000) / 1000;

it('bowls made out of each other come to what plain recursion makes of them, in any order', () => {
  fc.assert(
    fc.property(bowls, fc.boolean(), (all, turned) => {
      const read = journalOfNotes(`${SHELF}\n${notesOf(all)}`);
      const journal = { ...read, clients: new Map(turned ? [...read.clients].reverse() : read.clients) };
      const reckoned = [...reckonAll(journal)].flatMap(([client, visits]) =>
        visits.flatMap(({ date, bowls: mixed }) => mixed.map((bowl) => ({ client, day: date, bowl }))),
      );
      const circles = circlesOf(all);
      const circled = new Set(circles.flat());
      for (const { client, day, bowl } of reckoned) {
        const one = { client, day, bowl: bowl.name };
        if (!all.has(keyOf(one))) continue;
        const own = bowl.portions.map(({ label, weight }) => [label, weight && rounded(toNumber(weight))]);
        const expected = portionsOf(all, circled, one).map(({ label, grams }) => [label, rounded(grams)]);
        expect(own, `${keyOf(one)} in\n${notesOf(all)}`).toEqual(expected);
      }
      const told = reckoned.flatMap(({ bowl }) => bowl.problems.filter(({ kind }) => kind === 'again-circle'));
      expect(told.length, notesOf(all)).toBe(circles.length);
    }),
    { numRuns: 150 },
  );
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FINDINGS, INDEX, startDrawing } from '../../src/cli/watch/draw.ts';
import { openSession } from '../../src/rules/session.ts';
import { DAY, SHELF } from './watching.ts';

const ROOT = '/notes';
const HERS = `${ROOT}/ada.bowl`;
const COMMON = `${ROOT}/shelf.bowl`;

const dateOf = (index: number): string =>
  `${2022 + Math.floor(index / 12)}-${`${(index % 12) + 1}`.padStart(2, '0')}-10`;

const visitOf = (index: number): string[] => [
  `visit ${dateOf(index)} 10:00 ada`,
  '  bowl A 40 clay + 80 dev-6',
  '  on 10:20 A lengths',
  `  off 10:${index % 3 === 0 ? 35 : 50} A lengths`,
];

const NOTES = ['client ada "Ada"', '  natural 5', ...Array.from({ length: 44 }, (_, index) => visitOf(index)).flat()];

/** Pages as a folder holds them: what a taking of a state says is to be drawn is drawn, and no more. */
const startFolder = () => {
  const [session, drawing] = [openSession(), startDrawing(ROOT)];
  const stands = new Map<string, string | undefined>();
  const settle = (files: ReadonlyMap<string, string>, day = DAY): readonly string[] => {
    for (const [path, text] of files) session.put(path, Buffer.from(text));
    const { draw, gone } = drawing.take(session.settle(day), day);
    for (const file of gone) stands.delete(file);
    for (const file of draw) stands.set(file, drawing.page(file));
    expect([...stands.keys()].sort()).toEqual([...drawing.files()].sort());
    return draw;
  };
  return { stands, settle, drawing };
};

const cold = (files: ReadonlyMap<string, string>): ReadonlyMap<string, string | undefined> => {
  const { stands, settle } = startFolder();
  settle(files);
  return stands;
};

const begun = (): Map<string, string> =>
  new Map([
    [COMMON, SHELF],
    [HERS, `${NOTES.join('\n')}\n`],
  ]);

const LINES = [
  '  note another',
  '  result lengths 9 gold',
  `  about ${dateOf(3)} "went brassy"`,
  '  reaction 10:30 A itching',
  '  zzqx',
  `visit ${dateOf(8)} 16:00 ada`,
  `visit ${DAY} 16:00 ada`,
  '  bowl B 30 clay + 60 dev-6',
  `  again C from ${dateOf(2)} A`,
  '',
  '  hair fine, length chin',
];

type Edit = { readonly at: number; readonly put: number | undefined };
const edits = fc.array(
  fc.record({
    at: fc.nat({ max: NOTES.length - 1 }),
    put: fc.option(fc.nat({ max: LINES.length - 1 }), { nil: undefined }),
  }),
  { minLength: 1, maxLength: 3 },
);

describe('the pages of a long history', () => {
  test('are after any edits what they are drawn anew', () => {
    fc.assert(
      fc.property(edits, (all: readonly Edit[]) => {
        const { stands, settle } = startFolder();
        const files = begun();
        settle(files);
        const lines = [...NOTES];
        for (const { at, put } of all) {
          if (put === undefined) lines.splice(at, 1);
          else lines.splice(at, 0, LINES[put] as string);
          files.set(HERS, `${lines.join('\n')}\n`);
          settle(files);
        }
        expect(stands).toEqual(cold(files));
      }),
      { numRuns: 5, seed: 4 },
    );
  });

  test('are drawn again where a change bears on them alone', () => {
    const { settle } = startFolder();
    const files = begun();
    expect(settle(files)).toEqual(['clients/ada.html', 'clients/ada.2022.html', 'clients/ada.2023.html']);
    const text = files.get(HERS) ?? '';
    const edited = (now: string): readonly string[] => settle(new Map([[HERS, now]]));
    expect(edited(`${text}  note more\n`)).toEqual(['clients/ada.html']);
    const told = `${text}  note more\n  about ${dateOf(1)} "went brassy"\n`;
    expect(edited(told)).toEqual(['clients/ada.html', 'clients/ada.2022.html']);
    expect(settle(new Map(), '2026-11-26')).toEqual(['clients/ada.html']);
    expect(settle(new Map([[COMMON, SHELF.replace('Grey', 'Blue')]]), '2026-11-26')).toHaveLength(3);
  });

  test('lead to the card, and the card to them; they go with their client', () => {
    const { settle, stands, drawing } = startFolder();
    const files = begun();
    settle(files);
    expect(stands.get('clients/ada.html')).toContain('<a href="ada.2022.html">12 visits of 2022 in full</a>');
    expect(stands.get('clients/ada.2022.html')).toContain('<a href="ada.html">Card</a>');
    expect(drawing.page(INDEX)).not.toContain('ada.2022');
    expect(drawing.page(FINDINGS)).toBeDefined();
    settle(new Map([[HERS, '']]));
    expect(stands.size).toBe(0);
  });
});

import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findFiles } from '../../src/journal/find.ts';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource, type Source } from '../../src/journal/source.ts';
import { judge } from '../../src/rules/judging.ts';
import type { Finding } from '../../src/text/finding.ts';
import { fromOf, toOf } from '../../src/text/span.ts';

const JOURNAL = 'journals/harbour-row';
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const shelf = findFiles(JOURNAL)
  .filter((path) => /salon|shelf/.test(path) && !path.includes('stock'))
  .map((path) => readSource(path, readFileSync(path)));
const notes = findFiles(JOURNAL)
  .filter((path) => path.includes('clients'))
  .map((path) => readFileSync(path, 'utf8').split('\n'));

const lines = fc
  .constantFrom(...notes)
  .chain((file) =>
    fc
      .tuple(fc.nat(file.length - 1), fc.integer({ min: 1, max: 60 }))
      .map(([from, count]) => file.slice(from, from + count)),
  );

/** A few slips of the hand: lines lost, doubled and swapped; letters lost, doubled and put in. */
const slips = fc.array(
  fc.record({
    kind: fc.constantFrom('lose', 'double', 'swap', 'cut', 'type', 'digit'),
    line: fc.nat(59),
    column: fc.nat(60),
    typed: fc.constantFrom(' ', '+', ':', '-', '/', '"', ',', '0', 'A', '%', '~', '?', 'é', '\0'),
  }),
  { minLength: 1, maxLength: 8 },
);

type Slip = { readonly kind: string; readonly line: number; readonly column: number; readonly typed: string };

const slip = (all: readonly string[], { kind, line, column, typed }: Slip): string[] => {
  const out = [...all];
  const at = line % Math.max(1, out.length);
  const text = out[at] ?? '';
  if (kind === 'lose') out.splice(at, 1);
  else if (kind === 'double') out.splice(at, 0, text);
  else if (kind === 'swap') out.splice(at, 2, out[at + 1] ?? '', text);
  else if (kind === 'cut') out[at] = text.slice(0, column);
  else if (kind === 'digit') out[at] = text.replace(/\d/, typed);
  else out[at] = text.slice(0, column) + typed + text.slice(column);
  return out;
};

const isWithin = ({ place }: Pick<Finding, 'place'>, sources: ReadonlyMap<string, Source>): boolean => {
  const line = sources.get(place.file)?.lines[place.line];
  return line !== undefined && fromOf(place.at) >= 0 && toOf(place.at) <= Math.max(line.length, 1);
};

/** Seconds to go on for, where a longer hunt is asked for. */
const seconds = process.env.BOWLBOOK_FUZZ;

test(
  'whatever is typed, the rules answer, and point into the notes',
  () => {
    fc.assert(
      fc.property(lines, slips, (start, hand) => {
        const text = hand.reduce(slip, start).join('\n');
        const journal = joinSources([...shelf, readSource('typed.bowl', bytes(text))]);
        const { findings, answered } = judge(journal).all();
        for (const finding of [...findings, ...answered]) {
          expect(isWithin(finding, journal.sources)).toBe(true);
          for (const second of finding.also ?? []) expect(isWithin(second, journal.sources)).toBe(true);
          expect(finding.message).toMatch(/^\S.*\.$/u);
          expect(finding.message).not.toMatch(/undefined|NaN|\[object/u);
        }
      }),
      seconds === undefined
        ? { numRuns: 250, seed: 20_260_904 }
        : { numRuns: 1_000_000, interruptAfterTimeLimit: Number(seconds) * 1000 },
    );
  },
  60_000 + Number(seconds ?? 0) * 1000,
);

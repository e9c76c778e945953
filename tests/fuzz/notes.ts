import fc from 'fast-check';
import { SCRAPS } from '../../.scripts/fuzz/scraps.ts';
import { linesOf } from '../../src/text/decode.ts';
import { demo } from '../notation/demo.ts';
import { examples } from '../notation/examples.ts';

const whole = [...demo, ...examples].map(({ text }) => text);
const lines = whole.flatMap(linesOf);
const anyLine = fc.constantFrom(...lines);
const scrap = fc.oneof(fc.constantFrom(...SCRAPS), fc.string({ unit: 'grapheme', maxLength: 3 }));

/** A run of lines of valid notes. */
const run = fc
  .tuple(fc.constantFrom(...whole), fc.nat(), fc.integer({ min: 1, max: 40 }))
  .map(([text, start, count]) => {
    const all = linesOf(text);
    return all.slice(start % all.length, (start % all.length) + count).join('\n');
  });

type Slip = {
  readonly kind: 'put' | 'drop' | 'twice' | 'swap' | 'line' | 'lines';
  at: number;
  size: number;
  text: string;
};
const slip: fc.Arbitrary<Slip> = fc.record({
  kind: fc.constantFrom(
    'put' as const,
    'drop' as const,
    'twice' as const,
    'swap' as const,
    'line' as const,
    'lines' as const,
  ),
  at: fc.nat(),
  size: fc.integer({ min: 1, max: 6 }),
  text: scrap,
});

const swapLines = (text: string, at: number): string => {
  const all = text.split('\n');
  const place = at % all.length;
  const [taken = ''] = all.splice(place, 1);
  all.splice((at * 7) % (all.length + 1), 0, taken);
  return all.join('\n');
};

/** What one slip makes of a text: characters put in, left out, typed twice, swapped; lines swapped or put in. */
const slipped = (text: string, { kind, at, size, text: put }: Slip): string => {
  const from = at % (text.length + 1);
  const to = Math.min(text.length, from + size);
  const [before, here, after] = [text.slice(0, from), text.slice(from, to), text.slice(to)];
  if (kind === 'put') return before + put + here + after;
  if (kind === 'drop') return before + after;
  if (kind === 'twice') return before + here + here + after;
  if (kind === 'swap') return before + [...here].reverse().join('') + after;
  return kind === 'lines' ? swapLines(text, at) : `${before}\n${put}\n${here}${after}`;
};

/** Valid notes with slips of the hand in them. */
export const slippedNotes: fc.Arbitrary<string> = fc
  .tuple(run, fc.array(slip, { minLength: 1, maxLength: 8 }))
  .map(([text, slips]) => slips.reduce(slipped, text));

/** One line: of valid notes, or with slips in it, or of scraps alone. */
export const noteLine: fc.Arbitrary<string> = fc
  .oneof(
    anyLine,
    fc
      .tuple(anyLine, fc.array(slip, { minLength: 1, maxLength: 4 }))
      .map(([text, slips]) => slips.reduce(slipped, text)),
    fc
      .tuple(anyLine, fc.array(scrap, { maxLength: 12 }))
      .map(([text, scraps]) => `${text.trim().split(' ')[0]} ${scraps.join('')}`),
    fc.array(scrap, { maxLength: 12 }).map((scraps) => scraps.join('')),
  )
  .map((text) => text.replaceAll('\n', ' '));

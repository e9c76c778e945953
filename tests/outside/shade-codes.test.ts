import { describe, expect, test } from 'vitest';
import { readSource } from '../../src/journal/source.ts';
import type { Shade } from '../../src/records/schema/values.ts';
import { exact } from '../../src/text/exact.ts';
import { blendShades, toneWords } from '../../src/trade/blend.ts';

/** A shade as a bowl line says it, depth and tone signs. */
const shadeOf = (code: string): Pick<Shade, 'depth' | 'tones'> => {
  const note = `visit 2026-09-04 wren-abbott\n  bowl A 20 cream ${code} + 30 dev-6`;
  const [fact] = readSource('notes.bowl', Buffer.from(note)).entries[0]?.entry.facts ?? [];
  if (fact?.word !== 'bowl') throw new Error(`no mix: ${code}`);
  const { depth, tones } = fact.parts[0]?.shade ?? {};
  return { ...(depth !== undefined && { depth }), ...(tones !== undefined && { tones }) };
};

const wordsOf = (signs: string): string[] => toneWords(signs, new Map());

describe('shade codes', () => {
  test.each(['4.6', '4/6', '4-6'])(
    '%s is depth 4, tone 6 (page "International colour charts", hairdressing)',
    (code) => {
      expect(shadeOf(code)).toEqual({ depth: 4, tones: '6' });
    },
  );

  test('6-62 has the primary tone 6 and the secondary 2 (trade school lesson on shade numbers)', () => {
    const { depth, tones = '' } = shadeOf('6-62');
    expect([depth, tones]).toEqual([6, '62']);
    const blend = blendShades([{ weight: exact(30), depth, tones: wordsOf(tones) }]);
    expect(blend.tones.map(({ family }) => family)).toEqual(['red', 'violet']);
  });

  test.each([
    ['3', 'gold'],
    ['4', 'copper'],
    ['5', 'mahogany'],
    ['6', 'red'],
  ])('the digit %s is %s where no range says otherwise (both the page and the lesson)', (digit, word) => {
    expect(wordsOf(digit)).toEqual([word]);
  });
});

import { describe, expect, it } from 'vitest';
import { CAUTION_TOPICS, caution, FIRST } from '../../src/trade/cautions.ts';

describe('cautions', () => {
  it('cover their topics', () => {
    expect(CAUTION_TOPICS).toEqual([
      'skin-test',
      'reaction',
      'lightener',
      'peroxide',
      'metallic',
      'persulphate',
      'under-16',
      'scalp',
      'eyes',
      'medical',
    ]);
  });

  it.each(CAUTION_TOPICS)('on %s state the danger and defer to maker, law and licensed practice', (topic) => {
    const text = caution(topic);
    expect(text.endsWith(`. ${FIRST}`)).toBe(true);
    expect(text.length).toBeGreaterThan(FIRST.length + 40);
    expect(text).not.toMatch(/safe|please|oops|invalid|illegal|\?/i);
  });

  it('put the maker, the law and the licence first', () => {
    expect(FIRST).toMatch(/maker's instructions, local law and licensed practice/);
  });
});

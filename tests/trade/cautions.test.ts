import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CAUTION_TOPICS, caution, FIRST } from '../../src/trade/cautions.ts';

describe('cautions', () => {
  it('are each shown by somebody', () => {
    const others = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter(
      (name) => name.endsWith('.ts') && !name.endsWith('trade/cautions.ts'),
    );
    const code = others.map((name) => readFileSync(`src/${name}`, 'utf8')).join('\n');
    expect(CAUTION_TOPICS.filter((topic) => !code.includes(`'${topic}'`))).toEqual([]);
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

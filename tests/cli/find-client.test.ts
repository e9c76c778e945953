import { describe, expect, test } from 'vitest';
import { findClient } from '../../src/cli/find-client.ts';
import { journalOf } from '../pages/compiled.ts';

const journal = journalOf(`client zoë-harrow "Zoë Harrow"
client ines-carvalho "Inês Carvalho"
client inês-figueiral "Inês Figueiral"
client lukasz-bo "Łukasz Bø"
client ann "Ann"
client anna "Anna"
`);

const nameOf = (typed: string): string => findClient(journal, typed).name;

describe('a client', () => {
  test('is found with or without her accents and capitals, by her name, her full name or a part of it', () => {
    for (const typed of ['zoe', 'zoe-harrow', 'ZOË', 'Zoë Harrow', 'zoe harrow', 'zoe\u0308-harrow'])
      expect(nameOf(typed)).toBe('zoë-harrow');
    expect(nameOf('ines-figueiral')).toBe('inês-figueiral');
    expect(nameOf('lukasz bo')).toBe('lukasz-bo');
    expect(nameOf('Łukasz')).toBe('lukasz-bo');
  });

  test('whose whole name is typed is meant, though it is a part of another’s', () => {
    expect(nameOf('ann')).toBe('ann');
    expect(nameOf('ANNA')).toBe('anna');
  });

  test('is refused where several fit, naming them, or none, naming the near', () => {
    expect(() => nameOf('ines')).toThrow(/2 clients fit `ines`: `ines-carvalho` .+, `inês-figueiral`/);
    expect(() => nameOf('inês')).toThrow(/2 clients fit/);
    expect(() => nameOf('zoee')).toThrow(/No client goes by `zoee`/);
    expect(() => nameOf(' ')).toThrow(/No client/);
  });
});

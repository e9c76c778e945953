import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { LOOKS } from '../../.scripts/grammar-ebnf.ts';
import { grammarFiles, ruleFiles } from '../../.scripts/grammar-files.ts';
import { tokenPatterns } from '../../.scripts/grammar-rules.ts';
import { wordRows } from '../../.scripts/word-table.ts';
import { tokensOf } from '../../src/notation/lexer.ts';
import { BODY_WORDS } from '../../src/notation/words.ts';

const files = [...ruleFiles(), ...grammarFiles()].map(([path, text]) => ({ path, text }));

describe('generated files are what npm run generate would write now', () => {
  test.each(files)('$path', ({ path, text }) => {
    expect(readFileSync(path, 'utf8')).toBe(text);
  });

  test.each(['grammar/schema', 'grammar/diagrams'])('%s holds nothing else', (folder) => {
    const made = files.map(({ path }) => path).filter((path) => path.startsWith(`${folder}/`));
    expect(
      readdirSync(folder)
        .map((name) => `${folder}/${name}`)
        .sort(),
    ).toEqual(made.sort());
  });
});

describe('the formal grammar', () => {
  test('has an example of every kind of token, and of no other', () => {
    expect(Object.keys(LOOKS).sort()).toEqual(
      tokenPatterns()
        .map(({ name }) => name)
        .sort(),
    );
  });

  test.each(Object.entries(LOOKS).flatMap(([name, looks]) => looks.map((text) => ({ name, text }))))(
    '`$text` is read as one $name',
    ({ name, text }) => {
      const kinds = tokensOf(text).map(({ tokenType, image }) => [tokenType.name, image]);
      expect(kinds).toEqual(name === 'Space' ? [] : [[name, text]]);
    },
  );
});

test('diagrams hold no script and fetch nothing', () => {
  for (const { path, text } of files.filter(({ path }) => path.endsWith('.svg')))
    expect(text.replace('http://www.w3.org/2000/svg', ''), path).not.toMatch(/script|https?:|href|url\(|on\w+=/i);
});

const rows = wordRows();

describe('the word table leaves nothing open', () => {
  test('has a row a word', () => {
    expect(rows.map(({ word }) => word)).toEqual(Object.keys(BODY_WORDS));
  });

  test.each(rows)(
    '$word has a record, is shown somewhere, and is worked out or checked',
    ({ under, record, shown, used }) => {
      expect(under.length).toBeGreaterThan(0);
      expect(record).not.toBe('');
      expect(shown).not.toEqual([]);
      expect(used).not.toEqual([]);
    },
  );

  test('what a client or a visit says is shown on a page', () => {
    const own = rows.filter(({ under }) => under.includes('client') || under.includes('visit'));
    expect(
      own.filter(({ shown }) => !shown.some((place) => /^card|^product/.test(place))).map(({ word }) => word),
    ).toEqual([]);
  });
});

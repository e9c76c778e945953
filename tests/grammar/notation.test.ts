import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readSource } from '../../src/journal/source.ts';
import { BODY_WORDS, HEADERS } from '../../src/notation/words.ts';
import { RULES } from '../../src/rules/all.ts';

const text = readFileSync('grammar/notation.md', 'utf8');

/** A header for the blocks that show lines alone. */
const HEADS: Readonly<Record<string, string>> = {
  salon: 'salon harbour "Harbour Row"',
  range: 'range cream "Larkfield cream" permanent',
  product: 'product clay "Peregrine clay" lightener',
  stock: 'stock 2026-08-01',
  client: 'client ada-quill "Ada Quill"',
  visit: 'visit 2026-09-04 ada-quill',
};

const blocks = [...text.matchAll(/^```note ?(\w*)\n([\s\S]*?)^```$/gm)].map(([, kind = '', lines = '']) => ({
  kind,
  lines,
  first: lines.split('\n')[0] ?? '',
}));
const headings = [...text.matchAll(/^### `([\w-]+)`$/gm)].map(([, word = '']) => word);
const named = new Set(text.match(/(?<=`)[a-z]+(?:-[a-z\d]+)+(?=`)/g));

describe('the reference', () => {
  test('has one section a word, and none for a word that is not of the notation', () => {
    expect([...headings].sort()).toEqual(Object.keys(BODY_WORDS).sort());
  });

  test('shows every header', () => {
    const typed = blocks.filter(({ kind }) => kind === '').map(({ lines }) => lines);
    expect(HEADERS.filter((word) => !typed.some((lines) => new RegExp(`^${word} `, 'm').test(lines)))).toEqual([]);
  });

  test('shows every word in an example', () => {
    const shown = new Set(blocks.flatMap(({ lines }) => lines.match(/^ *[a-z]+/gm)?.map((word) => word.trim())));
    expect(Object.keys(BODY_WORDS).filter((word) => !shown.has(word))).toEqual([]);
  });

  test('names every rule, so that each stands beside the word it watches', () => {
    expect(RULES.map(({ name }) => name).filter((name) => !named.has(name))).toEqual([]);
  });

  test('names no rule that does not exist', () => {
    const said = [...text.matchAll(/Reported[^:]*:([^.]*)\./g)].flatMap(([, list = '']) =>
      list.match(/(?<=`)[\w-]+(?=`)/g),
    );
    const rules = new Set(RULES.map(({ name }) => name));
    expect(said.length).toBeGreaterThan(0);
    expect(said.filter((name) => name !== undefined && name !== null && !rules.has(name))).toEqual([]);
  });

  test.each(blocks)('is read without a notice: $first', ({ kind, lines }) => {
    const head = kind === '' ? '' : `${HEADS[kind]}\n`;
    const { entries } = readSource('note.bowl', Buffer.from(head + lines));
    expect(entries.flatMap(({ notices }) => notices.map(({ message }) => message))).toEqual([]);
    expect(entries.flatMap(({ entry }) => entry.facts.filter(({ word }) => word === 'unread'))).toEqual([]);
  });
});

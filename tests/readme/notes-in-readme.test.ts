import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSource } from '../../src/journal/source.ts';
import { FIRST_WORDS } from '../../src/notation/words.ts';
import { RULE_NAMES } from '../../src/rules/rule-names.ts';
import { findIn } from '../rules/compile.ts';

const README = readFileSync('README.md', 'utf8');

/** The first block without a language after some words. */
const blockAfter = (words: string): string => /^```\n(.*?)^```$/ms.exec(README.slice(README.indexOf(words)))?.[1] ?? '';

const found = (notes: string): string[] =>
  findIn(notes).findings.map(({ severity, rule, message }) => `${severity} ${rule}: ${message}`);

test('the example at its head checks clean by the shelf of its tutorial', () => {
  const visit = blockAfter('# Bowlbook');
  expect(visit).toContain('visit 2026-09-04');
  const shelf = blockAfter('These two are on it');
  const notes = (from: string): string => `${shelf}stylist io "Io"\nclient wren-abbott "Wren Abbott"\n${from}`;
  expect(found(notes(visit))).toEqual([]);
  expect(found(notes(visit.replace('  off 15:20 A top\n', '')))).not.toEqual([]);
});

const LIST = blockAfter('### Every first word');
const lines = LIST.trimEnd().split('\n');

test('the list of first words names each of them, and no word twice', () => {
  const body = lines.filter((line) => line.startsWith(' ')).map((line) => /\S+/.exec(line)?.[0]);
  expect(new Set(body).size).toBe(body.length);
  expect(FIRST_WORDS.filter((word) => !lines.some((line) => line.trim().startsWith(`${word} `)))).toEqual([]);
});

test('every line of it is read whole, under the header where it stands', () => {
  const { entries, notices } = readSource('words.bowl', new TextEncoder().encode(LIST));
  const all = [...notices, ...entries.flatMap((stood) => stood.notices)];
  expect(all.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
  const facts = entries.flatMap(({ entry }) => entry.facts.map(({ word }) => word as string));
  expect(facts).not.toContain('unread');
  expect([...facts, ...entries.map(({ entry }) => entry.kind as string)].sort()).toEqual(
    [...FIRST_WORDS, 'product'].sort(),
  );
});

test('the words that stand under a client stand under a visit too', () => {
  const both = ['zone band "left, 8 cm down"', 'hold lightener 4w', 'caution sore scalp', 'test stretch springs-back'];
  const { entries } = readSource(
    'both.bowl',
    new TextEncoder().encode(
      `client wren-abbott\n${both.join('\n')}\nvisit 2026-09-04 wren-abbott\n${both.join('\n')}\n`,
    ),
  );
  expect(entries.flatMap((stood) => stood.notices)).toEqual([]);
});

test('the rule that it allows is one', () => {
  expect(RULE_NAMES).toContain(/because (\S+)/.exec(LIST)?.[1]);
});

test('a remark is not judged but where it says so', () => {
  const shelf = blockAfter('These two are on it');
  const visit = (line: string): string[] =>
    found(
      `${shelf}client wren-abbott "Wren Abbott"\nvisit 2026-09-04 wren-abbott\n${line}\nbowl A 40 clay + 6% 1:2\nplace A lengths off-scalp foil\non 14:00 A lengths\ncheck 14:10 A orange\ncheck 14:20 A gold\noff 14:25 A\nresult lengths 7`,
    );
  expect(visit('aim "as long as it takes"')).toEqual([]);
  expect(visit('start lengths 5 "shiny, even"')).toEqual([]);
  expect(visit('call 2026-09-05 "lids swollen"')[0]).toMatch(/^stop harm-told/);
  expect(visit('start lengths 5 "stretched like gum and broke"')[0]).toMatch(/^fix harm-told/);
  expect(visit('test strand clay 20min "stretched like gum and broke"')[0]).toMatch(/^stop adverse-test/);
  expect(visit('reaction 14:05 A "burning"')[0]).toMatch(/^stop reaction-left-on/);
});

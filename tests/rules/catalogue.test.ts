import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ruleNames, rulesIndex } from '../../.scripts/generate-rules.ts';
import { READING_RULES } from '../../src/notation/reading-rules.ts';
import { RULES } from '../../src/rules/all.ts';
import { FAMILIES } from '../../src/rules/rule.ts';
import { RULE_NAMES } from '../../src/rules/rule-names.ts';
import { badBytesOf, findIn } from './compile.ts';

const folders = readdirSync('src/rules', { withFileTypes: true }).filter((entry) => entry.isDirectory());

test('the list of rules is the folder', () => {
  expect(readFileSync('src/rules/all.ts', 'utf8')).toBe(rulesIndex());
  expect(readFileSync('src/rules/rule-names.ts', 'utf8')).toBe(ruleNames());
  expect(RULE_NAMES).toEqual(RULES.map(({ name }) => name));
});

test('every folder is a family', () => {
  expect(folders.map(({ name }) => name).filter((name) => !(FAMILIES as readonly string[]).includes(name))).toEqual([]);
});

test('every family has a rule', () => {
  expect(FAMILIES.filter((family) => !RULES.some((rule) => rule.family === family))).toEqual([]);
});

test('no name is given twice', () => {
  expect(new Set(RULE_NAMES).size).toBe(RULE_NAMES.length);
});

test('every notice of the reader has its rule, equally grave and for the same reason', () => {
  const reading = RULES.filter(({ over }) => over === 'reading');
  expect(Object.fromEntries(reading.map(({ name, severity, why }) => [name, { severity, why }]))).toEqual(
    READING_RULES,
  );
});

describe.each(RULES.map((rule) => ({ name: rule.name, rule })))('$name', ({ rule }) => {
  test('stands in the file of its name, in the folder of its family', () => {
    expect(readFileSync(`src/rules/${rule.family}/${rule.name}.ts`, 'utf8')).toContain(`name: '${rule.name}'`);
  });

  test('says why in one sentence of at most 140 characters', () => {
    expect(rule.why.length).toBeLessThanOrEqual(140);
    expect(rule.why).toMatch(/^[A-Z][^?]*[^.?]\.$/u);
    expect(rule.what).toMatch(/^[A-Z`][^?]*\.$/u);
  });

  test('speaks as the house speaks', () => {
    const [finding] = findIn(badBytesOf(rule)).findings;
    const words = [rule.what, rule.why, finding?.message, finding?.expected, finding?.todo, finding?.label].join(' ');
    expect(words).not.toMatch(
      /\bsafe|\?|\binvalid|\billegal|unexpected token|\bplease|\boops|\byou wrote\b|\bcolor\b|\bgray\b/iu,
    );
    expect(finding?.message).toMatch(/\.$/u);
  });
});

/** Rules that stop for what is written, not for what could happen to somebody. */
const STOPS_FOR_THE_NOTES = ['again-circle', 'merge-conflict', 'more-left-than-mixed'];

test('every rule that stops shows a caution, but those that stop for the notes themselves', () => {
  const bare = RULES.filter(({ severity, caution }) => severity === 'stop' && caution === undefined);
  expect(bare.map(({ name }) => name).sort()).toEqual(STOPS_FOR_THE_NOTES);
});

const CITING = RULES.flatMap(({ name, source }) => ('cites' in source ? [{ name, ...source }] : []));

test.each(CITING)('$name cites the $kind: $cites', ({ kind, cites }) => {
  // Of a publication the edition or article, of the shelf and a policy the line to look at.
  expect(cites).toMatch(kind === 'published' ? /Annex|page|entry|edition/u : / line/u);
});

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ruleNames, rulesIndex } from '../../.scripts/generate-rules.ts';
import { READING_RULES } from '../../src/notation/reading-rules.ts';
import { RULES } from '../../src/rules/all.ts';
import { FAMILIES, type ProblemKind } from '../../src/rules/rule.ts';
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

/** Every kind of problem, as the compiler knows them: one that is new has to be named here. */
const PROBLEMS: Readonly<Record<ProblemKind, true>> = {
  'unknown-name': true,
  'no-shade': true,
  'shade-of-product': true,
  'unknown-shade': true,
  'no-developer': true,
  'several-developers': true,
  'missing-weight': true,
  disagree: true,
  claim: true,
  'outside-blend': true,
  'no-density': true,
  'unknown-measure': true,
  'again-missing': true,
  'again-circle': true,
  'again-undated': true,
  'again-differs': true,
  'no-such-bowl': true,
  'bowl-twice': true,
  'either-half-day': true,
  'outside-hours': true,
  'relative-without-on': true,
  'relative-to-several': true,
  'bowl-unnamed': true,
  'off-before-on': true,
  'check-before-on': true,
  'no-off': true,
  'off-without-on': true,
  'said-minutes': true,
  'span-backwards': true,
};

test('every problem of bowls and clock has one rule; a name in a bowl is found with the names beside it', () => {
  const taken = RULES.flatMap((rule) => (rule.over === 'problem' ? rule.kinds : []));
  expect([...taken, 'unknown-name'].toSorted()).toEqual(Object.keys(PROBLEMS).toSorted());
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

  test('names its source, with the edition or article where it is published', () => {
    if (rule.source.kind === 'published') expect(rule.source.cites).toMatch(/Annex|page|entry|edition/u);
    else if ('cites' in rule.source) expect(rule.source.cites).toMatch(/ line/u);
  });

  test('shows a caution where it can stop for a hazard', () => {
    const hazards = ['strength', 'testing', 'age', 'cautions', 'lift'];
    if (hazards.includes(rule.family) && rule.severity === 'stop') expect(rule.caution).toBeDefined();
  });
});

import { describe, expect, test } from 'vitest';
import { RULES } from '../../src/rules/all.ts';
import { exampleFinding } from '../../src/rules/example-finding.ts';
import { FAMILIES } from '../../src/rules/rule.ts';
import { explainRule, ruleList, ruleNamed } from '../../src/rules/rule-text.ts';
import { badBytesOf, findIn } from './compile.ts';

describe.each(RULES.map((rule) => ({ name: rule.name, rule })))('explain $name', ({ rule }) => {
  test('says what, why, from where, with both examples and how to give a reason', () => {
    const page = explainRule(rule);
    for (const part of [`# ${rule.name}\n`, rule.what, rule.why, 'Source: ', `because ${rule.name} "the reason"`])
      expect(page).toContain(part);
    expect(page.match(/^```$/gm)).toHaveLength(6);
    expect(page).toMatch(/^ *\^+$/m);
  });
});

test('the finding of the example is told where it is given', () => {
  const rule = ruleNamed('ratio-off-mix');
  if (rule === undefined) throw new Error('the rule is gone');
  const [finding] = findIn(badBytesOf(rule)).findings;
  expect(explainRule(rule)).not.toContain('1:2.67');
  expect(explainRule(rule, finding)).toContain(finding?.message);
  expect(explainRule(rule, finding)).toContain(finding?.expected);
});

test.each(['ratio-off-mix', 'not-utf-8'])('the example of %s is compiled as notes of its own', (name) => {
  const rule = ruleNamed(name);
  if (rule === undefined) throw new Error('the rule is gone');
  const [finding] = findIn(badBytesOf(rule)).findings;
  expect(finding?.rule).toBe(name);
  expect(exampleFinding(rule)).toEqual(finding);
  const { badBytes: _, ...good } = { ...rule, bad: rule.good };
  expect(exampleFinding(good)).toBeUndefined();
});

test('a stop is told to stay in sight', () => {
  const [stop] = RULES.filter(({ severity, over }) => severity === 'stop' && over !== 'reading');
  expect(stop && explainRule(stop)).toContain('never hidden');
});

test('how a salon tunes a rule is told, and that a stop is not tuned', () => {
  const page = (severity: string): string => {
    const rule = RULES.find((one) => one.severity === severity);
    return rule === undefined ? '' : explainRule(rule);
  };
  expect(page('fix')).toMatch(/`policy rule [a-z0-9-]+ mind "the reason"`/u);
  expect(page('mind')).toMatch(/`policy rule [a-z0-9-]+ fix "the reason"`/u);
  expect(page('stop')).not.toContain('policy rule');
});

test.each([
  [{ kind: 'published', cites: 'A page, 2nd edition' }, 'Source: A page, 2nd edition.'],
  [{ kind: 'shelf', cites: 'its mix line' }, 'Source: your own shelf: its mix line.'],
  [{ kind: 'policy', cites: 'its line' }, 'Source: your salon’s own policy: its line.'],
  [{ kind: 'common practice' }, 'Source: common practice, no source.'],
  [{ kind: 'from memory' }, 'Source: from memory, not looked up.'],
  [{ kind: 'notation' }, 'Source: the notation itself.'],
] as const)('the source is told by its kind: %s', (source, text) => {
  const [rule] = RULES;
  expect(rule && explainRule({ ...rule, source })).toContain(text);
});

test('there is no rule of an unknown name', () => {
  expect(ruleNamed('no-such-rule')).toBeUndefined();
});

test('the list holds every rule once, under its family, in the order of the families', () => {
  const list = ruleList();
  const names = [...list.matchAll(/^- `([a-z0-9-]+)`/gm)].map((match) => match[1]);
  expect(names.toSorted()).toEqual(RULES.map(({ name }) => name).toSorted());
  const families = [...list.matchAll(/^## ([a-z]+):/gm)].map((match) => match[1]);
  expect(families).toEqual(FAMILIES.filter((family) => RULES.some((rule) => rule.family === family)));
});

import { describe, expect, test } from 'vitest';
import { gainedAndLost } from '../../src/cli/watch/gained-and-lost.ts';
import { RULES } from '../../src/rules/all.ts';
import type { Finding } from '../../src/text/finding.ts';
import { badBytesOf, findIn } from './compile.ts';

const SHELF = `range cream "Larkfield cream" permanent
  mix 1:1.5
product dev-6 "Cream developer" developer 6%
client wren-abbott "Wren Abbott"
  test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
`;
const visit = (...lines: readonly string[]): string =>
  `${SHELF}visit 2026-09-04 10:30 wren-abbott\n${lines.map((line) => `  ${line}\n`).join('')}`;
const foundIn = (notes: string): readonly Finding[] => findIn(notes).findings;
const keysIn = (notes: string): string[] => foundIn(notes).map(({ key }) => key);

const RATIO = 'bowl A 40 cream 6/0 + 80 dev-6';

describe('the key of a finding', () => {
  test('says rule, entry, line and what is marked, and no figure', () => {
    expect(keysIn(visit(RATIO))).toEqual(['ratio-off-mix | visit wren-abbott 2026-09-04 10:30 | bowl A | 0 dev-0']);
  });

  test('stays as it is while lines move and figures change', () => {
    const moved = `# a comment\n\n${visit('note "before"', 'bowl A 41 cream 6/0 + 83 dev-6')}`;
    expect(keysIn(moved)).toEqual(keysIn(visit(RATIO)));
    expect(foundIn(moved)[0]?.message).not.toBe(foundIn(visit(RATIO))[0]?.message);
  });

  test('is another for another bowl, another day, or another name', () => {
    expect(keysIn(visit(RATIO.replace('bowl A', 'bowl B')))).not.toEqual(keysIn(visit(RATIO)));
    expect(keysIn(visit(RATIO).replace('09-04', '09-05'))).not.toEqual(keysIn(visit(RATIO)));
    expect(keysIn(visit('bowl A 40 craem 6/0'))).not.toEqual(keysIn(visit('bowl A 40 creem 6/0')));
  });

  test.each(RULES.map((rule) => ({ name: rule.name, rule })))(
    'of $name stays when lines are put above its example',
    ({ rule }) => {
      const bytes = badBytesOf(rule);
      const below = Buffer.concat([Buffer.from('# above\n'), bytes]);
      const [was, is] = [bytes, below].map((each) => findIn(each).findings.filter((one) => one.rule === rule.name));
      expect(was?.length).toBeGreaterThan(0);
      expect(is?.map(({ key }) => key)).toEqual(was?.map(({ key }) => key));
    },
  );
});

test('figures are values beside the sentence', () => {
  const figures = { hasRatio: 2, leastRatio: 1.5, mostRatio: 1.5, baseGrams: 40, developerGrams: 80 };
  expect(foundIn(visit(RATIO))[0]?.figures).toEqual(figures);
});

test('what is only moved or worded anew is neither gained nor lost; what is gone, and graver, is', () => {
  const [before, now] = [foundIn(visit(RATIO)), foundIn(`\n${visit(RATIO.replace('80', '85'))}`)];
  expect(gainedAndLost(before, now)).toEqual({ gained: [], lost: [] });
  expect(gainedAndLost(before, []).lost).toEqual(before);
  const graver = now.map((one): Finding => ({ ...one, severity: 'stop' }));
  expect(gainedAndLost(now, graver)).toEqual({ gained: graver, lost: now });
});

import { describe, expect, it } from 'vitest';
import { skinTestFound, testedAt } from '../../src/rules/skin-tests.ts';
import { lastOf } from '../reckon/reckoned.ts';

const CLIENT = 'client wren-abbott "Wren Abbott"\n';

describe('how the skin tests of a visit stand', () => {
  const statusOf = (lines: string): string[] =>
    testedAt(lastOf(lines)).map(({ standing: { product, status } }) => `${product} ${status}`);

  it('asks for a test of what holds oxidative dye', () => {
    const visit = 'visit 2026-09-04 14:00 wren-abbott\nbowl A 30 cream 7/0 + 45 dev-6\nbowl B 30 neon teal';
    expect(statusOf(`${CLIENT}test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear\n${visit}`)).toEqual([
      'cream valid',
    ]);
    expect(statusOf(visit)).toEqual(['cream missing']);
    expect(statusOf('visit 2026-09-04 14:00 wren-abbott\nbowl B 30 neon teal')).toEqual([]);
  });

  it('says of a test that was made after the visit that it was', () => {
    const test = `${CLIENT}test skin 2026-09-20 11:00 cream read 2026-09-22 11:30 clear\n`;
    const visit = lastOf(`${test}visit 2026-09-04 14:00 wren-abbott\nbowl A 30 cream 7/0 + 45 dev-6\non 14:10 A roots`);
    const [found] = skinTestFound(visit, testedAt(visit), ['missing'], 'write it.');
    expect(found?.message).toBe('cream: no skin test is noted before it; that of 2026-09-20 was made after.');
  });

  it('takes a reaction at an earlier visit into account, not one at the visit itself', () => {
    const policy = 'salon other\npolicy skin-test void after reaction\n';
    const test = `${CLIENT}test skin 2026-06-01 11:00 cream read 2026-06-03 11:30 clear\n`;
    const visit = (date: string, more = ''): string =>
      `visit ${date} 14:00 wren-abbott at other\nbowl A 30 cream 7/0 + 45 dev-6\non 14:10 A roots\n${more}\noff 14:40 A\n`;
    expect(statusOf(policy + test + visit('2026-07-01', 'reaction 14:20 A nape stinging'))).toEqual(['cream valid']);
    expect(
      statusOf(policy + test + visit('2026-07-01', 'reaction 14:20 A nape stinging') + visit('2026-08-01')),
    ).toEqual(['cream void']);
  });
});

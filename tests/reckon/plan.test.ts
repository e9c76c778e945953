import { describe, expect, it } from 'vitest';
import { askedBowls, type Plan, plansFor } from '../../src/reckon/ahead/plan.ts';
import { figure } from '../../src/reckon/say.ts';
import { exact, toNumber } from '../../src/text/exact.ts';
import { reckonedOf } from './reckoned.ts';

const plansOf = (notes: string, on: string): Plan[] => plansFor(reckonedOf(notes), on);

/** Each bowl in one line: its letter, its weight, its parts. */
const mixesOf = (notes: string, on: string): string[] =>
  plansOf(notes, on).flatMap(({ bowls }) =>
    bowls.map(({ bowl, total, portions }) =>
      [bowl.name, total && figure(total), portions.map(({ mix }) => (mix ? figure(mix) : '?')).join('+')].join(' '),
    ),
  );

const FIRST = `
visit 2026-01-02 wren-abbott
  bowl A 40 cream 7/0 + 60 dev-6
  place A roots apply on-scalp
`;

/** The second visit comes 42 days after the first. */
const second = (lines: string): string => `${FIRST}
visit 2026-02-13 wren-abbott
${lines}`;

const ROOTS = '  bowl A 24 cream 7/0 + 36 dev-6\n  place A roots apply on-scalp\n';

describe('a bowl planned for a day', () => {
  it('is the forecast from bowls like it, with a little to spare, shared between its parts', () => {
    const notes = `visit 2026-02-13 wren-abbott\n${ROOTS}  left A 10 binned\n`;
    const [planned] = plansOf(notes, '2026-04-03')[0]?.bowls ?? [];
    // 60 less 10; a tenth to spare while the salon's notes tell nothing.
    expect(planned?.by).toBe('forecast');
    expect(planned?.forecast).toMatchObject({ need: 50, scaled: false });
    expect(planned?.need && toNumber(planned.need)).toBe(55);
    expect(mixesOf(notes, '2026-04-03')).toEqual(['A 55 22+33']);
  });

  it('goes by what the salon’s bowls teach', () => {
    const spread = { low: 0.9, high: 1.1, mix: 1.02 };
    const visits = reckonedOf(`visit 2026-02-13 wren-abbott\n${ROOTS}  left A 10 binned\n`);
    const [plan] = plansFor(visits, '2026-04-03', { share: 0, there: spread, elsewhere: spread });
    expect(plan?.bowls[0]?.total && figure(plan.bowls[0].total)).toBe('51');
  });

  it('is the same again, and no more each time, while no note says what was left', () => {
    expect(mixesOf(`visit 2026-02-13 wren-abbott\n${ROOTS}`, '2026-03-27')).toEqual(['A 60 24+36']);
  });

  it('is scaled no further than by twice or half the growth', () => {
    const notes = second(`${ROOTS}  left A 10 binned\n`);
    const need = (on: string): number => plansOf(notes, on)[0]?.bowls[0]?.forecast?.need ?? 0;
    // 42 days before, at 0.35 mm a day.
    const most = (50 * (0.5 + (0.5 * 29.4) / 20)) / (0.5 + (0.5 * 14.7) / 20);
    expect(need('2026-03-27')).toBeCloseTo(50, 9);
    expect(need('2026-05-08')).toBeCloseTo(most, 9);
    expect(need('2027-05-08')).toBeCloseTo(most, 9);
    const least = (50 * (0.5 + (0.5 * 7.35) / 20)) / (0.5 + (0.5 * 14.7) / 20);
    expect(need('2026-02-20')).toBeCloseTo(least, 9);
  });

  it('is the share that next asks for, of the whole bowl and whatever was left over, with the forecast beside it', () => {
    const notes = second(`${ROOTS}  left A 9 binned\n  next 6w A -20%\n`);
    expect(mixesOf(notes, '2026-04-03')).toEqual(['A 48 19+29']);
    const [planned] = plansOf(notes, '2026-04-03')[0]?.bowls ?? [];
    expect(planned).toMatchObject({ asked: -20, by: 'asked' });
    expect(planned?.forecast?.mix).toBeGreaterThan(0);
    expect(mixesOf(notes.replace('-20%', '-100%'), '2026-03-27')).toEqual(['A 56 22+34']);
  });

  it('counts further mixes of it, and what was left of any of them', () => {
    const notes = second(
      '  bowl A 20 clay + 40 dev-6\n  more A 30\n  place A top weave x6 foil\n  left A 6, A2 4 binned\n',
    );
    const [planned] = plansOf(notes, '2026-04-03')[0]?.bowls ?? [];
    expect([planned?.mixes, planned?.mixed, planned?.left]).toEqual([['A', 'A2'], exact(90), exact(10)]);
    expect(plansOf(notes, '2026-04-03')[0]?.bowls).toHaveLength(1);
    expect(mixesOf(notes, '2026-04-03')).toEqual(['A 88 29+59']);
  });

  it('is what was used the last time where no bowl like it can be known', () => {
    const notes = second('  bowl A 40 clay + 80 dev-6\n  left A 10\n  bowl C 40 from A + 10 clay\n  left C 8\n');
    const bowls = plansOf(notes, '2026-04-03')[0]?.bowls ?? [];
    expect(bowls.map(({ by }) => by)).toEqual(['forecast', 'last time']);
    const [, out] = bowls;
    expect(out?.need).toEqual(exact(42));
    expect([out?.mixed, out?.left, out?.forecast]).toEqual([exact(50), exact(8), undefined]);
    const unsaid = second('  bowl A 40 clay + 80 dev-6\n  bowl C 40 from A + 10 clay\n');
    const [, whole] = plansOf(unsaid, '2026-04-03')[0]?.bowls ?? [];
    expect([whole?.need, whole?.left, whole?.forecast]).toEqual([exact(50), undefined, undefined]);
  });

  it('has no weight where the note lacks one, or more is left than was mixed', () => {
    expect(mixesOf('visit 2026-02-13 wren-abbott\n  bowl A clay + dev-6\n', '2026-04-03')).toEqual(['A  ?+?']);
    expect(mixesOf(second(`${ROOTS}  left A 60 binned\n`), '2026-04-03')).toEqual(['A  ?+?']);
  });

  it('comes from visits before the day alone, and from the last at the roots where the last colour was none', () => {
    const toned = `${second(ROOTS)}
visit 2026-03-06 wren-abbott
  bowl T 20 neon teal
  place T ends apply
`;
    const dates = (on: string): string[] => plansOf(toned, on).map(({ visit }) => visit.date);
    expect(dates('2026-03-20')).toEqual(['2026-03-06', '2026-02-13']);
    expect(dates('2026-03-06')).toEqual(['2026-02-13']);
    expect(dates('2026-01-02')).toEqual([]);
  });
});

describe('the bowls that next asks to change', () => {
  it('are those alone, as it asks', () => {
    const [visit] = reckonedOf(`visit 2026-02-13 wren-abbott\n${ROOTS}  bowl B 20 clay + 40 dev-6\n  next 6w B +10%\n`);
    expect(visit && askedBowls(visit, [visit], '2026-04-01').map(({ bowl, total }) => [bowl.name, total])).toEqual([
      ['B', exact(66)],
    ]);
  });
});

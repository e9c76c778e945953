import { describe, expect, it } from 'vitest';
import { bowlsIn, bowlsOf, fig, journalOfNotes, pointedAt, problemsOf, SHELF, shownOf } from './bowls-of.ts';

const todosOf = (lines: string): (string | undefined)[] =>
  bowlsOf(lines).flatMap(({ problems }) => problems.map(({ todo }) => todo));

const nearOf = (lines: string): (readonly string[] | undefined)[] =>
  bowlsOf(lines).flatMap(({ problems }) => problems.map(({ near }) => near));

const rolesOf = (lines: string, shelf?: string): string[] =>
  bowlsOf(lines, shelf === undefined ? {} : { shelf }).flatMap(({ portions }) =>
    portions.map(({ label, role }) => `${label} ${role}`),
  );

describe('names', () => {
  it('finds product, shade and label on the shelf', () => {
    const [bowl] = bowlsOf('bowl A 30 cream 7/43 + 20 toner clear + 10 clay + 3 bond + 2 oil + 5 water + 45 dev-6');
    expect(bowl?.portions.map(({ item, shade, label, role }) => [item?.name, shade, label, role])).toEqual([
      ['cream', '7/43', 'cream 7/43', 'base'],
      ['toner', 'clear', 'toner clear', 'base'],
      ['clay', undefined, 'clay', 'base'],
      ['bond', undefined, 'bond', 'additive'],
      ['oil', undefined, 'oil', 'base'],
      [undefined, undefined, 'water', 'water'],
      ['dev-6', undefined, 'dev-6', 'developer'],
    ]);
    expect(bowl?.problems).toEqual([]);
  });

  it('tells a measure, a shade and a product apart by the shelf', () => {
    expect(shownOf('bowl A 2 scoop clay + 40 dev-6')).toBe('20 clay + 40 dev-6 = 60');
    expect(shownOf('bowl A clay 2 scoop + 40 dev-6')).toBe('20 clay + 40 dev-6 = 60');
    expect(shownOf('bowl A 2 clay scoop + 40 dev-6')).toBe('20 clay + 40 dev-6 = 60');
    expect(shownOf('bowl A 20 clear toner + 20 gloss-act')).toBe('20 toner clear + 20 gloss-act = 40');
    expect(problemsOf('bowl A 2 pump clay + 40 dev-6')).toEqual([
      'unknown-measure: `pump` is no measure of `clay`; it has `scoop`.',
    ]);
    expect(problemsOf('bowl A 2 pump bond')).toEqual(['unknown-measure: `pump` is no measure of `bond`.']);
    expect(problemsOf('bowl A 20 g blue clay')).toEqual([
      'shade-of-product: `clay` has no shades, and the note says `blue`.',
    ]);
    expect(problemsOf('bowl A 20 clay blue')).toEqual([
      'shade-of-product: `clay` has no shades, and the note says `blue`.',
    ]);
    expect(problemsOf('bowl A 20 g 7/1 old cream + 30 dev-6')).toEqual([
      'unknown-shade: `cream` has two shades in one part, `7/1` and `old`.',
    ]);
    expect(problemsOf('bowl A 20 cream 7/1 clear + 30 dev-6')).toEqual([
      'unknown-shade: `cream` has two shades in one part, `7/1` and `clear`.',
    ]);
  });

  it('offers the nearest names for one that is not on the shelf, and says nothing else of that bowl', () => {
    const note = 'bowl A 25 caly + 50 dev-7 1:3 + 3 cream = 99';
    expect(problemsOf(note)).toEqual([
      'unknown-name: `caly` is not on the shelf.',
      'unknown-name: `dev-7` is not on the shelf.',
    ]);
    expect(nearOf(note)).toEqual([['clay'], ['dev-3', 'dev-6', 'dev-9']]);
    expect(todosOf('bowl A 25 caly')[0]).toBe('Write `clay`, or put `caly` on the shelf.');
    expect(todosOf('bowl A 25 zzzzzz')[0]).toBe('Put `zzzzzz` on the shelf, as in `product zzzzzz additive`.');
    expect(problemsOf('bowl A 25 caly 7/1 + 7% 1:2')).toEqual(['unknown-name: `caly` is not on the shelf.']);
    expect(problemsOf('bowl A 25 pearll cremm + 30 dev-6')).toEqual(['unknown-name: `cremm` is not on the shelf.']);
  });

  it('offers a range for an unknown name with a shade, which no product has, and the nearest name first', () => {
    const first = (note: string) => todosOf(note)[0];
    expect(first('bowl A 30 zzzzzz 7/3')).toBe('Put `zzzzzz` on the shelf, as in `range zzzzzz permanent`.');
    expect(first('bowl A 7.43 30 zzzzzz + 6% 1:1')).toBe('Put `zzzzzz` on the shelf, as in `range zzzzzz permanent`.');
    expect(first('bowl A 2 zzzzzz + 30 cream 7/1')).toBe('Put `zzzzzz` on the shelf, as in `product zzzzzz additive`.');
    expect(first('bowl A 30 caly 7/1')).toBe('Write `clay`, or put `caly` on the shelf.');
  });

  it('still weighs what has no name on the shelf', () => {
    expect(shownOf('bowl A 25 caly + 20vol 1:2')).toBe('25 caly + 50 dev-6 = 75');
    expect(shownOf('bowl A 25 clay + caly 1:2')).toBe('25 clay + 50 caly = 75');
    expect(shownOf('bowl A 2 scoop caly + 30 dev-6')).toBe('? caly + 30 dev-6 = ?');
    expect(problemsOf('bowl A 2 scoop caly + 30 dev-6')).toEqual(['unknown-name: `caly` is not on the shelf.']);
    const [bowl] = bowlsOf('bowl A 25 caly + 50 dev-6');
    expect([bowl?.ready, bowl?.cost, bowl?.base]).toEqual([undefined, undefined, undefined]);
  });

  it('points at the name, the amount or the ratio that is wrong', () => {
    const journal = journalOfNotes(
      `${SHELF}\nvisit 2026-09-04 wren-abbott\n  bowl A 25 caly + 50 dev-6\n  bowl B 40 clay + 80 dev-6 1:1.5\n  bowl C 30 ml clay + 3 cream + 7% 1:1\n  plus C 2 bnod\n`,
    );
    expect(pointedAt(journal, bowlsIn(journal))).toEqual(['caly', '1:1.5', 'bnod']);
  });

  it('reports an amount, a ratio or a lot that belongs to nothing', () => {
    expect(problemsOf('bowl A 40 + 80 dev-6')).toEqual(['unknown-name: An amount of the mix has no name.']);
    expect(problemsOf('bowl A 40 clay + 80 dev-6 + 1:2')).toEqual(['unknown-name: A ratio of the mix has no name.']);
    expect(problemsOf('bowl A 40 clay + lot K2 + 80 dev-6')).toEqual(['unknown-name: A part of the mix has no name.']);
    expect(todosOf('bowl A 40 clay + 80 dev-6 + 1:2')).toEqual(['Write it after the developer, as in `20vol 1:2`.']);
    expect(todosOf('bowl A 40 + 80 dev-6')).toEqual(['Write of what, as in `40 clay`.']);
  });
});

describe('shades', () => {
  it('wants one for a range and none for a product', () => {
    expect(problemsOf('bowl A 30 cream + 45 dev-6')).toEqual([
      'no-shade: `cream` is a range, and the note gives no shade.',
    ]);
    expect(problemsOf('bowl A 30 clay 7/1 + 45 dev-6')).toEqual([
      'shade-of-product: `clay` has no shades, and the note says `7/1`.',
    ]);
    expect(shownOf('bowl A 30 clay 7/1 + 45 dev-6')).toBe('30 clay + 45 dev-6 = 75');
    expect(problemsOf('bowl A 30 cream + 30 clay 7/1 + 45 dev-6')).toEqual([
      'no-shade: `cream` is a range, and the note gives no shade.',
      'shade-of-product: `clay` has no shades, and the note says `7/1`.',
    ]);
  });

  it('knows the tones and the names that a range declares', () => {
    expect(problemsOf('bowl A 30 cream 7/43 + 10 cream 7.0 + 5 cream clear + 45 dev-6')).toEqual([]);
    expect(problemsOf('bowl A 30 cream 7/4E + 45 dev-6')).toEqual([
      'unknown-shade: `E` is not a tone of `cream`; its tones line has 0, 1, 3, 4.',
    ]);
    expect(nearOf('bowl A 30 cream 7/4E + 45 dev-6')).toEqual([['7/4']]);
    expect(todosOf('bowl A 30 cream 7/4E + 45 dev-6')).toEqual(['Write `7/4`, or add `E` to `tones`.']);
    expect(todosOf('bowl A 30 cream 7/8 + 45 dev-6')).toEqual(['Write one of these, or add it to `tones`.']);
    expect(problemsOf('bowl A 30 cream claer + 45 dev-6')).toEqual([
      'unknown-shade: `claer` is not a shade of `cream`.',
    ]);
    expect(todosOf('bowl A 30 cream claer + 45 dev-6')).toEqual(['Write `clear`, or add it to `shades`.']);
    expect(todosOf('bowl A 30 cream moonlight + 45 dev-6')).toEqual([
      'Write depth and tone, as in `7/43`, or add it to `shades`.',
    ]);
  });

  it('takes any shade of a range that declares none', () => {
    const shelf =
      'range neon semi\n  mix none\nrange mono semi\n  shades teal\nrange pair toner\n  tones NV cool, N plain, V violet';
    expect(problemsOf('bowl A 30 neon teal + 2 neon 7/9', { shelf })).toEqual([]);
    expect(problemsOf('bowl A 30 mono 7/9 + 3 mono teal', { shelf })).toEqual([]);
    expect(problemsOf('bowl A 30 pair 7/NV + 3 pair 7/VN + 2 pair 7/V-N', { shelf })).toEqual([]);
    expect(problemsOf('bowl A 30 mono jade', { shelf })).toEqual(['unknown-shade: `jade` is not a shade of `mono`.']);
    expect(problemsOf('bowl A 30 pair jade', { shelf })).toEqual(['unknown-shade: `jade` is not a shade of `pair`.']);
    expect(problemsOf('bowl A 30 pair 7/NX', { shelf })).toEqual([
      'unknown-shade: `X` is not a tone of `pair`; its tones line has NV, N, V.',
    ]);
  });
});

describe('strengths', () => {
  it('means the developer that the bases use, else the only one on the shelf', () => {
    const shelf = `${SHELF}\nproduct other-6 developer 6%`;
    expect(shownOf('bowl A 40 clay + 20vol 1:2', { shelf })).toBe('40 clay + 80 dev-6 = 120');
    expect(shownOf('bowl A 40 clay + 6% 1:2', { shelf })).toBe('40 clay + 80 dev-6 = 120');
    expect(shownOf('bowl A 20 toner 9/1 + 1,9% 1:1', { shelf })).toBe('20 toner 9/1 + 20 gloss-act = 40');
    expect(shownOf('bowl A 20 toner 9/1 + 9% 1:1', { shelf })).toBe('20 toner 9/1 + 20 dev-9 = 40');
    expect(problemsOf('bowl A 20 toner 9/1 + 6% 1:1', { shelf })).toEqual([
      'several-developers: 2 developers on the shelf are 6 %: `dev-6` and `other-6`.',
    ]);
  });

  it('takes a developer without a strength of its own at the strength that is typed', () => {
    const shelf = 'range cream permanent\n  uses cream-dev\nproduct cream-dev developer\nproduct dev-6 developer 6%';
    const [bowl] = bowlsOf('bowl A 30 cream 7/0 + 9% 1:1.5', { shelf });
    expect([bowl?.portions[1]?.label, fig(bowl?.portions[1]?.strength), fig(bowl?.ready)]).toEqual([
      'cream-dev',
      '9',
      '5.4',
    ]);
    expect(shownOf('bowl A 30 cream 7/0 + 6% 1:1.5', { shelf: shelf.replace('  uses cream-dev\n', '') })).toBe(
      '30 cream 7/0 + 45 dev-6 = 75',
    );
    expect(shownOf('bowl A 30 cream 7/0 + 12% 1:1.5', { shelf: shelf.replace('  uses cream-dev\n', '') })).toBe(
      '30 cream 7/0 + 45 cream-dev = 75',
    );
    const [named] = bowlsOf('bowl A 30 cream 7/0 + 45 cream-dev 12%', { shelf });
    expect([fig(named?.ready), named?.problems.length]).toEqual(['7.2', 0]);
    const [without] = bowlsOf('bowl A 30 cream 7/0 + 45 cream-dev', { shelf });
    expect([without?.ready, fig(without?.ratio)]).toEqual([undefined, '1.5']);
  });

  it('says which strengths there are when none fits', () => {
    expect(problemsOf('bowl A 40 clay + 7% 1:2')).toEqual([
      'no-developer: No developer on the shelf is 7 %; there are 1.9 %, 3 %, 6 % and 9 %.',
    ]);
    expect(todosOf('bowl A 40 clay + 7% 1:2')).toEqual(['Write one of these, or a blend: `7% from dev-6 dev-9`.']);
    expect(todosOf('bowl A 40 clay + 12% 1:2')).toEqual(['Put it on the shelf, as in `product dev-12 developer 12%`.']);
    expect(nearOf('bowl A 40 clay + 12% 1:2')).toEqual([['dev-9']]);
    expect(shownOf('bowl A 40 clay + 7% 1:2')).toBe('40 clay + 80 7 % developer = 120');
    expect(problemsOf('bowl A 40 clay + 7% 1:2', { shelf: 'product clay lightener' })).toEqual([
      'no-developer: No developer on the shelf is 7 %.',
    ]);
    expect(
      problemsOf('bowl A 40 clay + 7% 1:2', { shelf: 'product clay lightener\nproduct dev-6 developer 6%' }),
    ).toEqual(['no-developer: No developer on the shelf is 7 %; there is 6 %.']);
  });

  it('compares a strength beside a developer with its own', () => {
    expect(problemsOf('bowl A 40 clay + 80 dev-6 20vol')).toEqual([]);
    expect(problemsOf('bowl A 40 clay + 80 dev-6 30vol')).toEqual(['disagree: The note says 9 %, and `dev-6` is 6 %.']);
  });

  it('reads a product and its developer without a plus between them', () => {
    expect(shownOf('bowl A 40 clay 20vol 1:2')).toBe('40 clay + 80 dev-6 = 120');
    expect(shownOf('bowl A 20 toner pearl 1.9%')).toBe('20 toner pearl + 20 gloss-act = 40');
    expect(shownOf('bowl A 2 scoop clay 20vol 1:2')).toBe('20 clay + 40 dev-6 = 60');
    expect(problemsOf('bowl A 40 caly 20vol 1:2')).toEqual(['unknown-name: `caly` is not on the shelf.']);
  });
});

describe('blends', () => {
  it('makes a strength out of two', () => {
    expect(shownOf('bowl A 30 clay + 7.5% from dev-6 dev-9 1:2')).toBe('30 clay + 30 dev-6 + 30 dev-9 = 90');
    expect(shownOf('bowl A 30 clay + 60 7% from dev-9 dev-6')).toBe('30 clay + 20 dev-9 + 40 dev-6 = 90');
    expect(shownOf('bowl A 30 clay + 60 2% from dev-6 water')).toBe('30 clay + 20 dev-6 + 40 water = 90');
    expect(shownOf('bowl A 30 clay + 60 6% from dev-6 dev-9')).toBe('30 clay + 60 dev-6 = 90');
    expect(shownOf('bowl A 30 clay + 60 6% from dev-6')).toBe('30 clay + 60 dev-6 = 90');
    expect(fig(bowlsOf('bowl A 30 clay + 60 2% from dev-6 water')[0]?.developer)).toBe('60');
  });

  it('says what the developers can make', () => {
    expect(problemsOf('bowl A 30 clay + 10% from dev-6 dev-9 1:2')).toEqual([
      'outside-blend: `dev-6` and `dev-9` make 6 % to 9 %, and the note says 10 %.',
    ]);
    expect(problemsOf('bowl A 30 clay + 3% from dev-6 dev-9 1:2')).toEqual([
      'outside-blend: `dev-6` and `dev-9` make 6 % to 9 %, and the note says 3 %.',
    ]);
    expect(problemsOf('bowl A 30 clay + 60 3% from dev-6')).toEqual([
      'outside-blend: `dev-6` is 6 %, and the note says 3 %.',
    ]);
    expect(problemsOf('bowl A 30 clay + 60 3% from clay')).toEqual([
      'outside-blend: `clay` has no strength of its own to blend with.',
    ]);
    expect(problemsOf('bowl A 30 clay + 60 4% from dev-3 dev-6 dev-9')).toEqual([
      'missing-weight: 3 developers make 4 % in more than one way.',
    ]);
    expect(problemsOf('bowl A 30 clay + 60 from dev-3 dev-6')).toEqual([
      'missing-weight: The note blends `dev-3` and `dev-6` and does not say to what strength.',
    ]);
    expect(problemsOf('bowl A 30 clay + 60 7% from dev-6 dve-9')).toEqual([
      'unknown-name: `dve-9` is not on the shelf.',
    ]);
    expect(shownOf('bowl A 30 clay + 10% from dev-6 dev-9 1:2')).toBe('30 clay + 60 dev-6 and dev-9 = 90');
  });
});

describe('blends of more or fewer', () => {
  it('of three developers ask for amounts, wherever the strength lies between them', () => {
    const note = 'bowl A 30 clay + 60 7% from dev-3 dev-6 dev-9';
    expect(problemsOf(note)).toEqual(['missing-weight: 3 developers make 7 % in more than one way.']);
    expect(todosOf(note)).toEqual(['Write an amount of each, or name two of dev-3, dev-6 and dev-9.']);
  });

  it('take the strength of a developer from the shelf, not from its name', () => {
    const shelf = 'product clay lightener\nproduct dev-4 developer\nproduct dev-9 developer 9%';
    expect(problemsOf('bowl A 30 clay + 60 7% from dev-4 dev-9', { shelf })).toEqual([
      'outside-blend: `dev-4` has no strength of its own to blend with.',
    ]);
  });

  it('are reckoned, not typed', () => {
    const [bowl] = bowlsOf('bowl A 30 clay + 60 7.5% from dev-6 dev-9');
    expect(bowl?.portions.map(({ typed }) => typed)).toEqual([true, false, false]);
    expect(bowl?.portions.map((portion) => 'how' in portion)).toEqual([false, false, false]);
    expect(bowl?.about).toBe(false);
  });
});

describe('roles', () => {
  it('makes something the base when no colour is', () => {
    expect(rolesOf('bowl A 30 conditioner + 10 bond')).toEqual(['conditioner base', 'bond additive']);
    expect(rolesOf('bowl A 30 bond + dev-6 1:2')).toEqual(['bond base', 'dev-6 developer']);
    expect(rolesOf('bowl A 30 clay + 30 conditioner')).toEqual(['clay base', 'conditioner additive']);
    expect(rolesOf('bowl A 10 water + 5 dev-6')).toEqual(['water water', 'dev-6 developer']);
    expect(rolesOf('bowl A 40 mist', 'product mist goods')).toEqual(['mist base']);
    expect(rolesOf('bowl A 40 wax + 4 clay', 'product wax treatment\nproduct clay lightener')).toEqual([
      'wax additive',
      'clay base',
    ]);
  });

  it('without a shelf takes a name typed after the ratio to stand outside it, and one with a ratio of its own not', () => {
    const noShelf = { shelf: '' };
    expect(shownOf('bowl A 40 clay + 20vol 1:2 + 3 bond', noShelf)).toBe('40 clay + 80 6 % developer + 3 bond = 123');
    expect(rolesOf('bowl A 40 clay + 20vol 1:2 + 3 bond', '')).toEqual([
      'clay base',
      '6 % developer developer',
      'bond additive',
    ]);
    expect(rolesOf('bowl A 40 clay + 20vol 1:2 + 30 cream 1:1 + 2 water', '')).toEqual([
      'clay base',
      '6 % developer developer',
      'cream base',
      'water water',
    ]);
    expect(shownOf('bowl A 3 bond + 40 clay + 20vol 1:2', noShelf)).toBe('3 bond + 40 clay + 86 6 % developer = 129');
  });

  it('reckons a ratio of what is no developer too', () => {
    expect(shownOf('bowl A 20 clay + conditioner 1:2')).toBe('20 clay + 40 conditioner = 60');
    expect(shownOf('bowl A 20 conditioner + water 1:4')).toBe('20 conditioner + 80 water = 100');
  });

  it('reads a ratio after the base as that of all developers', () => {
    expect(shownOf('bowl A 40 clay 1:2 + 20vol')).toBe('40 clay + 80 dev-6 = 120');
    expect(shownOf('bowl A 40 clay 1:2 + 50 dev-6 + dev-9')).toBe('40 clay + 50 dev-6 + 30 dev-9 = 120');
    expect(problemsOf('bowl A 30 cream 7/0 1:1.5 + 40 clay 1:2 + dev-6')).toEqual([
      'disagree: Bowl A has 105 g dev-6, and 1:2 of 70 g cream 7/0 and clay is 140 g: 35 g apart.',
    ]);
    expect(problemsOf('bowl A 40 clay 1:2')).toEqual([
      'no-developer: The ratio 1:2 is of a developer, and the mix names none.',
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import { reckonBowls } from '../../src/reckon/bowl/bowls.ts';
import type { BowlReckoned } from '../../src/reckon/model.ts';
import { bowlsIn, bowlsOf, fig, journalOfNotes, problemsOf, SHELF, shown, shownOf } from './bowls-of.ts';

const lines = (bowls: readonly BowlReckoned[]): string[] => bowls.map((bowl) => `${bowl.name}: ${shown(bowl)}`);
const todosOf = (note: string): (string | undefined)[] =>
  bowlsOf(note).flatMap(({ problems }) => problems.map(({ todo }) => todo));

describe('weights of a bowl', () => {
  it('takes the one ratio of the mix lines where the note leaves the developer open', () => {
    const [bowl] = bowlsOf('bowl A 40 cream 7/0 + dev-6');
    expect(bowl && shown(bowl)).toBe('40 cream 7/0 + 60 dev-6 = 100');
    expect(bowl?.portions.map(({ typed, how }) => [typed, how])).toEqual([
      [true, undefined],
      [false, '1:1.5 from its mix line'],
    ]);
    expect(shownOf('bowl A 90 g of 60 cream 7/0 + dev-6')).toBe('60 cream 7/0 + 30 dev-6 = 90');
    expect(problemsOf('bowl A 40 clay + dev-6')).toEqual(['missing-weight: Bowl A does not say how much dev-6.']);
    expect(problemsOf('bowl A 40 cream 7/0 + 10 toner 9/1 + dev-6')).toEqual([
      'missing-weight: Bowl A does not say how much dev-6.',
    ]);
    expect(problemsOf('bowl A 40 cream 7/0 + 2p dev-6')).toEqual([
      'missing-weight: Bowl A does not say how much dev-6.',
    ]);
    expect(shownOf('bowl A 40 caly + 10 cream 7/0 + dev-6')).toBe('40 caly + 10 cream 7/0 + ? dev-6 = ?');
    expect(problemsOf('bowl A 40 cream 7/0 + dev-6 + dev-9')).toEqual([
      'missing-weight: Bowl A does not say how much dev-6 and dev-9.',
    ]);
    expect(problemsOf('bowl A 10 water + dev-6')).toEqual(['missing-weight: Bowl A does not say how much dev-6.']);
  });

  it('names the weight that is missing', () => {
    expect(problemsOf('bowl A 40 clay + bond + 80 dev-6')).toEqual([
      'missing-weight: Bowl A does not say how much bond.',
    ]);
    expect(problemsOf('bowl A clay + 20vol 1:2')).toEqual(['missing-weight: There is no weight in bowl A.']);
    expect(problemsOf('bowl A 2p clay + 4p dev-6')).toEqual(['missing-weight: There is no weight in bowl A.']);
    expect(problemsOf('bowl A 2p clay + 10 dev-6')).toEqual(['missing-weight: Bowl A does not say how much clay.']);
    expect(todosOf('bowl A 40 clay + dev-6')).toEqual([
      'Write grams before `dev-6`, or a ratio after it, as in `1:1.5`.',
    ]);
    expect(todosOf('bowl A 40 clay + bond + 80 dev-6')).toEqual(['Write grams before `bond`.']);
    expect(todosOf('bowl A clay + 20vol 1:2')).toEqual([
      'Write the grams of clay, or of the whole, as in `bowl A 90 g of`.',
    ]);
  });

  it('works backwards from whatever one weight is given', () => {
    expect(shownOf('bowl A clay + 80 dev-6 1:2')).toBe('40 clay + 80 dev-6 = 120');
    expect(shownOf('bowl A 2p cream 7/0 + 1p cream 7/1 + 45 dev-6 1:1.5')).toBe(
      '20 cream 7/0 + 10 cream 7/1 + 45 dev-6 = 75',
    );
    expect(shownOf('bowl A 90 g of 2p cream 5/0 + 1p cream 6/3 + 4.5p dev-6')).toBe(
      '24 cream 5/0 + 12 cream 6/3 + 54 dev-6 = 90',
    );
    expect(shownOf('bowl A 20 cream 7/0 + 1p cream 7/1 + 1p water + dev-6 1:1 = 80')).toBe(
      '20 cream 7/0 + ? cream 7/1 + ? water + ? dev-6 = ?',
    );
    expect(shownOf('bowl A 90 g of clay + dev-6 1:1 + dev-9 1:1')).toBe('30 clay + 30 dev-6 + 30 dev-9 = 90');
  });

  it('keeps a total to the line that says it: a plus comes on top', () => {
    expect(shownOf('bowl A 90 g of 30 clay + dev-6\nplus A 3 bond')).toBe('30 clay + 60 dev-6 + 3 bond = 93');
    expect(shownOf('bowl A 30 clay + dev-6 1:2 = 90\nplus A 3 bond')).toBe('30 clay + 60 dev-6 + 3 bond = 93');
    expect(problemsOf('bowl A 30 clay + dev-6 1:2 = 93\nplus A 3 bond')).toEqual([]);
    expect(shownOf('bowl A 30 clay + dev-6 1:2\nplus A 10 clay + 1p bond\nplus A 3 oil')).toBe(
      '30 clay + 86 dev-6 + 10 clay + ? bond + 3 oil = ?',
    );
  });

  it('says which two facts disagree, and by how much', () => {
    expect(problemsOf('bowl A 40 clay + 80 dev-6 1:1.5')).toEqual([
      'disagree: Bowl A has 80 g dev-6, and 1:1.5 of 40 g clay is 60 g: 20 g apart.',
    ]);
    expect(todosOf('bowl A 40 clay + 80 dev-6 1:1.5')).toEqual(['Write `60 dev-6`, or take 1:1.5 out.']);
    expect(problemsOf('bowl A 90 g of 40 clay + 20vol 1:2')).toEqual([
      'disagree: Bowl A is 90 g by its total, and its parts come to 120 g: 30 g apart.',
    ]);
    expect(problemsOf('bowl A 90 g of 100 clay + dev-6')).toEqual([
      'disagree: The other figures of bowl A leave -10 g for dev-6.',
    ]);
    expect(problemsOf('bowl A 90 g of 90 clay + dev-6')).toEqual([
      'disagree: The other figures of bowl A leave nothing for dev-6.',
    ]);
    expect(problemsOf('bowl A 2p clay + 3p dev-6 1:2')).toEqual([
      'disagree: Bowl A has 2p clay to 3p dev-6, 1:1.5, and the ratio says 1:2.',
    ]);
    expect(problemsOf('bowl A 40 clay 1:2 + 30 dev-6 + 30 dev-9')).toEqual([
      'disagree: Bowl A has 60 g dev-6 and dev-9, and 1:2 of 40 g clay is 80 g: 20 g apart.',
    ]);
    expect(todosOf('bowl A 40 clay 1:2 + 30 dev-6 + 30 dev-9')).toEqual(['Take 1:2 out, or put an amount right.']);
    expect(problemsOf('bowl A 2p clay + 4p dev-6 1:2 + 1p bond')).toEqual([
      'missing-weight: There is no weight in bowl A.',
    ]);
    expect(problemsOf('bowl A 90 g of 30p clay 1:2 + 30p dev-6 + dev-9 + 10 bond')).toEqual([]);
  });

  it('says so where the facts leave no figure to compare', () => {
    expect(problemsOf('bowl A 130 g of 40 clay 1:2 + dev-6 + dev-9')).toEqual([
      'disagree: Bowl A is 130 g by its total, and its other figures leave no room for that.',
    ]);
    expect(problemsOf('bowl A 30 cream 7/0 1:1.5 + 40 clay 1:2 + dev-6 + dev-9')).toEqual([
      'disagree: Bowl A cannot keep 1:2 beside its other figures.',
    ]);
    expect(problemsOf('bowl A 0p clay + 3p dev-6 1:2')).toEqual([
      'disagree: Bowl A has 0p clay to 3p dev-6, all developer, and the ratio says 1:2.',
    ]);
  });

  it('points at both facts', () => {
    const also = (note: string): (readonly string[] | undefined)[] =>
      bowlsOf(note).flatMap(({ problems }) => problems.map((problem) => problem.also?.map(({ says }) => says)));
    expect(also('bowl A 40 clay + 80 dev-6 1:1.5')).toEqual([['this amount']]);
    expect(also('bowl A 90 g of 40 clay + 20vol 1:2')).toEqual([['the other figures']]);
    expect(also('bowl A 90 g of 100 clay + dev-6')).toEqual([['the other figures']]);
  });

  it('lets pass what the scales cannot show, and what a hedge allows', () => {
    expect(problemsOf('bowl A 30 clay + 59.5 dev-6 1:2')).toEqual([]);
    expect(problemsOf('bowl A 30 clay + 59 dev-6 1:2').length).toBe(1);
    expect(problemsOf('bowl A 30 clay + 59 dev-6 1:2', { salon: '  scale 5 g' })).toEqual([]);
    expect(problemsOf('bowl A 30 clay + ~55 dev-6 1:2')).toEqual([]);
    expect(problemsOf('bowl A 30 clay + ~53 dev-6 1:2').length).toBe(1);
    expect(problemsOf('bowl A ~30 clay + 55 dev-6 1:2')).toEqual([]);
    expect(problemsOf('bowl A 30 clay + 55 dev-6 ~1:2')).toEqual([]);
    expect(problemsOf('bowl A 30 clay + 55 dev-6 1:2-1:3')).toEqual([]);
    expect(problemsOf('bowl A ~85 g of 30 clay + 60 dev-6')).toEqual([]);
    expect(problemsOf('bowl A 85 g of 30 clay + 60? dev-6')).toEqual([]);
    expect(problemsOf('bowl A 85 g of 30 clay + 60 dev-6').length).toBe(1);
    // A tenth of the larger figure: 6 of 60, 6.6 of 66.
    expect(problemsOf('bowl A 30 clay + ~54 dev-6 1:2')).toEqual([]);
    expect(problemsOf('bowl A 30 clay + ~66 dev-6 1:2')).toEqual([]);
    expect(problemsOf('bowl A 30 clay + ~67 dev-6 1:2').length).toBe(1);
    expect(problemsOf('bowl A 90 g of 0 bond + 30 clay + dev-6')).toEqual([]);
  });

  it('marks as about what is reckoned from a hedged figure', () => {
    const about = (note: string): boolean[] => bowlsOf(note)[0]?.portions.map((portion) => portion.about) ?? [];
    expect(about('bowl A ~30 clay + 3 bond + 20vol 1:2')).toEqual([true, false, true]);
    expect(about('bowl A 30-35 clay + 20vol 1:2')).toEqual([true, true]);
    expect(about('bowl A 30 clay + 20vol 1:2-1:3')).toEqual([false, true]);
    expect(about('bowl A 30 clay + 60 dev-6')).toEqual([false, false]);
    expect(about('bowl A ~90 g of 30 clay + dev-6')).toEqual([false, true]);
    expect(shownOf('bowl A 30-35 clay + 20vol 1:2')).toBe('30 clay + 60 dev-6 = 90');
    expect(bowlsOf('bowl A ~90 g of 30 clay + dev-6').map((bowl) => bowl.about)).toEqual([true]);
  });

  it('compares the total that is claimed with the one that is reckoned', () => {
    expect(problemsOf('bowl A 40 clay + 80 dev-6 = 130')).toEqual([
      'claim: Bowl A comes to 120 g, and the note says 130 g.',
    ]);
    expect(todosOf('bowl A 40 clay + 80 dev-6 = 130')).toEqual([
      'Write `= 120`, or put the amount right that is wrong.',
    ]);
    expect(problemsOf('bowl A 40 clay + 80 dev-6 = 120')).toEqual([]);
    expect(problemsOf('bowl A 40.4 clay + 80 dev-6 = 120')).toEqual([]);
    expect(problemsOf('bowl A 40.6 clay + 80 dev-6 = 120').length).toBe(1);
    expect(problemsOf('bowl A 30 clay + 60 dev-6 = 99\nplus A 3 bond')).toEqual([
      'claim: Bowl A comes to 90 g, and the note says 99 g.',
    ]);
    expect(problemsOf('bowl A 40 clay + 80 dev-6 = ~130')).toEqual([]);
    expect(problemsOf('bowl A 40? clay + 80 dev-6 = 130')).toEqual([]);
    expect(problemsOf('bowl A 40 clay + dev-6 = 130')).toEqual(['missing-weight: Bowl A does not say how much dev-6.']);
    expect(problemsOf('bowl A 40 clay + 80 dev-6 = 0.12 kg')).toEqual([]);
    expect(problemsOf('bowl A 40 clay + 80 dev-6 = 130 ml')).toEqual([
      'no-density: `130 ml` of a mixture is not a weight.',
    ]);
  });

  it('weighs volumes by density, measures by the product, packs by the one of the day', () => {
    const how = (note: string, salon?: string): string[] =>
      bowlsOf(note, salon === undefined ? {} : { salon })[0]?.portions.map(
        (portion) => `${fig(portion.weight)} ${portion.how ?? '-'}`,
      ) ?? [];
    expect(how('bowl A 10 ml toner pearl + 10 ml gloss-act', '  policy ml as g')).toEqual([
      '12 density 1.2 of toner',
      '10 1 ml as 1 g, the salon’s policy',
    ]);
    expect(how('bowl A 2 scoop clay + 1 oz-wt dev-6 + 3 drops bond')).toEqual([
      '20 1 scoop is 10 g',
      '28.35 -',
      '0.15 density 1 of bond',
    ]);
    expect(how('bowl A 3 scoops clay + 60 dev-6')).toEqual(['30 1 scoop is 10 g', '60 -']);
    expect(how('bowl A ½ pack cream 7/0 + 45 dev-6')).toEqual(['30 a pack of 60 g', '45 -']);
    expect(problemsOf('bowl A 10 ml clay + 20 dev-6')).toEqual([
      'no-density: The note says ml of `clay`, and no line gives its density.',
    ]);
    expect(todosOf('bowl A 10 ml clay + 20 dev-6')).toEqual([
      'Write `density` under `clay`, or `policy ml as g` under the salon.',
    ]);
    expect(problemsOf('bowl A 1 pot clay', { shelf: 'product clay lightener\n  measure pot 5 ml' })).toEqual([
      'no-density: The note says ml of `clay`, and no line gives its density.',
    ]);
    expect(problemsOf('bowl A 1 pack clay', { shelf: 'product clay lightener' })).toEqual([
      'unknown-measure: `pack` is no measure of `clay`.',
    ]);
    expect(problemsOf('bowl A 1 pack mist', { shelf: 'product mist goods\n  pack 1 each 4' })).toEqual([
      'unknown-measure: `pack` is no measure of `mist`.',
    ]);
  });

  it('gives base, developer, ratio and strength ready for use', () => {
    const [bowl] = bowlsOf('bowl A 40 clay + 3 bond + 7 water + 20vol 1:2 + 20 dev-9');
    expect([bowl?.base, bowl?.developer, bowl?.ratio, bowl?.ready, bowl?.total].map(fig)).toEqual([
      '40',
      '100',
      '2.5',
      '4.4',
      '150',
    ]);
    const [plain] = bowlsOf('bowl A 40 conditioner');
    expect([plain?.base, plain?.developer, plain?.ratio, plain?.ready].map(fig)).toEqual(['40', '?', '?', '0']);
    const [nothing] = bowlsOf('bowl A 0 clay + 0 dev-6');
    expect([nothing?.ratio, nothing?.ready].map(fig)).toEqual(['?', '?']);
    expect(nothing && shown(nothing)).toBe('0 clay + 0 dev-6 = 0');
  });

  it('points at the ratio, or else at the developer', () => {
    const journal = journalOfNotes(
      `${SHELF}\nvisit 2026-09-04 wren-abbott\n  bowl A 40 clay + 20vol 1:2\n  bowl B 40 clay + 80 dev-6\n  bowl C 40 clay`,
    );
    const bowls = bowlsIn(journal);
    expect(bowls.map(({ ratioPlace }) => ratioPlace?.at)).toEqual([
      bowls[0]?.portions[1]?.component.ratio?.at,
      bowls[1]?.portions[1]?.component.at,
      undefined,
    ]);
  });
});

describe('names of bowls', () => {
  it('keeps a bowl of which nothing is said yet', () => {
    expect(
      bowlsOf('bowl A = 150\nplus B 3 bond').map(({ name, portions, mixed }) => [name, portions.length, mixed]),
    ).toEqual([['A', 0, undefined]]);
    expect(problemsOf('bowl A = 150')).toEqual([]);
  });

  it('reckons a visit that is not dated, at prices without a date', () => {
    const journal = journalOfNotes(`${SHELF}\nvisit 2026-09-04 wren-abbott\n  bowl A 100 clay`);
    const client = journal.clients.get('wren-abbott');
    const visit = client?.visits[0];
    if (visit === undefined || client === undefined) throw new Error('no visit');
    const { date: _, ...entry } = visit.entry;
    const [bowl] = reckonBowls(journal, journal.salon, client, { ...visit, entry });
    expect(fig(bowl?.cost)).toBe('480');
  });

  it('shows them in capitals and keeps the order of the lines', () => {
    expect(bowlsOf('bowl b2 30 clay + 60 dev-6\nbowl A 20 clay + 40 dev-6').map(({ name }) => name)).toEqual([
      'B2',
      'A',
    ]);
  });

  it('lets the first stand when one is mixed twice', () => {
    const note = 'bowl A 40 clay + 80 dev-6\nbowl a 20 clay + 40 dev-6';
    expect(lines(bowlsOf(note))).toEqual(['A: 40 clay + 80 dev-6 = 120']);
    expect(problemsOf(note)).toEqual(['bowl-twice: Bowl A is mixed twice in this visit; the first stands.']);
    const again = 'again A from 2026-01-01\nagain A from 2026-01-02';
    expect(problemsOf(again)).toEqual([
      'again-missing: wren-abbott has no visit on 2026-01-01.',
      'bowl-twice: Bowl A is mixed twice in this visit; the first stands.',
    ]);
  });

  it('reports lines of a bowl that is not mixed, with the bowls that are', () => {
    const note =
      'bowl A 40 clay + 80 dev-6 + 5 from D\nplus B 3 bond\nweighed C 3 bond\nmore E\nleft T 14\nhome M 12 + 3 conditioner';
    expect(problemsOf(note)).toEqual([
      'no-such-bowl: No bowl E is mixed in this visit.',
      'no-such-bowl: No bowl B is mixed in this visit.',
      'no-such-bowl: No bowl C is mixed in this visit.',
      'no-such-bowl: No bowl T is mixed in this visit.',
      'no-such-bowl: No bowl M is mixed in this visit.',
      'no-such-bowl: No bowl D is mixed in this visit.',
    ]);
    expect(todosOf('bowl A 40 clay + 80 dev-6\nleft T 14')).toEqual(['Write `A`, or add the line `bowl T`.']);
  });

  it('gives the problem to a bowl without portions when none is mixed', () => {
    const bowls = bowlsOf('left T 14 binned\nleft V 3');
    expect(bowls.map(({ name, portions, mixed, cost }) => [name, portions.length, mixed, cost])).toEqual([
      ['T', 0, undefined, undefined],
    ]);
    expect(problemsOf('left T 14 binned\nleft V 3').length).toBe(2);
    expect(todosOf('left T 14')).toEqual(['Add the line `bowl T` with what is in it.']);
    expect(bowlsOf('note nothing mixed')).toEqual([]);
  });
});

describe('further mixes', () => {
  it('scales the recipe to the grams, and numbers the mixes', () => {
    expect(lines(bowlsOf('bowl A 40 clay + 80 dev-6\nmore A 60 at 10:55\nmore A\nplus A2 3 bond'))).toEqual([
      'A: 40 clay + 80 dev-6 = 120',
      'A2: 20 clay + 40 dev-6 + 3 bond = 63',
      'A3: 40 clay + 80 dev-6 = 120',
    ]);
    expect(lines(bowlsOf('bowl A 40 clay + 80 dev-6\nbowl A2 5 clay\nmore A 60')).at(-1)).toBe(
      'A3: 20 clay + 40 dev-6 = 60',
    );
    expect(lines(bowlsOf('bowl A 40 clay + 80 dev-6\nmore A 60\nmore A2 30')).at(-1)).toBe(
      'A3: 10 clay + 20 dev-6 = 30',
    );
  });

  it('does not repeat what is wrong with the first mix', () => {
    expect(problemsOf('bowl A 40 clay + dev-6\nmore A 60\nmore A')).toEqual([
      'missing-weight: Bowl A does not say how much dev-6.',
    ]);
    expect(problemsOf('bowl A 40 clay + 80 dev-6\nmore A 60 ml')).toEqual([
      'no-density: `60 ml` of a mixture is not a weight.',
    ]);
    expect(lines(bowlsOf('bowl A 0 clay\nmore A 60'))).toEqual(['A: 0 clay = 0', 'A2: 0 clay = 0']);
  });

  it('shares what is left between the mixes of a bowl', () => {
    const used = (note: string): string[] =>
      bowlsOf(note).map(({ used, mixedWithMore }) => `${fig(used)} of ${fig(mixedWithMore)}`);
    expect(used('bowl A 20 clay + 40 dev-6\nmore A 60\nleft A 90')).toEqual(['0 of 120', '30 of ?']);
    expect(used('bowl A 20 clay + 40 dev-6\nmore A 60\nleft A 20')).toEqual(['40 of 120', '60 of ?']);
    expect(used('bowl A 20 clay + 40 dev-6\nmore A 60\nmore A 30\nleft A2 90')).toEqual([
      '40 of 150',
      '0 of ?',
      '20 of ?',
    ]);
    expect(used('bowl A 20 clay + 40 dev-6\nmore A 60\nleft A 130')).toEqual(['0 of 120', '-10 of ?']);
    expect(used('bowl A 20 clay\nbowl B 5 clay\nmore A 60\nleft A 10')).toEqual(['10 of 80', '5 of ?', '60 of ?']);
    expect(used('bowl A 20 clay\nmore A\nplus A2 dev-6\nleft A 30')).toEqual(['-10 of ?', '? of ?']);
    expect(used('bowl A 20 clay + 40 dev-6\nleft A 70')).toEqual(['-10 of ?']);
    expect(used('bowl A 20 clay + dev-6\nmore A 60\nleft A 5')).toEqual(['? of ?', '? of ?']);
    expect(used('bowl A 20 clay\nmore A 60\nleft A 30\nleft A2 70')).toEqual(['-10 of 80', '-10 of ?']);
  });
});

describe('out of a bowl', () => {
  const [first, second] = bowlsOf('bowl A 40 clay + 20vol 1:2\nbowl C 30 from A + 10 dev-3\nleft C 8');

  it('takes weight, strength and price from that bowl', () => {
    expect(second && shown(second)).toBe('30 out of A + 10 dev-3 = 40');
    expect(second?.portions.map(({ role, strength, cost }) => [role, fig(strength), fig(cost)])).toEqual([
      ['bowl', '4', '66'],
      ['developer', '3', '7.5'],
    ]);
    expect(fig(second?.ready)).toBe('3.75');
    expect(second?.portions[0]?.from?.name).toBe('A');
  });

  it('counts nothing twice', () => {
    expect([first?.cost, second?.cost, first?.taken, first?.used, second?.used].map(fig)).toEqual([
      '264',
      '7.5',
      '30',
      '90',
      '32',
    ]);
  });

  it('comes on top of a bowl too', () => {
    expect(lines(bowlsOf('bowl A 40 clay + 80 dev-6\nbowl C 10 conditioner\nplus C 12 from A'))).toEqual([
      'A: 40 clay + 80 dev-6 = 120',
      'C: 10 conditioner + 12 out of A = 22',
    ]);
    expect(problemsOf('bowl C 10 conditioner\nplus C 12 from A')).toEqual([
      'no-such-bowl: No bowl A is mixed in this visit.',
    ]);
  });

  it('stands in the ratio only when nothing else does', () => {
    expect(shownOf('bowl C 30 from A + dev-3 1:0.5\nbowl A 40 clay + 80 dev-6')).toBe('30 out of A + 15 dev-3 = 45');
    expect(shownOf('bowl C 30 from A + 10 clay + dev-3 1:2\nbowl A 40 clay + 80 dev-6')).toBe(
      '30 out of A + 10 clay + 20 dev-3 = 60',
    );
    expect(shownOf('bowl C 30 from A + 2 bond + dev-3 1:0.5\nbowl A 40 clay + 80 dev-6')).toBe(
      '30 out of A + 2 bond + 15 dev-3 = 47',
    );
  });

  it('knows no strength or price while that bowl has none', () => {
    const [, bowl] = bowlsOf('bowl A 40 caly + 80 dev-6\nbowl C 30 from A + 10 dev-3');
    expect([bowl?.ready, bowl?.portions[0]?.cost].map(fig)).toEqual(['?', '?']);
    const [, open] = bowlsOf('bowl A 40 clay + dev-6\nbowl C 30 from A');
    expect([open?.ready, open?.portions[0]?.cost, open?.total].map(fig)).toEqual(['?', '?', '30']);
    expect(bowlsOf('bowl C 30 from D').map((one) => [fig(one.ready), fig(one.portions[0]?.cost)])).toEqual([
      ['?', '?'],
    ]);
    expect(fig(bowlsOf('bowl A 0 clay\nbowl C 0 from A')[1]?.portions[0]?.cost)).toBe('?');
  });

  it('says once that a bowl is made out of itself', () => {
    expect(problemsOf('bowl A 40 from A + 3 bond')).toEqual(['again-circle: Bowl A is made out of itself.']);
    const note = 'bowl A 40 from B\nbowl B 40 from A\nbowl C 10 from A + 5 dev-6';
    expect(problemsOf(note)).toEqual(['again-circle: Bowl B is made out of bowl A, and that out of bowl B.']);
    expect(bowlsOf(note).map(({ portions }) => portions.length)).toEqual([0, 0, 2]);
  });
});

describe('what became of a bowl', () => {
  it('takes the last line on what is left, with its fate', () => {
    const [bowl] = bowlsOf('bowl A 40 clay + 80 dev-6\nleft A 20\nleft A 14 kept');
    expect([fig(bowl?.left?.weight), bowl?.left?.fate, fig(bowl?.used)]).toEqual(['14', 'kept', '106']);
    expect(problemsOf('bowl A 40 clay + 80 dev-6\nleft A 14 ml')).toEqual([
      'no-density: `14 ml` of a mixture is not a weight.',
    ]);
  });

  it('sends home out of what was left: 60 less 12 left is 48 used, though the 12 went home', () => {
    const told = (lines: string): unknown[] => {
      const [bowl] = bowlsOf(`bowl M 60 conditioner\n${lines}`);
      return [fig(bowl?.left?.weight), bowl?.left?.fate, fig(bowl?.used), fig(bowl?.taken)];
    };
    expect(told('left M 12 given\nhome M 12 + 180 conditioner')).toEqual(['12', 'given', '48', '0']);
    expect(told('left M 20 binned\nhome M 12 + 180 conditioner')).toEqual(['20', 'binned', '40', '0']);
    expect(problemsOf('bowl M 60 conditioner\nleft M 60\nhome M 60')).toEqual([]);
  });

  it('has what goes home as left at least, where `left` says less, nothing, or no weight', () => {
    const left = (lines: string): unknown[] => {
      const [bowl] = bowlsOf(`bowl M 40 conditioner\n${lines}`);
      return [fig(bowl?.left?.weight), bowl?.left?.fate, fig(bowl?.used)];
    };
    expect(left('home M 12 + 180 conditioner')).toEqual(['12', 'given', '28']);
    expect(left('home M 12\nhome M 5')).toEqual(['17', 'given', '23']);
    expect(left('left M 5 kept\nhome M 12')).toEqual(['12', 'kept', '28']);
    expect(left('left M 5 ml\nhome M 12')).toEqual(['12', 'given', '28']);
    expect(left('home M 12 ml + 180 conditioner')).toEqual(['?', undefined, '40']);
    expect(left('home 180 conditioner')).toEqual(['?', undefined, '40']);
  });

  it('sets what the scales said beside what was reckoned', () => {
    const [bowl] = bowlsOf('bowl A 40 clay + 20vol 1:2 + 3 bond\nweighed A 41 clay, 82 6%');
    expect(bowl?.portions.map(({ weight, weighed }) => [fig(weight), fig(weighed)])).toEqual([
      ['40', '41'],
      ['80', '82'],
      ['3', '?'],
    ]);
    expect([bowl?.weighed?.total, bowl?.mixed, bowl?.total, bowl?.cost].map(fig)).toEqual(['123', '126', '123', '309']);
    expect(bowl?.weighed?.parts.map(({ label, weight }) => [label, fig(weight)])).toEqual([
      ['clay', '41'],
      ['dev-6', '82'],
    ]);
  });

  it('matches what was weighed by name, by product, by strength or by place', () => {
    const weighed = (note: string, shelf = SHELF): string[] =>
      bowlsOf(note, { shelf })[0]?.portions.map((one) => fig(one.weighed)) ?? [];
    expect(weighed('bowl A 30 cream 7/0 + 10 cream 7/1 + 60 dev-6\nweighed A 11 cream 7/1, 31 cream')).toEqual([
      '31',
      '11',
      '?',
    ]);
    expect(
      weighed('bowl A 40 clay + 7.5% from dev-6 dev-9 1:2\nweighed A 41 clay + 42 dev-9\nweighed A 39 dev-6'),
    ).toEqual(['41', '39', '42']);
    expect(weighed('bowl A 40 clay + 80 dev-6\nweighed A 41, 82')).toEqual(['41', '82']);
    expect(weighed('bowl A 30 clay + 10 clay + 80 dev-6\nweighed A 31 clay, 11 clay')).toEqual(['31', '11', '?']);
    expect(weighed('bowl A 40 clay + 7% 1:2\nweighed A 82 7%')).toEqual(['?', '82']);
    expect(
      weighed('bowl A 20 toner 9/1 + 20 dev-6\nweighed A 21 6%', `${SHELF}\nproduct other-6 developer 6%`),
    ).toEqual(['?', '21']);
    expect(weighed('bowl A 40 clay + 60 cream-dev\nweighed A 61 6%', `${SHELF}\nproduct cream-dev developer`)).toEqual([
      '?',
      '?',
    ]);
    expect(weighed('bowl A 40 clay\nweighed A 41')).toEqual(['41']);
    expect(weighed('bowl A 40 clay + 80 dev-6\nweighed A clay')).toEqual(['?', '?']);
    const [whole] = bowlsOf('bowl A 40 clay + 80 dev-6\nweighed A 123');
    expect([whole?.mixed, whole?.weighed?.total, whole?.portions[0]?.weighed].map(fig)).toEqual(['123', '123', '?']);
  });

  it('says what the scales weighed that the bowl does not hold', () => {
    expect(problemsOf('bowl A 40 clay + 80 dev-6\nweighed A 41 clay, 82 dev-9')).toEqual([
      'disagree: The scales weighed dev-9, and bowl A holds clay and dev-6.',
    ]);
    expect(problemsOf('bowl A 40 clay + 80 dev-6\nweighed A 41, 82, 3')).toEqual([
      'disagree: The scales weighed a part without a name, and bowl A holds clay and dev-6.',
      'disagree: The scales weighed a part without a name, and bowl A holds clay and dev-6.',
      'disagree: The scales weighed a part without a name, and bowl A holds clay and dev-6.',
    ]);
    expect(problemsOf('bowl A 40 clay + 80 dev-6\nweighed A 41 caly')).toEqual([
      'unknown-name: `caly` is not on the shelf.',
    ]);
    expect(problemsOf('bowl A 40 caly\nweighed A 41 dev-6')).toEqual(['unknown-name: `caly` is not on the shelf.']);
    expect(problemsOf('bowl A 30 cream 7/0 + 45 dev-6\nweighed A 31 cream 7/1')).toEqual([
      'disagree: The scales weighed cream 7/1, and bowl A holds cream 7/0 and dev-6.',
    ]);
    expect(problemsOf('bowl A 40 clay\nweighed A 41 water')).toEqual([
      'disagree: The scales weighed water, and bowl A holds clay.',
    ]);
  });
});

describe('price of a bowl', () => {
  it('takes the pack in force that day', () => {
    const cost = (date: string): string =>
      fig(bowlsIn(journalOfNotes(`${SHELF}\nvisit ${date} wren-abbott\n  bowl A 100 clay`))[0]?.cost);
    expect([cost('2026-02-28'), cost('2026-03-01'), cost('2027-01-01')]).toEqual(['480', '510', '510']);
  });

  it('is open while a price or a weight is, and names nothing for water', () => {
    const cost = (note: string, shelf?: string): string[] =>
      bowlsOf(note, shelf === undefined ? {} : { shelf }).flatMap((bowl) => [
        ...bowl.portions.map((portion) => fig(portion.cost)),
        fig(bowl.cost),
      ]);
    expect(cost('bowl A 40 clay + 10 water')).toEqual(['204', '0', '204']);
    expect(cost('bowl A 40 clay', 'product clay lightener')).toEqual(['?', '?']);
    expect(cost('bowl A 40 clay', 'product clay lightener\n  pack 500 g')).toEqual(['?', '?']);
    expect(cost('bowl A 40 clay', 'product clay lightener\n  pack 500 ml 20.00')).toEqual(['?', '?']);
    expect(cost('bowl A 40 clay', 'product clay lightener\n  pack 0 g 20.00')).toEqual(['?', '?']);
    expect(cost('bowl A 40 clay', 'product clay lightener\n  pack 1 each 20.00')).toEqual(['?', '?']);
    expect(cost('bowl A 40 clay', 'product clay lightener\n  pack 500 24.00')).toEqual(['192', '192']);
    expect(cost('bowl A 40 clay', 'product clay lightener\n  pack 500 g 24.00 from 2027-01-01')).toEqual(['?', '?']);
    expect(cost('bowl A clay')).toEqual(['?', '?']);
    expect(cost('bowl A 30 ml toner pearl + gloss-act 1:1')).toEqual(['300', '28.8', '328.8']);
  });
});

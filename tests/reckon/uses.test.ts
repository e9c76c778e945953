import { describe, expect, it } from 'vitest';
import { looseUses } from '../../src/reckon/bowl/loose.ts';
import { usesOf } from '../../src/reckon/bowl/uses.ts';
import type { ProductUse } from '../../src/reckon/model.ts';
import { bowlsIn, bowlsOf, fig, journalOfNotes, SHELF } from './bowls-of.ts';

const text = ({ product, shade, mixed, used, left, cost, pieces }: ProductUse): string =>
  `${product}${shade === undefined ? '' : ` ${shade}`}: ${fig(mixed)}${pieces ? ' pieces' : ''} mixed, ${fig(used)} used, ${fig(left)} left, ${fig(cost)}`;

const uses = (lines: string, given?: Parameters<typeof bowlsOf>[1]): string[] =>
  usesOf(bowlsOf(lines, given)).map(text);

describe('what a visit uses', () => {
  it('shares what is left over what the bowl holds', () => {
    expect(uses('bowl A 40 clay + 80 dev-6 + 5 water\nleft A 25 binned')).toEqual([
      'clay: 40 mixed, 32 used, 8 left, 204',
      'dev-6: 80 mixed, 64 used, 16 left, 60',
    ]);
  });

  it('adds up a product over bowls, shade by shade', () => {
    expect(uses('bowl A 20 cream 7/0 + 30 dev-6\nbowl B 20 cream 7/0 + 10 cream 7/1 + 45 dev-6\nleft B 15')).toEqual([
      'cream 7/0: 40 mixed, 36 used, 4 left, 400',
      'dev-6: 75 mixed, 66 used, 9 left, 56.25',
      'cream 7/1: 10 mixed, 8 used, 2 left, 100',
    ]);
  });

  it('counts once what was taken out of one bowl into another', () => {
    expect(uses('bowl A 40 clay + 80 dev-6\nbowl C 30 from A + 10 dev-3\nleft C 8\nleft A 12')).toEqual([
      'clay: 40 mixed, 34 used, 6 left, 204',
      'dev-6: 80 mixed, 68 used, 12 left, 60',
      'dev-3: 10 mixed, 8 used, 2 left, 7.5',
    ]);
  });

  it('goes by the scales where they were read', () => {
    expect(uses('bowl A 40 clay + 80 dev-6\nweighed A 50 clay\nleft A 13')).toEqual([
      'clay: 50 mixed, 45 used, 5 left, 255',
      'dev-6: 80 mixed, 72 used, 8 left, 60',
    ]);
  });

  it('holds on when a figure is missing or too large', () => {
    expect(uses('bowl A 40 clay + dev-6\nleft A 10')).toEqual([
      'clay: 40 mixed, 40 used, 0 left, 204',
      'dev-6: 0 mixed, 0 used, 0 left, ?',
    ]);
    expect(uses('bowl A 40 clay\nleft A 50')).toEqual(['clay: 40 mixed, 0 used, 40 left, 204']);
    expect(uses('bowl A 0 clay\nleft A 5')).toEqual(['clay: 0 mixed, 0 used, 0 left, 0']);
    expect(uses('bowl A 10 caly 7/1 + 5 dev-6\nbowl B 10 caly')).toEqual([
      'caly 7/1: 10 mixed, 10 used, 0 left, ?',
      'dev-6: 5 mixed, 5 used, 0 left, 3.75',
      'caly: 10 mixed, 10 used, 0 left, ?',
    ]);
    expect(uses('bowl A 10 from D + 5 dev-6\nleft A 3')).toEqual(['dev-6: 5 mixed, 4 used, 1 left, 3.75']);
    expect(uses('bowl A 40 + 3 bond')).toEqual(['bond: 3 mixed, 3 used, 0 left, 38.4']);
  });
});

describe('what a visit uses outside its bowls', () => {
  const shelf = `${SHELF}\nproduct clarify conditioner\n  pack 1 l 9.00\n  density 1\nproduct tape goods\n  pack 10 each 38.00\nproduct mist goods\n  pack 1 each 14.50\nrange glue goods\n  pack 50 g 5.00\n`;
  const loose = (lines: string): string[] => {
    const journal = journalOfNotes(`${shelf}\nvisit 2026-09-04 wren-abbott\n${lines}`);
    const visit = journal.clients.get('wren-abbott')?.visits[0];
    return visit === undefined ? [] : looseUses(journal.shelf, journal.salon, visit).map(text);
  };

  it('counts washes, goods fitted, and what goes home beside a bowl', () => {
    expect(
      loose(
        'bowl M 40 conditioner\nhome M 12 + 180 conditioner + 20 cream 7/0 + 10 toner pearl\nwash 15 clarify\nrinse 14:00 clarify',
      ),
    ).toEqual([
      'conditioner: 180 mixed, 180 used, 0 left, 198',
      'cream 7/0: 20 mixed, 20 used, 0 left, 200',
      'toner pearl: 10 mixed, 10 used, 0 left, 83.33',
      'clarify: 15 mixed, 15 used, 0 left, 13.5',
    ]);
  });

  it('has what went home once, as left: 60 mixed, 12 left, 12 home is 48 used', () => {
    const journal = journalOfNotes(
      `${shelf}\nvisit 2026-09-04 wren-abbott\nbowl N 60 conditioner\nleft N 12 given\nhome N 12 + 180 conditioner`,
    );
    const visit = journal.clients.get('wren-abbott')?.visits[0];
    if (visit === undefined) throw new Error('no visit');
    expect(usesOf(bowlsIn(journal)).map(text)).toEqual(['conditioner: 60 mixed, 48 used, 12 left, 66']);
    expect(usesOf(bowlsIn(journal), looseUses(journal.shelf, journal.salon, visit)).map(text)).toEqual([
      'conditioner: 240 mixed, 228 used, 12 left, 264',
    ]);
  });

  it('counts goods by the piece', () => {
    expect(
      loose(
        'fit 2 packs tape "8 honey"\nfit 1 mist\nfit 2 packs glue 7/1\nfit tape\nfit 30 g mist\nfit 4 pumps bond\nfit 3 elsewhere\nfit 2 packs\nhome 30 g',
      ),
    ).toEqual([
      'tape: 20 pieces mixed, 20 used, 0 left, 7600',
      'mist: 1 pieces mixed, 1 used, 0 left, 1450',
      'glue 7/1: 100 mixed, 100 used, 0 left, 1000',
      'mist: 30 mixed, 30 used, 0 left, ?',
    ]);
    expect(loose('home 2 each mist + 10 ml glue')).toEqual(['mist: 2 pieces mixed, 2 used, 0 left, 2900']);
  });

  it('joins what bowls used', () => {
    const journal = journalOfNotes(
      `${shelf}\nvisit 2026-09-04 wren-abbott\nbowl M 40 conditioner\nhome M 12 + 180 conditioner\nfit 1 mist`,
    );
    const visit = journal.clients.get('wren-abbott')?.visits[0];
    if (visit === undefined) throw new Error('no visit');
    expect(usesOf(bowlsIn(journal), looseUses(journal.shelf, journal.salon, visit)).map(text)).toEqual([
      'conditioner: 220 mixed, 208 used, 12 left, 242',
      'mist: 1 pieces mixed, 1 used, 0 left, 1450',
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import { type BowlMemo, reckonBowls } from '../../src/reckon/bowl/bowls.ts';
import { salonOf } from '../../src/reckon/salon-of.ts';
import { bowlsIn, fig, journalOfNotes, pointedAt, problemsIn, SHELF, shown } from './bowls-of.ts';

/** The bowls of a visit on 2026-09-04 after the visits given. */
const mixedAfter = (earlier: string, lines: string): ReturnType<typeof bowlsIn> =>
  bowlsIn(journalOfNotes(`${SHELF}\n${earlier}\nvisit 2026-09-04 wren-abbott\n${lines}\n`));

const JULY =
  'visit 2026-07-10 wren-abbott\n  bowl A 40 clay lot K1 + 20vol 1:2\n  bowl T 20 toner pearl + 1.9% 1:1\n  plus A 5 bond';

const first = (lines: string, earlier = JULY): string => {
  const [bowl] = mixedAfter(earlier, lines);
  return bowl === undefined ? 'none' : shown(bowl);
};

const problem = (lines: string, earlier = JULY) => mixedAfter(earlier, lines).flatMap(({ problems }) => problems);

describe('again', () => {
  it('mixes an earlier bowl anew, at its share, rounded and priced today', () => {
    const [bowl] = mixedAfter(JULY.replace('2026-07-10', '2026-02-10'), 'again A from 2026-02-10 A 80%');
    expect(bowl && shown(bowl)).toBe('32 clay + 64 dev-6 + 4 bond = 100');
    expect([bowl?.ratio, bowl?.ready, bowl?.cost].map(fig)).toEqual(['2', '3.84', '262.4']);
    expect([bowl?.again?.bowl, fig(bowl?.again?.share), bowl?.again?.visit.entry.date?.date]).toEqual([
      'A',
      '0.8',
      '2026-02-10',
    ]);
    expect(bowl?.portions.map(({ typed, component, lotOf }) => [typed, component.lot?.text, lotOf])).toEqual([
      [false, 'K1', '2026-02-10'],
      [false, undefined, undefined],
      [false, undefined, undefined],
    ]);
    expect(bowl?.problems).toEqual([]);
  });

  it('takes its own letter where the line names none, and all of it without a share', () => {
    expect(first('again T from 2026-07-10')).toBe('20 toner pearl + 20 gloss-act = 40');
    expect(first('again B from 2026-07-10 T 50%')).toBe('10 toner pearl + 10 gloss-act = 20');
    expect(first('again A from 2026-07-10\nplus A 2 bond')).toBe('40 clay + 80 dev-6 + 5 bond + 2 bond = 127');
    expect(first('again A from 2026-07-10 A 50%\nplus A 9% 1:1')).toBe('20 clay + 40 dev-6 + 3 bond + 20 dev-9 = 83');
  });

  it('rounds each time from the exact weights', () => {
    const note = (date: string, from: string): string => `visit ${date} wren-abbott\n  again A from ${from} A 50%\n`;
    const chain = `visit 2026-01-01 wren-abbott\n  bowl A 7 clay + 9 dev-6\n${note('2026-02-01', '2026-01-01')}${note('2026-03-01', '2026-02-01')}`;
    expect(first('again A from 2026-03-01 A 400%', chain)).toBe('7 clay + 9 dev-6 = 16');
  });

  it('remakes another bowl of the same visit, and a further mix', () => {
    const bowls = mixedAfter('', 'bowl b1 30 clay + 60 dev-6\nagain b2 from b1 50%');
    expect(bowls.map(shown)).toEqual(['30 clay + 60 dev-6 = 90', '15 clay + 30 dev-6 = 45']);
    expect(mixedAfter('', 'again b2 from 2026-09-04 b1\nbowl b1 30 clay + 60 dev-6').map(shown)[0]).toBe(
      '30 clay + 60 dev-6 = 90',
    );
    expect(first('again A from 2026-07-10 A2', `${JULY}\n  more A 60`)).toBe('19 clay + 39 dev-6 + 2 bond = 60');
  });

  it('goes to another client by name', () => {
    const jo = 'visit 2026-07-10 jo-tarn\n  bowl A 10 clay + 20 dev-6';
    expect(first('again A from jo-tarn 2026-07-10 A', jo)).toBe('10 clay + 20 dev-6 = 30');
    expect(problem('again A from jo-tran 2026-07-10 A', jo).map(({ message, todo }) => [message, todo])).toEqual([
      ['There is no client `jo-tran`.', 'Write `jo-tarn`.'],
    ]);
    expect(problem('again A from somebody 2026-07-10 A', jo)[0]?.todo).toBe(
      'Write the client’s name as in her header.',
    );
    expect(problem('again A from jo-tarn A', jo)[0]?.todo).toBe(
      'Write the date, as in `again A from jo-tarn 2026-07-10 A`.',
    );
  });

  it('takes the last of two visits on a day, and never itself', () => {
    const two =
      'visit 2026-07-10 9:00 wren-abbott\n  bowl A 1 clay\nvisit 2026-07-10 14:00 wren-abbott\n  bowl A 2 clay\nvisit 2026-07-10 17:00 wren-abbott\n  bowl B 3 clay';
    expect(first('again A from 2026-07-10', two)).toBe('2 clay = 2');
    expect(
      first('again A from 2026-09-04', 'visit 2026-09-04 9:00 wren-abbott\n  bowl A 1 clay'.replace(' 9:00', '')),
    ).toBe('1 clay = 1');
    expect(problem('again A from 2026-09-04').map(({ message, todo }) => [message, todo])).toEqual([
      ['2026-09-04 is the day of this visit, and bowl A is this one.', 'The nearest with a bowl A: 2026-07-10.'],
    ]);
  });

  it('says which bowls that day had', () => {
    expect(
      problem('again A from 2026-07-10 B').map(({ kind, message, todo, near }) => [kind, message, todo, near]),
    ).toEqual([
      [
        'again-missing',
        'The visit of 2026-07-10 has bowls A and T, and no B.',
        'Write `A` or `T` after the date.',
        ['A', 'T'],
      ],
    ]);
    expect(problem('again A from 2026-07-10', 'visit 2026-07-10 wren-abbott\n  bowl T 20 clay')[0]?.message).toBe(
      'The visit of 2026-07-10 has bowl T, and no A.',
    );
    expect(
      problem('again A from 2026-07-10', 'visit 2026-07-10 wren-abbott').map(({ message, todo }) => [message, todo]),
    ).toEqual([['The visit of 2026-07-10 mixes no bowl.', 'Write the date of a visit that mixes it.']]);
  });

  it('offers the nearest dates that have the bowl', () => {
    const visits = ['2026-01-05', '2026-05-01', '2026-06-20', '2026-07-10']
      .map((date) => `visit ${date} wren-abbott\n  bowl A 4 clay\n`)
      .join('');
    const [missing] = problem('again A from 2026-06-10', visits);
    expect([missing?.message, missing?.todo]).toEqual([
      'wren-abbott has no visit on 2026-06-10.',
      'The nearest with a bowl A: 2026-06-20, 2026-07-10 and 2026-05-01.',
    ]);
    expect(problem('again B from 2026-06-10', visits)[0]?.todo).toBe('No visit has a bowl B; write what is in it.');
    const even = 'visit 2026-06-08 wren-abbott\n  bowl A 4 clay\nvisit 2026-06-12 wren-abbott\n  bowl A 4 clay';
    expect(problem('again A from 2026-06-10', even)[0]?.near).toEqual(['2026-06-08', '2026-06-12']);
  });

  it('asks for the date where the line gives none, and guesses nothing', () => {
    const late = `${JULY}\nvisit 2026-12-10 wren-abbott\n  bowl A 1 clay`;
    const notes = journalOfNotes(`${SHELF}\n${late}\nvisit 2026-09-04 wren-abbott\n  again A 80%\n`);
    const visit = notes.clients.get('wren-abbott')?.visits[1];
    const client = notes.clients.get('wren-abbott');
    if (visit === undefined || client === undefined) throw new Error('no visit');
    const bowls = reckonBowls(notes, salonOf(notes, visit), client, visit);
    expect(bowls.map(({ portions }) => portions.length)).toEqual([0]);
    expect(problemsIn(bowls)).toEqual(['again-undated: The note does not say which day’s bowl A is mixed again.']);
    expect(bowls[0]?.problems[0]?.todo).toBe('Write the date, as in `again A from 2026-07-10 A 80%`.');
    expect(pointedAt(notes, bowls)).toEqual(['A 80%']);
    expect(problem('again B from Q')[0]?.todo).toBe('No earlier visit has a bowl Q; write what is in it.');
    expect(problem('again A')[0]?.todo).toBe('Write the date, as in `again A from 2026-07-10 A`.');
  });

  it('says nothing of what was wrong then', () => {
    const then = 'visit 2026-07-10 wren-abbott\n  bowl A 40 caly + dev-6';
    expect(problem('again A from 2026-07-10', then)).toEqual([]);
    expect(first('again A from 2026-07-10', then)).toBe('40 caly + ? dev-6 = ?');
    const open = 'visit 2026-07-10 wren-abbott\n  again A from 2026-07-09';
    expect(problem('again A from 2026-07-10', open)).toEqual([]);
    expect(first('again A from 2026-07-10\nplus A 3 bond', open)).toBe('3 bond = 3');
  });

  it('compares with a bowl of the same name', () => {
    const messages = (lines: string): string[] => problem(lines).map(({ kind, message }) => `${kind}: ${message}`);
    expect(messages('bowl A 32 clay + 64 dev-6 + 4 bond\nagain A from 2026-07-10 A 80%')).toEqual([]);
    expect(messages('again A from 2026-07-10 A 80%\nbowl A 33 clay + 64 dev-6 + 4 bond')).toEqual([]);
    expect(messages('bowl A 34 clay + 64 dev-6 + 4 bond\nagain A from 2026-07-10 A 80%')).toEqual([
      'again-differs: Bowl A has 34 g clay, and bowl A of 2026-07-10 at 80 % has 32 g.',
    ]);
    expect(messages('bowl A 40 clay + 80 dev-9 + 5 bond\nagain A from 2026-07-10')).toEqual([
      'again-differs: Bowl A has 80 g dev-9, and bowl A of 2026-07-10 has none.',
    ]);
    expect(messages('bowl A 40 clay + 80 dev-6\nagain A from 2026-07-10')).toEqual([
      'again-differs: Bowl A has no bond, and bowl A of 2026-07-10 has 5 g.',
    ]);
    expect(messages('bowl A 20 clay + 20 clay + 80 dev-6 + 5 bond\nagain A from 2026-07-10')).toEqual([]);
    expect(messages('bowl A 40 clay + 80 dev-6\nagain A 80%').length).toBe(1);
    expect(messages('bowl A 40 clay + dev-6\nagain A from 2026-07-10')).toEqual([
      'missing-weight: Bowl A does not say how much dev-6.',
    ]);
    const [bowl] = mixedAfter(JULY, 'bowl A 40 clay + 80 dev-6 + 5 bond\nagain A from 2026-07-10');
    expect([bowl?.again?.bowl, bowl?.portions[0]?.typed]).toEqual(['A', true]);
    const circle = 'visit 2026-07-10 wren-abbott\n  again A from 2026-09-04';
    expect(problem('bowl A 40 clay\nagain A from 2026-07-10', circle)).toEqual([]);
  });

  it('takes what came out of a bowl out of today’s, or mixes it from the start', () => {
    const then = `${JULY}\n  bowl C 25 from A + 5 dev-3`;
    const bowls = mixedAfter(then, 'bowl A 20 clay + 60 dev-9\nagain C from 2026-07-10');
    expect(bowls.map(shown)).toEqual(['20 clay + 60 dev-9 = 80', '25 out of A + 5 dev-3 = 30']);
    expect(
      [bowls[1]?.portions[0]?.from, bowls[0]?.taken].map((one) => (one && 'n' in one ? fig(one) : one?.name)),
    ).toEqual(['A', '25']);
    expect(fig(bowls[1]?.ready)).toBe('6.13');
    const alone = mixedAfter(then, 'again C from 2026-07-10');
    expect(alone.map(shown)).toEqual(['8 clay + 16 dev-6 + 1 bond + 5 dev-3 = 30']);
    expect(mixedAfter(then, 'again A from 2026-07-10 C').map(shown)).toEqual([
      '8 clay + 16 dev-6 + 1 bond + 5 dev-3 = 30',
    ]);
    const lost = 'visit 2026-07-10 wren-abbott\n  bowl C 25 from A + 5 dev-3';
    expect(mixedAfter(lost, 'again C from 2026-07-10').map(shown)).toEqual(['25 out of A + 5 dev-3 = 30']);
    expect(mixedAfter('', 'bowl A 20 clay\nbowl C 5 from A\nagain D from C\nmore C').map(shown)).toEqual([
      '20 clay = 20',
      '5 out of A = 5',
      '5 out of A = 5',
      '5 out of A = 5',
    ]);
  });
});

describe('a bowl made out of itself', () => {
  const RING =
    'visit 2026-01-01 jo-tarn\n  again A from wren-abbott 2026-02-01 A\nvisit 2026-02-01 wren-abbott\n  again A from jo-tarn 2026-01-01 A';

  it('is found once, on the bowl that stands last, whichever is asked first', () => {
    const said = (order: readonly string[]): string[] => {
      const journal = journalOfNotes(RING);
      const memo: BowlMemo = new Map();
      const found = order.flatMap((client) => {
        const bowls = bowlsIn(journal, client, memo);
        return problemsIn(bowls).map((message) => `${client} ${message}`);
      });
      return found;
    };
    const once = ['wren-abbott again-circle: Bowl A is made out of bowl A, and that out of bowl A.'];
    expect(said(['wren-abbott', 'jo-tarn'])).toEqual(once);
    expect(said(['jo-tarn', 'wren-abbott'])).toEqual(once);
  });

  it('is found in one visit, and leaves the other bowls alone', () => {
    const bowls = mixedAfter('', 'again A from B\nagain B from A\nbowl C 4 clay\nagain D from A');
    expect(problemsIn(bowls)).toEqual(['again-circle: Bowl B is made out of bowl A, and that out of bowl B.']);
    expect(bowls.map(({ portions }) => portions.length)).toEqual([0, 0, 1, 0]);
    expect(problemsIn(mixedAfter('', 'bowl A 4 from B + 4 from C\nbowl B 4 from A\nbowl C 4 from A'))).toEqual([
      'again-circle: Bowl C is made out of bowl A and bowl B, and that out of bowl C.',
    ]);
    expect(problemsIn(mixedAfter('', 'bowl A 4 from B\nbowl B 4 from C + 2 from A\nbowl C 4 from B'))).toEqual([
      'again-circle: Bowl C is made out of bowl A and bowl B, and that out of bowl C.',
    ]);
  });

  it('is told apart by file', () => {
    const said = (order: readonly string[]): number[] => {
      const journal = journalOfNotes({
        'b.bowl': 'visit 2026-01-01 jo-tarn\n  again A from wren-abbott 2026-02-01 A',
        'a.bowl': '# first\nvisit 2026-02-01 wren-abbott\n  again A from jo-tarn 2026-01-01 A',
      });
      const memo: BowlMemo = new Map();
      const found = new Map(order.map((client) => [client, problemsIn(bowlsIn(journal, client, memo)).length]));
      return ['wren-abbott', 'jo-tarn'].map((client) => Number(found.get(client)));
    };
    expect(said(['wren-abbott', 'jo-tarn'])).toEqual([0, 1]);
    expect(said(['jo-tarn', 'wren-abbott'])).toEqual([0, 1]);
  });
});

describe('the memo', () => {
  it('gives the same bowls for the same visit', () => {
    const journal = journalOfNotes(`${SHELF}\n${JULY}\nvisit 2026-09-04 wren-abbott\n  again A from 2026-07-10\n`);
    const memo: BowlMemo = new Map();
    expect(bowlsIn(journal, 'wren-abbott', memo)).toBe(bowlsIn(journal, 'wren-abbott', memo));
    expect(memo.size).toBe(2);
  });
});

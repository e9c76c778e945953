import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockText } from '../../src/text/dates.ts';
import { clockOf, problemsOf, runsOf } from './journal-of.ts';

describe('runs', () => {
  it('counts from first on and from all on', () => {
    expect(runsOf('on 14:35-14:55 A hairline\noff 15:15 A hairline')).toEqual([
      'A hairline 14:35-14:55 off 15:15: 40/20',
    ]);
  });

  it('takes all on as first on where the note gives one time', () => {
    expect(runsOf('on 15:30 T\noff 15:40 T')).toEqual(['T 15:30 off 15:40: 10/10']);
  });

  it('what was stopped is not among all that a later line takes off', () => {
    expect(runsOf('on 13:10 B nape\non 13:24 A sides\nstopped 13:38 B\noff 13:57')).toEqual([
      'B nape 13:10 off 13:38: 28/28',
      'A sides 13:24 off 13:57: 33/33',
    ]);
  });

  it('makes one run of each bowl and zone of the line', () => {
    expect(runsOf('on 10:00 A, B roots, lengths\noff 10:30 A\noff 10:40 B')).toEqual([
      'A roots 10:00 off 10:30: 30/30',
      'A lengths 10:00 off 10:30: 30/30',
      'B roots 10:00 off 10:40: 40/40',
      'B lengths 10:00 off 10:40: 40/40',
    ]);
  });

  it('ends the places that a line names, and no other', () => {
    expect(runsOf('on 10:00 A roots, lengths, ends\noff 10:30 A ends, roots\noff 10:40 A lengths')).toEqual([
      'A roots 10:00 off 10:30: 30/30',
      'A lengths 10:00 off 10:40: 40/40',
      'A ends 10:00 off 10:30: 30/30',
    ]);
  });

  it('keeps the order of the clock, whatever the order of the lines', () => {
    expect(runsOf('off 11:00 T\non 10:50 T\noff 10:40 A\non 10:00 A')).toEqual([
      'A 10:00 off 10:40: 40/40',
      'T 10:50 off 11:00: 10/10',
    ]);
  });

  it('takes the only bowl that is mixed where the line names none', () => {
    expect(runsOf('on 10:00 roots\noff 10:30', { bowls: 'A' })).toEqual(['A roots 10:00 off 10:30: 30/30']);
    expect(runsOf('on 10:00 roots\noff 10:30 A')).toEqual(['- roots 10:00 off 10:30: 30/30']);
    expect(runsOf('on 10:00 roots\noff 10:30', { bowls: '' })).toEqual(['- roots 10:00 off 10:30: 30/30']);
  });

  it('takes the bowl that is placed there where the line names none', () => {
    const place = 'place A hairline, top\nplace B+T nape weave x8 turn B T\nplace T nape';
    const off = '\noff 10:30';
    expect(runsOf(`${place}\non 10:00 top${off}`)).toEqual(['A top 10:00 off 10:30: 30/30']);
    expect(runsOf('place A hairline\nplace B+T nape weave x8 turn B T\non 10:00 hairline, nape\noff 10:30')).toEqual([
      'A hairline 10:00 off 10:30: 30/30',
      'B nape 10:00 off 10:30: 30/30',
      'T nape 10:00 off 10:30: 30/30',
    ]);
    expect(runsOf('place A roots\non 10:00\noff 10:30')).toEqual(['A 10:00 off 10:30: 30/30']);
    expect(runsOf(`${place}\non 10:00 nape${off}`)).toEqual(['- nape 10:00 off 10:30: 30/30']);
    expect(runsOf(`place A top\nplace B top left\non 10:00 top left${off}`)).toEqual([
      'B top left 10:00 off 10:30: 30/30',
    ]);
    expect(problemsOf(`${place}\non 10:00 nape, top${off}`)).toEqual([
      'bowl-unnamed: The line names no bowl, and this visit mixes A, B and T.',
    ]);
    expect(problemsOf('on 10:00 nape\noff 10:30', { bowls: 'A' })).toEqual([]);
  });

  it('gives a look at a bowl to its further mix only once the bowl itself is off', () => {
    const lines = 'more A 40\non 10:00 A roots\non 10:05 A2 lengths\ncheck 10:20 A gold\noff 10:30 A roots\n';
    const looks = clockOf(`${lines}check 10:35 A yellow\noff 10:40 A2`).runs.map(({ bowl, checks }) => [
      bowl,
      ...checks.map(({ at }) => at && clockText(at)),
    ]);
    expect(looks).toEqual([
      ['A', '10:20'],
      ['A2', '10:35'],
    ]);
  });

  it('knows a further mix by its own name and by the first one’s', () => {
    const more = 'more A 40 at 10:20\non 10:00 A roots\non 10:25 A2 lengths';
    expect(runsOf(`${more}\noff 10:40 A\noff 10:50 A2`)).toEqual([
      'A roots 10:00 off 10:40: 40/40',
      'A2 lengths 10:25 off 10:50: 25/25',
    ]);
    expect(runsOf(`${more}\noff 10:45 A`)).toEqual([
      'A roots 10:00 off 10:45: 45/45',
      'A2 lengths 10:25 off 10:45: 20/20',
    ]);
    expect(runsOf(`${more}\non 10:00 B\noff 10:40 A\noff 10:50 B`)).toHaveLength(3);
    expect(problemsOf('more A\nmore A\non 10:00 A3\noff 10:30 A3')).toEqual([]);
    expect(problemsOf('more C\non 10:00 C2\noff 10:30 C2')).toEqual([
      'no-such-bowl: The line names bowl C2, and this visit mixes A, B and T.',
    ]);
  });

  it('keeps the minutes meant, and the hedge', () => {
    const [run] = clockOf('on ~10:00 A roots for 7min\noff 10:07 A').runs;
    expect(run).toMatchObject({ meant: 7, about: true });
    expect(clockOf('on 10:00 A\noff 10:07 A').runs[0]).toMatchObject({ meant: undefined, about: false });
    expect(clockOf('on 10:00 A for 1mo\noff ~10:07 A').runs[0]).toMatchObject({ meant: undefined, about: true });
  });

  it('gives the time from the first on to the last off', () => {
    expect(clockOf('on 10:00 A\noff 10:30 A\non 10:40 T\noff 10:55 T').span).toBe(55);
    expect(clockOf('on 10:00 A').span).toBeUndefined();
    expect(clockOf('wash 10:00').span).toBeUndefined();
  });
});

describe('off', () => {
  it('ends the zone it names, and everything of a bowl where it names none', () => {
    const on = 'on 10:00 A hairline, top\n';
    expect(runsOf(`${on}off 10:30 A hairline\noff 10:40 A top`)).toEqual([
      'A hairline 10:00 off 10:30: 30/30',
      'A top 10:00 off 10:40: 40/40',
    ]);
    expect(runsOf(`${on}off 10:30 A hairline\noff 10:40 A`)).toEqual([
      'A hairline 10:00 off 10:30: 30/30',
      'A top 10:00 off 10:40: 40/40',
    ]);
    expect(runsOf(`${on}off 10:30 hairline\noff 10:40`)).toEqual([
      'A hairline 10:00 off 10:30: 30/30',
      'A top 10:00 off 10:40: 40/40',
    ]);
  });

  it('takes a zone that the bowl has nowhere as a smaller place of it', () => {
    expect(runsOf('on 10:00 A\noff 10:20 A fringe')).toEqual(['A 10:00 off 10:20: 20/20']);
    expect(runsOf('on 10:00 A\noff 10:20 fringe')).toEqual(['A 10:00 off 10:20: 20/20']);
    expect(runsOf('on 10:00 A lengths\noff 10:20 A fringe')).toEqual(['A lengths 10:00 off 10:20: 20/20']);
  });

  it('takes the last line where a bowl comes off in parts', () => {
    expect(runsOf('on 10:00 A all\noff 10:20 A hairline\noff 10:30 A')).toEqual(['A all 10:00 off 10:30: 30/30']);
  });

  it('does not let a bowl’s later application move its first', () => {
    expect(runsOf('on 10:00 A roots\noff 10:15 A\non 10:20 A roots\noff 10:35 A roots')).toEqual([
      'A roots 10:00 off 10:15: 15/15',
      'A roots 10:20 off 10:35: 15/15',
    ]);
    expect(runsOf('on 10:00 A roots\noff 10:20 A\non 10:30 A lengths\noff 11:00 A')).toEqual([
      'A roots 10:00 off 10:20: 20/20',
      'A lengths 10:30 off 11:00: 30/30',
    ]);
  });

  it('ends only what is on where it names nothing', () => {
    expect(runsOf('on 10:00 A\noff 10:20\non 10:30 B\noff 10:50')).toEqual([
      'A 10:00 off 10:20: 20/20',
      'B 10:30 off 10:50: 20/20',
    ]);
  });

  it('prefers the very zone to `rest`', () => {
    expect(
      runsOf('on 10:00 A roots t-section\non 10:10 A roots rest\noff 10:30 A roots t-section\noff 10:40 A roots rest'),
    ).toEqual(['A roots t-section 10:00 off 10:30: 30/30', 'A roots rest 10:10 off 10:40: 30/30']);
    expect(runsOf('on 10:00 A hairline\non 10:10 A rest\noff 10:30 A hairline\noff 10:40 rest')).toEqual([
      'A hairline 10:00 off 10:30: 30/30',
      'A rest 10:10 off 10:40: 30/30',
    ]);
  });

  it('counts `stopped` for what has no `off`', () => {
    const lines = 'on 13:00-13:10 A roots\non 13:00 B lengths\nstopped 13:24 A "rinsed at once"\noff 13:30 B';
    expect(runsOf(lines)).toEqual(['A roots 13:00-13:10 off 13:24: 24/14', 'B lengths 13:00 off 13:30: 30/30']);
    expect(problemsOf(lines)).toEqual([]);
    expect(runsOf('on 13:00 A\nstopped 13:24 A\noff 13:30 A')).toEqual(['A 13:00 off 13:30: 30/30']);
  });

  it('does not ask for the end of what a line without a time ends', () => {
    const clock = clockOf('on 13:00 A\nstopped A "rinsed at once"');
    expect(clock.problems).toEqual([]);
    expect(clock.runs[0]).toMatchObject({ off: undefined, fromFirst: undefined, offPlace: { line: 5 } });
  });

  it('leaves rinsing and washing out of it', () => {
    expect(problemsOf('on 10:00 A roots\nrinse 10:30\nwash 10:35')).toEqual([
      'no-off: Bowl A roots went on at 10:00, and no `off` line follows.',
    ]);
  });
});

describe('problems of off', () => {
  it('says an off before the on, once', () => {
    expect(problemsOf('on 10:35 A roots, lengths\noff 10:20 A')).toEqual([
      'off-before-on: Off at 10:20 is 15 min before bowl A roots went on, at 10:35.',
    ]);
    expect(problemsOf('on 10:35 A roots\noff 10:20 roots')).toEqual([
      'off-before-on: Off at 10:20 is 15 min before bowl A roots went on, at 10:35.',
    ]);
  });

  it('says an off before all is on, once', () => {
    expect(problemsOf('on 10:00-10:20 A roots, lengths\noff 10:15 A')).toEqual([
      'off-before-on: Off at 10:15 is 5 min before all of bowl A roots was on, at 10:20.',
    ]);
    expect(problemsOf('on 10:00-10:20 A roots\nstopped 10:15 A')).toEqual([]);
    expect(runsOf('on 10:00-10:20 A\noff 10:15 A')).toEqual(['A 10:00-10:20 off 10:15: 15/?']);
  });

  it('does not take the off of an earlier application for it', () => {
    expect(problemsOf('on 10:00 A roots\noff 10:20 A\non 10:35 A roots')).toEqual([
      'no-off: Bowl A roots went on at 10:35, and no `off` line follows.',
    ]);
  });

  it('says each `on` line without an off once', () => {
    expect(problemsOf('on 10:00-10:10 A roots, lengths\non 10:20 B')).toEqual([
      'no-off: Bowl A roots and bowl A lengths went on at 10:00, and no `off` line follows.',
      'no-off: Bowl B went on at 10:20, and no `off` line follows.',
    ]);
    const [problem] = clockOf('on 10:00-10:10 A').problems;
    expect(problem?.todo).toBe('Write when it came off, as in `off 10:40 A`.');
    expect(clockOf('on 10:00 roots', { bowls: '' }).problems[0]).toMatchObject({
      message: 'Roots went on at 10:00, and no `off` line follows.',
      todo: 'Write when it came off, as in `off 10:30`.',
    });
    expect(problemsOf('on 10:00', { bowls: '' })).toEqual([
      'no-off: The colour went on at 10:00, and no `off` line follows.',
    ]);
  });

  it('says an off that ends nothing', () => {
    expect(problemsOf('off 10:30 A')).toEqual(['off-without-on: No `on` line puts bowl A on.']);
    expect(problemsOf('off 10:30')).toEqual(['off-without-on: Nothing is on at this time to take off.']);
    expect(problemsOf('on 10:00 A roots\noff 10:30 A, B')).toEqual(['off-without-on: No `on` line puts bowl B on.']);
    expect(problemsOf('on 10:00 A roots\noff 10:30 A\noff 10:40 nape')).toEqual([
      'off-without-on: No `on` line puts nape on.',
    ]);
  });

  it('says one thing where two lines name two bowls', () => {
    expect(problemsOf('on 10:00 A roots\noff 10:30 B')).toEqual([
      'off-without-on: No `on` line puts bowl B on, and bowl A roots has no `off` line.',
    ]);
    expect(problemsOf('on 10:40 A roots\noff 10:30 B')).toEqual([
      'no-off: Bowl A roots went on at 10:40, and no `off` line follows.',
      'off-without-on: No `on` line puts bowl B on.',
    ]);
  });

  it('says a bowl that is not mixed, and nothing that follows from it', () => {
    const strange = 'no-such-bowl: The line names bowl C, and this visit mixes A.';
    expect(problemsOf('on 10:00 A\noff 10:30 C', { bowls: 'A' })).toEqual([strange]);
    expect(problemsOf('on 10:00 C\noff 10:30 A', { bowls: 'A' })).toEqual([strange]);
    expect(problemsOf('on 10:00 C\ncheck 10:10 C\noff 10:30 C', { bowls: 'A' })).toEqual([strange]);
    expect(problemsOf('place A top\non 10:00 A\noff 10:30 A')).toEqual([]);
    expect(problemsOf('place A+B turn A C\non 10:00 A\noff 10:30 A', { bowls: 'A B' })).toEqual([
      'no-such-bowl: The line names bowl C, and this visit mixes A and B.',
    ]);
    expect(problemsOf('on 10:00 A\noff 10:30 A', { bowls: '' })).toEqual([
      'no-such-bowl: The line names bowl A, and this visit mixes none.',
    ]);
  });
});

describe('typed minutes', () => {
  it('may count from first on or from all on, to a minute', () => {
    for (const said of ['40min', '39min', '41min', '28min', '29min', '30-45min'])
      expect(problemsOf(`on 10:00-10:12 A\noff 10:40 A ${said}`), said).toEqual([]);
    expect(problemsOf('on 10:00-10:12 A\noff 10:40 A 0.5h')).toEqual([
      'said-minutes: 30 min is typed; 10:00 to 10:40 is 40 min, 28 min from all on.',
    ]);
  });

  it('are said when they fit neither', () => {
    const clock = clockOf('on 10:00 A\noff 10:36 A 40min');
    expect(clock.problems).toMatchObject([
      { kind: 'said-minutes', message: '40 min is typed; 10:00 to 10:36 is 36 min.', place: { line: 5 } },
    ]);
  });

  it('may be five minutes out when hedged', () => {
    expect(problemsOf('on 10:00 A\noff 10:36 A ~40min')).toEqual([]);
    expect(problemsOf('on 10:00 A\noff 10:36 A ~42min')).toHaveLength(1);
  });

  it('are left alone without an end or a unit of the clock', () => {
    expect(problemsOf('on 10:00 A\noff 10:36 A 1mo')).toEqual([]);
    expect(problemsOf('on 10:00 A\noff A 40min')).toEqual([]);
    expect(problemsOf('off 10:36 A 40min')).toEqual(['off-without-on: No `on` line puts bowl A on.']);
  });
});

describe('checks', () => {
  const seen = (lines: string, given?: Parameters<typeof clockOf>[1]): string[] =>
    clockOf(lines, given).runs.map(
      ({ bowl, zone, checks }) =>
        `${bowl} ${zone}: ${checks
          .map(
            ({ at, seen }) =>
              `${at === undefined ? '?' : clockText(at)} ${seen.map(({ stage }) => stage?.stage ?? '-').join(' ')}`,
          )
          .join(', ')}`,
    );

  it('give each zone what was seen there', () => {
    expect(
      seen(
        'on 14:35 A hairline, top\ncheck 14:55 hairline gold, top orange\noff 15:15 A hairline\ncheck 15:17 A top yellow\noff 15:20 A',
      ),
    ).toEqual(['A hairline: 14:55 gold', 'A top: 14:55 orange, 15:17 yellow']);
  });

  it('of a bowl are of all its runs that are on', () => {
    expect(seen('on 10:00 A roots\non 10:20 A lengths\ncheck 10:10 A gold\ncheck 10:30 A yellow\noff 10:40 A')).toEqual(
      ['A roots: 10:10 gold, 10:30 yellow', 'A lengths: 10:30 yellow'],
    );
  });

  it('that name nothing are of everything that is on', () => {
    expect(seen('on 10:00 A\non 10:05 B\ncheck 10:10\noff 10:20\ncheck 10:30')).toEqual(['A : 10:10 ', 'B : 10:10 ']);
  });

  it('of a bowl that is off are of its last run', () => {
    expect(seen('on 10:00 A roots\noff 10:15 A\non 10:20 A roots\noff 10:35 A\ncheck 10:40 A yellow')).toEqual([
      'A roots: ',
      'A roots: 10:40 yellow',
    ]);
  });

  it('need no off', () => {
    expect(seen('on 10:00 A\ncheck 10:10 A gold')).toEqual(['A : 10:10 gold']);
  });

  it('without a time are of what they name', () => {
    expect(seen('on 10:00 A\non 10:05 B\ncheck A gold\ncheck "looks even"\noff 10:20')).toEqual(['A : ? gold', 'B : ']);
  });

  it('are all kept as looks, in order', () => {
    const { looks } = clockOf(
      'check ~9:50 roots "before anything"\non 10:00 A lengths\noff 10:20 A\ncheck 10:30 roots gold',
    );
    expect(looks).toMatchObject([
      { at: 590, about: true },
      { at: 630, about: false },
    ]);
  });

  it('before the on are said', () => {
    expect(problemsOf('on 14:35 A top, hairline\ncheck 14:20 A top orange\noff 15:00 A')).toEqual([
      'check-before-on: A check at 14:20 is 15 min before bowl A top went on, at 14:35.',
    ]);
    expect(problemsOf('on 14:35 A top\non 14:30 A hairline\ncheck 14:20 A orange\noff 15:00 A')).toEqual([
      'check-before-on: A check at 14:20 is 10 min before bowl A hairline went on, at 14:30.',
    ]);
    expect(problemsOf('on 14:35 A top\ncheck 14:20 top orange\noff 15:00 A')).toHaveLength(1);
  });

  it('between two bowls are only a look', () => {
    expect(
      problemsOf('on 10:00 A roots\noff 10:30 A\ncheck 10:40 lengths gold\non 10:50 T lengths\noff 11:00 T'),
    ).toEqual([]);
    expect(problemsOf('on 10:00 A roots\ncheck 9:50\noff 10:30 A')).toEqual([]);
    expect(problemsOf('check 9:50 roots gold')).toEqual([]);
  });
});

describe('heat', () => {
  const heat = (lines: string): number[] => clockOf(lines).runs.map((run) => run.heat);

  it('counts the minutes within the run', () => {
    expect(heat('on 10:00 A\nheat 10:10-10:25\noff 10:20 A')).toEqual([10]);
    expect(heat('on 10:00 A\nheat 9:50-10:05\noff 10:20 A')).toEqual([5]);
    expect(heat('on 10:00 A\nheat 9:40-9:50\noff 10:20 A')).toEqual([0]);
    expect(heat('on 10:00 A\nheat 10:10-10:25')).toEqual([15]);
  });

  it('adds up, for the bowls and zones it names', () => {
    expect(heat('on 10:00 A\non 10:00 B\nheat 10:05-10:10 A\nheat 10:12 5min A\nheat 10min\noff 10:30')).toEqual([
      20, 10,
    ]);
    expect(heat('on 10:00 A roots, lengths\nheat 10:05-10:10 lengths\noff 10:30')).toEqual([0, 5]);
  });

  it('is nothing where the line does not say how long', () => {
    expect(heat('on 10:00 A\nheat 10:05\nheat A\noff 10:30')).toEqual([0]);
  });
});

describe('times that count from an on', () => {
  it('count from the first on of the bowl and zone on their line', () => {
    expect(runsOf('on 10:00-10:20 A roots\non 10:15 A lengths\noff +30 A lengths\noff +40 A roots')).toEqual([
      'A roots 10:00-10:20 off 10:40: 40/20',
      'A lengths 10:15 off 10:45: 30/30',
    ]);
    expect(clockOf('on 14:35 A hairline, top\ncheck +10 A hairline orange\noff 15:00').looks[0]?.at).toBe(885);
  });

  it('count from the only bowl', () => {
    expect(runsOf('on 10:00 A roots\non 10:10 A lengths\noff +40')).toEqual([
      'A roots 10:00 off 10:40: 40/40',
      'A lengths 10:10 off 10:40: 30/30',
    ]);
  });

  it('count from the only bowl running then', () => {
    const { looks, problems } = clockOf('on 10:00 A\noff 10:20 A\non 10:30 T\ncheck +25\noff 11:00 T');
    expect(problems).toEqual([]);
    expect(looks[0]?.at).toBe(655);
    expect(runsOf('on 10:00 A\noff 10:50 A\non 10:30 T\noff +10')).toEqual([
      'A 10:00 off 10:50: 50/50',
      'T 10:30 off 10:40: 10/10',
    ]);
  });

  it('are said with two bowls running, and with none', () => {
    expect(problemsOf('on 10:00 A\non 10:10 B\ncheck +5\noff 10:30')).toEqual([
      'relative-to-several: +5 counts from one `on` line, and 2 bowls are running: A from 10:00 and B from 10:10.',
    ]);
    expect(problemsOf('on 10:00 A\noff 10:03 A\non 10:10 B\noff 10:13 B\ncheck +5 gold')).toEqual([
      'relative-to-several: +5 counts from one `on` line, and 2 bowls are running: A from 10:00 and B from 10:10.',
    ]);
    expect(problemsOf('check +5 A gold')).toEqual([
      'relative-without-on: +5 counts from an `on` line of bowl A, and none stands.',
    ]);
    expect(problemsOf('check +5')).toEqual(['relative-without-on: +5 counts from an `on` line, and none stands.']);
    expect(clockOf('on 10:00 roots\non 10:10 B\ncheck +5\noff 10:30').problems).toMatchObject([
      { kind: 'bowl-unnamed' },
      {
        message: '+5 counts from one `on` line, and 2 bowls are running: an unnamed one from 10:00 and B from 10:10.',
        todo: 'Name the bowl after the time: `+5 B`.',
      },
    ]);
  });

  it('may stand on any line of the clock', () => {
    expect(clockOf('on 10:00 A\nheat +5 10min A\nreaction +18 A temples burning\noff +20 A').runs).toMatchObject([
      { heat: 10, fromFirst: 20 },
    ]);
    expect(problemsOf('on 10:00 A\noff 10:20 A\nreaction +18 B burning')).toEqual([
      'relative-without-on: +18 counts from an `on` line of bowl B, and none stands.',
    ]);
  });

  it('may stand on an `on` line', () => {
    expect(runsOf('on 10:00 A roots\non +20 A lengths\noff 10:45 A')).toEqual([
      'A roots 10:00 off 10:45: 45/45',
      'A lengths 10:20 off 10:45: 25/25',
    ]);
    expect(problemsOf('on +20 B lengths')).toEqual([
      'relative-without-on: +20 counts from an `on` line of bowl B lengths, and none stands.',
    ]);
  });
});

describe('past midnight', () => {
  it('goes on into the next day', () => {
    expect(problemsOf('heat 23:50-0:10')).toEqual([]);
    expect(runsOf('on 23:50-0:10 A roots\noff 0:40 A')).toEqual(['A roots 23:50-00:10 off 00:40: 50/30']);
    expect(runsOf('on 0:05 A\noff 0:40 A', { head: '2026-09-04 23:30' })).toEqual(['A 00:05 off 00:40: 35/35']);
    expect(clockOf('on 0:05 A\noff 0:40 A', { head: '2026-09-04 23:30' }).runs[0]?.firstOn).toBe(1445);
  });

  it('does not take a slip of some minutes for the next day', () => {
    expect(problemsOf('on 14:55-14:35 A\noff 15:20 A')).toEqual([
      'span-backwards: The span 14:55-14:35 ends 20 min before it begins.',
    ]);
    expect(runsOf('on 14:55-14:35 A\noff 15:20 A')).toEqual(['A 14:55 off 15:20: 25/25']);
    expect(problemsOf('heat 10:20-10:10 A')).toEqual([
      'span-backwards: The span 10:20-10:10 ends 10 min before it begins.',
    ]);
  });

  it('gives the same minutes whenever the work begins', () => {
    const at = (minute: number): string => clockText(minute);
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1439 }),
        fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 4, maxLength: 4 }),
        (begin, [a = 0, b = 0, c = 0, d = 0]) => {
          const lines = (start: number): string =>
            [
              `on ${at(start)}-${at(start + a)} A roots`,
              `on ${at(start + a + b)} B lengths`,
              `check ${at(start + a)} A gold`,
              `off ${at(start + a + b + c)} A`,
              `off ${at(start + a + b + c + d)} B`,
            ].join('\n');
          const [moved, noon] = [clockOf(lines(begin)), clockOf(lines(720))];
          expect([...moved.problems, ...noon.problems]).toEqual([]);
          expect(moved.runs.map(({ fromFirst, fromAll }) => [fromFirst, fromAll])).toEqual(
            noon.runs.map(({ fromFirst, fromAll }) => [fromFirst, fromAll]),
          );
          expect(moved.span).toBe(noon.span);
        },
      ),
    );
  });

  it('gives the same runs in any order of the lines', () => {
    const lines = [
      'on 10:00-10:12 A roots',
      'on 10:20 B lengths',
      'check 10:15 A gold',
      'off 10:40 A',
      'off 10:50 B 30min',
      'heat 10:15-10:20',
    ];
    const plain = runsOf(lines.join('\n'));
    fc.assert(
      fc.property(fc.shuffledSubarray(lines, { minLength: lines.length }), (order) => {
        expect(runsOf(order.join('\n'))).toEqual(plain);
        expect(problemsOf(order.join('\n'))).toEqual([]);
      }),
    );
  });
});

describe('the salon’s hours', () => {
  const salon = 'hours 9:00-19:00';

  it('settle a time without its half of the day', () => {
    expect(runsOf('on 2:35-2:55 A\noff 3:15 A', { salon })).toEqual(['A 14:35-14:55 off 15:15: 40/20']);
    expect(runsOf('on 11:50-12:05 A\noff 12:30 A', { salon })).toEqual(['A 11:50-12:05 off 12:30: 40/25']);
  });

  it('are asked for where they hold both readings or neither', () => {
    expect(problemsOf('on 7:40 A\noff 8:00 A', { salon })).toEqual([
      'outside-hours: Neither 07:40 nor 19:40 is within the hours 09:00-19:00; the note is read as 19:40.',
      'outside-hours: Neither 08:00 nor 20:00 is within the hours 09:00-19:00; the note is read as 08:00.',
    ]);
    const clock = clockOf('on 9:40 A\noff 10:10 A', { salon: 'hours 8:00-23:00' });
    expect(clock.problems).toMatchObject([
      {
        kind: 'either-half-day',
        message: '09:40 and 21:40 are both within the hours 08:00-23:00; the note is read as 09:40.',
        todo: 'Write `09:40` or `21:40`, with two figures for the hour, or `am` or `pm` after it.',
      },
      { kind: 'either-half-day' },
    ]);
  });

  it('are asked for once, without what follows from the reading', () => {
    expect(
      problemsOf('on 18:40 A\ncheck 7:10 A gold\noff 7:15 A', { salon }).map((text) => text.split(':')[0]),
    ).toEqual(['outside-hours', 'outside-hours']);
    expect(problemsOf('on 8:10 A\noff 9:00 A', { salon }).map((text) => text.split(':')[0])).toEqual(['outside-hours']);
  });

  it('do not hide what is wrong on another line', () => {
    expect(
      problemsOf('on 7:40pm A\nwash 8:10\nheat 20:20-20:10 A\noff 20:30 A', { salon }).map(
        (text) => text.split(':')[0],
      ),
    ).toEqual(['outside-hours', 'span-backwards']);
  });

  it('settle the header, the tests and the next visit too', () => {
    const head = '2026-09-04 7:40';
    expect(
      problemsOf('test skin 7:50 cream read 2026-09-06 7:55 clear\nnext 2026-10-01 8:00 foils', { salon, head }).map(
        (text) => text.slice(0, 30),
      ),
    ).toEqual([
      'outside-hours: Neither 07:40 n',
      'outside-hours: Neither 07:50 n',
      'outside-hours: Neither 07:55 n',
      'outside-hours: Neither 08:00 n',
    ]);
  });
});

import { describe, expect, test } from 'vitest';
import harmTold from '../../src/rules/cautions/harm-told.ts';
import persulphate from '../../src/rules/cautions/persulphate-breathing.ts';
import soreScalp from '../../src/rules/cautions/sore-scalp.ts';
import { rulesIn } from './compile.ts';
import { foundBy, notesOf, saidBy } from './one-rule.ts';

const CREAM = 'bowl A 40 cream 6/0 + 60 dev-6';
const CLAY = 'bowl A 40 clay + 80 dev-6';
const on = (date: string, ...lines: readonly string[]): string[] => [`visit ${date} wren-abbott`, ...lines];
const said = (visits: readonly string[], client: readonly string[] = []): string[] =>
  saidBy(harmTold, notesOf(client, visits));

const SWOLLEN = 'call 2026-09-06 "eyelids swollen, gone by Monday"';

describe('skin', () => {
  test('is told of once, with the first later visit that puts colour on', () => {
    const visits = [...on('2026-09-04', CREAM, SWOLLEN), ...on('2026-10-04', CREAM), ...on('2026-11-04', CLAY)];
    expect(said(visits)).toEqual([
      'stop: The `call` line tells of "swollen", and the visit of 2026-09-04 has no `reaction` line; colour or lightener again on 2026-10-04.',
    ]);
    expect(foundBy(harmTold, notesOf([], visits))[0]?.also).toHaveLength(1);
  });

  test('two lines of a visit are one finding', () => {
    const visits = on('2026-09-04', CREAM, SWOLLEN, 'note scalp itching all weekend');
    expect(foundBy(harmTold, notesOf([], visits)).map(({ also }) => also?.length)).toEqual([1]);
  });

  test('is answered by a reaction line of that visit, and by none of another', () => {
    expect(said(on('2026-09-04', CREAM, SWOLLEN, 'reaction eyelids swollen'))).toEqual([]);
    expect(said([...on('2026-09-04', CREAM, SWOLLEN), ...on('2026-10-04', 'reaction crown sore')])).toHaveLength(1);
    expect(said(on('2026-09-04', CREAM, SWOLLEN, 'reaction none'))).toHaveLength(1);
  });

  test('news under a later visit is answered where it came of', () => {
    const about = on('2026-10-04', CREAM, 'about 2026-09-04 crown "scalp blistered, scab for a fortnight"');
    expect(said([...on('2026-09-04', CREAM), ...about])[0]).toContain(
      'the visit of 2026-09-04 has no `reaction` line; colour or lightener again on 2026-10-04',
    );
    expect(said([...on('2026-09-04', CREAM, 'reaction crown blisters'), ...about])).toEqual([]);
  });

  test('what was there before the work is answered by a caution', () => {
    const declined = 'declined lightener "scalp grazed and sore"';
    expect(said(on('2026-09-04', declined))).toHaveLength(1);
    expect(said(on('2026-09-04', declined, 'caution sore, grazed scalp'))).toEqual([]);
  });

  test('a skin test read clear that tells of a reaction is a stop, and does not hold', () => {
    const line = 'test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear "red and itchy overnight, gone by noon"';
    expect(said(on('2026-09-04', CREAM), [line])[0]).toMatch(/^stop: The skin test is read `clear`/);
    expect(rulesIn(notesOf([line], on('2026-09-04', CREAM)))).not.toContain('skin-test-unclear');
    expect(said(on('2026-09-04', CREAM), [line.replace(' clear ', ' reaction ')])).toEqual([]);
  });

  test.each([
    'care rinse at once, burning scalp means call us',
    'because sore-scalp "healed blister"',
    'check 10:30 crown red',
    'result roots 6 red',
    'off 10:40 A # scalp sore',
    'place A roots melt',
    'call "no itching, no swelling, loves it"',
  ])('is not told by %s', (line) => expect(said(on('2026-09-04', CREAM, line))).toEqual([]));
});

describe('hair', () => {
  const GUMMY = 'result ends 9 "gummy when wet, some snapped at the comb"';

  test('is a fix, with the first later visit that lightens', () => {
    expect(said([...on('2026-09-04', CLAY, GUMMY), ...on('2026-10-04', CREAM), ...on('2026-11-04', CLAY)])).toEqual([
      'fix: The `result` line tells of "gummy", and no `hold`, strand or stretch test follows it; lightener again on 2026-11-04.',
    ]);
  });

  test.each([
    ['a hold', ['hold lightener 12w'], []],
    ['a reaction line', ['reaction ends gummy'], []],
    ['an adverse test of the visit', ['test stretch ends breaks'], []],
    ['a test made since', [], ['test strand ends clear']],
  ])('is answered by %s', (_, lines, later) => {
    expect(said([...on('2026-09-04', CLAY, GUMMY, ...lines), ...on('2026-11-04', ...later, CREAM)])).toEqual([]);
  });

  test('is not answered by a test made before the work', () => {
    expect(said(on('2026-09-04', 'test strand ends clear', CLAY, GUMMY))).toHaveLength(1);
  });
});

describe('denials', () => {
  test.each(['asthma no', 'asthma: none', 'Asthma? no', 'kein Asthma', 'sem asma'])('caution %s is none', (text) => {
    expect(saidBy(persulphate, notesOf([`caution ${text}`], on('2026-09-04', CLAY)))).toEqual([]);
  });

  test('asthma that ended long ago is worth a thought', () => {
    const past = notesOf(['caution asthma as a child, none for thirty years'], on('2026-09-04', CLAY));
    expect(saidBy(persulphate, past)).toEqual([
      'mind: Bowl A holds clay, a lightener, and "asthma as a child, none for thirty years" is on file.',
    ]);
  });

  test('a rash of a watch strap is none of the scalp', () => {
    const caution = 'caution gets a rash on the wrist from a nickel watch strap';
    expect(saidBy(soreScalp, notesOf([caution], on('2026-09-04', CREAM)))).toEqual([]);
    expect(saidBy(soreScalp, notesOf(['caution rash on the neck'], on('2026-09-04', CREAM)))).toHaveLength(1);
  });
});

import { describe, expect, it } from 'vitest';
import { problemsOf, runsOf } from './journal-of.ts';

describe('the clock of a head', () => {
  it('counts 0+25 from zero, whatever bowl is named', () => {
    expect(runsOf('zero 9:40\non 9:40 A top\non 0+12 B nape\noff 0+50 A\noff B 0+55 min')).toEqual([
      'A top 09:40 off 10:30: 50/50',
      'B nape 09:52 off 10:35: 43/43',
    ]);
  });

  it('leaves +25 what it was: after the first on of its own bowl', () => {
    expect(runsOf('zero 9:40\non 0+12 B nape\noff +25 B')).toEqual(['B nape 09:52 off 10:17: 25/25']);
  });

  it('needs no line of zero before it, and goes by the salon’s hours', () => {
    const salon = 'hours 9:00-19:00';
    expect(runsOf('on 0+12 B\noff 0+40 B\nzero 2:40', { salon })).toEqual(['B 14:52 off 15:20: 28/28']);
  });

  it('says once that nothing tells when zero was', () => {
    expect(problemsOf('on 0+0 A\ncheck 0+25 A gold\noff 0+50 A')).toEqual([
      'relative-without-on: 0+0 counts from a `zero` line, and none stands.',
    ]);
  });

  it('goes by the first of two zero lines, and says that there are two', () => {
    const lines = 'zero 9:40\nzero 9:45\non 0+12 B nape\noff 0+40 B';
    expect(runsOf(lines)).toEqual(['B nape 09:52 off 10:20: 28/28']);
    expect(problemsOf(lines)).toEqual([
      'relative-without-on: A second `zero` line: the clock of the head begins once, and the first one counts.',
    ]);
  });

  it('reads two figures with a plus sign between that are no 0+25 as before', () => {
    expect(problemsOf('on 9:40 A\nwash 10+5 clarify\noff 10:10 A')).toEqual([]);
    expect(runsOf('zero 9:40\non 9:40 A\noff 10:10 A 0 + 25')).toEqual(['A 09:40 off 10:10: 30/30']);
  });
});

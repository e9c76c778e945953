import { describe, expect, it } from 'vitest';
import { nextLook, sidesOf } from '../../src/reckon/clock/sides.ts';
import { clockText } from '../../src/text/dates.ts';
import { clockOf } from './journal-of.ts';

const sides = (lines: string): unknown[] =>
  sidesOf(clockOf(lines)).map(({ bowl, zone, on, longer }) => [bowl, zone, on, longer]);

describe('the sides of a bowl', () => {
  it('are its runs whose zones differ by left and right alone', () => {
    expect(sides('on 10:00 A back left\non 10:12 A back right\noff 10:40 A back left\noff 10:49 A back right')).toEqual(
      [['A', 'back', 12, -3]],
    );
    expect(sides('on 10:00 A right\non 10:05 A left\noff 10:40 A')).toEqual([['A', '', -5, 5]]);
  });

  it('are none where the bowls or the places differ', () => {
    expect(sides('on 10:00 A left\non 10:05 B right\noff 10:40')).toEqual([]);
    expect(sides('on 10:00 A back left\non 10:05 A top right\noff 10:40 A')).toEqual([]);
    expect(sides('on 10:00 A left\non 10:05 A top\noff 10:40 A')).toEqual([]);
  });

  it('leave open how long while one is on', () => {
    expect(sides('on 10:00 A left\non 10:05 A right\noff 10:40 A left')).toEqual([['A', '', 5, undefined]]);
  });
});

describe('the next look', () => {
  const looks = (lines: string): (string | undefined)[] =>
    clockOf(lines).runs.map((run) => {
      const at = nextLook(run, 10);
      return at === undefined ? undefined : clockText(at);
    });

  it('is due so many minutes after the last one, or after first on', () => {
    expect(looks('on 10:00-10:08 A top')).toEqual(['10:10']);
    expect(looks('on 10:00 A top\ncheck 10:10 A orange\ncheck 10:21 A gold')).toEqual(['10:31']);
    expect(looks('on 10:00 A top\ncheck A orange')).toEqual(['10:10']);
  });

  it('is none for what is off', () => {
    expect(looks('on 10:00 A top\noff 10:30 A')).toEqual([undefined]);
  });
});

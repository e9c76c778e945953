import { describe, expect, test } from 'vitest';
import { anyMeet, anyMeetLoosely, belowRoots, isAt, mayMeet } from '../../src/reckon/head/hair-meets.ts';

const none = new Map();

describe('whether two zones can hold the same hair', () => {
  test.each([
    ['top', 'lengths'],
    ['roots', 'roots crown'],
    ['', 'nape'],
    ['all', 'ends'],
    ['full-head', 'top'],
    ['back left', 'back'],
    ['brow', 'brow'],
  ])('%s and %s can', (a, b) => {
    expect(mayMeet(a, b, none)).toBe(true);
    expect(mayMeet(b, a, none)).toBe(true);
  });

  test.each([
    ['roots', 'ends'],
    ['top', 'nape'],
    ['roots top', 'ends top'],
    ['roots top', 'roots nape'],
    ['', 'brow'],
    ['lengths', 'beard'],
    ['mids', 'ends'],
  ])('%s and %s cannot', (a, b) => {
    expect(mayMeet(a, b, none)).toBe(false);
    expect(mayMeet(b, a, none)).toBe(false);
  });

  test('no zones are the whole head', () => {
    expect(anyMeet([], ['top'], none)).toBe(true);
    expect(anyMeet([], [], none)).toBe(true);
    expect(anyMeet(['nape', 'roots top'], ['ends', 'top'], none)).toBe(true);
    expect(anyMeet(['nape'], ['top'], none)).toBe(false);
  });

  test('what is below the roots can be taken as one', () => {
    expect(belowRoots('ends top')).toBe('lengths top');
    expect(anyMeetLoosely(['ends'], ['lengths'], none)).toBe(true);
    expect(anyMeetLoosely(['mids'], ['roots'], none)).toBe(false);
  });
});

test('a zone is at the places along the hair that it names', () => {
  expect(isAt('roots crown', 'roots')).toBe(true);
  expect(isAt('crown', 'roots', 'ends')).toBe(false);
});

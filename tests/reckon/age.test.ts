import { describe, expect, it } from 'vitest';
import type { ClientFile } from '../../src/journal/journal.ts';
import { ageOf, isUnder } from '../../src/reckon/client/age.ts';
import { journalOf } from './journal-of.ts';

const clientOf = (lines: string): ClientFile => {
  const client = journalOf(`client wren-abbott\n${lines}`).clients.get('wren-abbott');
  if (client === undefined) throw new Error('no client');
  return client;
};

describe('ageOf', () => {
  it('counts whole years to the day', () => {
    expect(ageOf(clientOf('born 2010-05-09'), '2026-05-08')).toBe(15);
    expect(ageOf(clientOf('born 2010-05-09'), '2026-05-09')).toBe(16);
  });

  it('takes the youngest she can be where a month or a year is all that is noted', () => {
    expect(ageOf(clientOf('born 2010-05'), '2026-05-30')).toBe(15);
    expect(ageOf(clientOf('born 2010-05'), '2026-05-31')).toBe(16);
    expect(ageOf(clientOf('born 2010'), '2026-12-30')).toBe(15);
    expect(ageOf(clientOf('born 2010'), '2026-12-31')).toBe(16);
  });

  it('takes the younger of two dates', () => {
    expect(ageOf(clientOf('born 1988-04-02\nborn 1998-04-02'), '2026-09-04')).toBe(28);
  });

  it('is not known without a birth, before it, or without a date', () => {
    expect(ageOf(clientOf('natural 6'), '2026-09-04')).toBeUndefined();
    expect(ageOf(clientOf('born 2026-10-01'), '2026-09-04')).toBeUndefined();
    expect(ageOf(clientOf('born 1988-04-02'), '')).toBeUndefined();
  });
});

describe('isUnder', () => {
  it('compares with an age on the day', () => {
    expect(isUnder(16, clientOf('born 2010-05-09'), '2026-05-08')).toBe(true);
    expect(isUnder(16, clientOf('born 2010-05-09'), '2026-05-09')).toBe(false);
    expect(isUnder(16, clientOf('natural 6'), '2026-05-09')).toBeUndefined();
  });
});

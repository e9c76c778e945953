import { describe, expect, test } from 'vitest';
import { counts } from '../../src/rules/reported.ts';
import { findIn, textOf } from './compile.ts';

const SHELF = `
  product dev-6 "Cream developer" developer 6%
  product clay "Peregrine clay" lightener
    mix 1:1.5-1:2
    time 20-50 min from first-on`;

const notes = (client: string, visit: string): string => `${textOf(SHELF)}
client wren-abbott "Wren Abbott"
  ${client}
visit 2026-09-04 wren-abbott
  bowl A 30 clay + 80 dev-6
  on 14:00 A
  check 14:30 A gold
  off 14:58 A
  ${visit}
`;

const briefly = (text: string): { findings: string[]; answered: string[] } => {
  const { findings, answered } = findIn(text);
  const line = ({ rule, reason }: { rule: string; reason?: string }): string =>
    reason === undefined ? rule : `${rule}: ${reason}`;
  return { findings: findings.map(line), answered: answered.map(line) };
};

describe('a because line', () => {
  test('without one both findings stand', () => {
    expect(briefly(notes('', ''))).toEqual({ findings: ['ratio-off-mix', 'past-time'], answered: [] });
  });

  test('on the visit moves the finding to the answered ones, with the reason', () => {
    expect(briefly(notes('', 'because ratio-off-mix "runny on purpose"'))).toEqual({
      findings: ['past-time'],
      answered: ['ratio-off-mix: runny on purpose'],
    });
  });

  test('on the client covers her visits', () => {
    expect(briefly(notes('because ratio-off-mix "always runny"', '')).answered).toEqual([
      'ratio-off-mix: always runny',
    ]);
  });

  test('on the visit stands before one on the client', () => {
    const both = notes('because ratio-off-mix "always runny"', 'because ratio-off-mix "this once"');
    expect(briefly(both).answered).toEqual(['ratio-off-mix: this once']);
  });

  test('never hides a stop, which no longer counts', () => {
    const text = notes('', 'because past-time "timer failed, strand was strong"');
    expect(briefly(text)).toEqual({
      findings: ['ratio-off-mix', 'past-time: timer failed, strand was strong'],
      answered: ['past-time: timer failed, strand was strong'],
    });
    expect(
      findIn(text)
        .findings.filter(counts)
        .map(({ rule }) => rule),
    ).toEqual(['ratio-off-mix']);
  });

  test('without a reason explains nothing', () => {
    const { findings } = briefly(notes('', 'because ratio-off-mix'));
    expect(findings).toContain('ratio-off-mix');
  });

  test('covers what the reader found on the same entry only', () => {
    const text = `client wren-abbott "Wren Abbott"
  because unknown-word "my own word"
  zork 12
client zoe-harrow "Zoë Harrow"
  zork 12
`;
    const { findings, answered } = findIn(text);
    expect(findings.map(({ client }) => client)).toEqual(['zoe-harrow']);
    expect(answered.map(({ client }) => client)).toEqual(['wren-abbott']);
  });

  test('on one client leaves another client alone', () => {
    const other = 'client zoe-harrow "Zoë Harrow"\n  because ratio-off-mix "hers"';
    expect(briefly(`${notes('', '')}${other}\n`).findings).toContain('ratio-off-mix');
  });
});

test('a because line on a visit that cannot be filed covers that visit still', () => {
  const nobody = 'visit 2026-09-04\n  because header-shape "walk-in, no name given"\n';
  expect(briefly(nobody)).toEqual({ findings: [], answered: ['header-shape: walk-in, no name given'] });
  const undated = 'visit 2026-13-04 wren-abbott\n  because bad-date "the till printed it so"\n';
  expect(briefly(undated).answered).toEqual(['bad-date: the till printed it so']);
});

describe('the report', () => {
  test('is in order of lines, and names the client', () => {
    const { findings } = findIn(notes('', ''));
    expect(findings.map(({ place }) => place.line)).toEqual([7, 10]);
    expect(findings.map(({ client }) => client)).toEqual(['wren-abbott', 'wren-abbott']);
  });

  test('ends a hazard with the caution that puts maker, law and licence first', () => {
    const { findings } = findIn(notes('', ''));
    expect(findings.find(({ rule }) => rule === 'past-time')?.caution).toMatch(/come first\.$/);
    expect(findings.find(({ rule }) => rule === 'ratio-off-mix')?.caution).toBeUndefined();
  });

  test('has one finding for one unknown product, whatever else hangs on it', () => {
    const text = textOf(`
      product dev-6 "Cream developer" developer 6%
      client wren-abbott "Wren Abbott"
      visit 2026-09-04 wren-abbott
        bowl A 30 caly 7/1 + 20vol 1:2
        more A 40 at 10:55
      visit 2026-10-04 wren-abbott
        again A from 2026-09-04`);
    expect(findIn(text).findings.map(({ rule }) => rule)).toEqual(['unknown-name']);
  });
});

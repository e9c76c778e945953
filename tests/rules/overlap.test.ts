import { describe, expect, test } from 'vitest';
import bandingRisk from '../../src/rules/overlap/banding-risk.ts';
import overlap from '../../src/rules/overlap/overlap-on-lightened.ts';
import rootsFirst from '../../src/rules/overlap/roots-first.ts';
import { foundBy, notesOf, saidBy, visitOf } from './one-rule.ts';

const MIX = 'bowl A 40 clay + 80 dev-6';
const LENGTHS = ['history 2026-03 lightener lengths'];

describe('overlap-on-lightened', () => {
  const said = (client: readonly string[], ...visit: readonly string[]): string[] =>
    saidBy(overlap, notesOf(client, visit));

  test.each([
    ['on new growth alone', LENGTHS, visitOf(MIX, 'place A roots')],
    ['where nothing was lightened', [], visitOf(MIX, 'place A roots, lengths')],
    ['where it was lightened elsewhere', ['history 2026-03 lightener nape'], visitOf(MIX, 'place A roots, ends top')],
    ['where nothing speaks of a retouch', LENGTHS, visitOf('aim all of it lighter', MIX, 'place A lengths')],
    ['at a gloss', LENGTHS, visitOf('bowl A 40 gloss 9/1 + 80 dev-6', 'place A roots, lengths')],
    ['at roots and their own lengths in one word', LENGTHS, visitOf(MIX, 'place A roots lengths')],
    ['when the bowl was left', LENGTHS, visitOf(MIX, 'place A roots, lengths', 'left A 120')],
    [
      'at a tint-back by its words',
      LENGTHS,
      visitOf('aim tint back, roots through', 'bowl A 40 cream 6/0 + 60 dev-6', 'place A roots, lengths'),
    ],
    [
      'at a tint-back by its depths',
      LENGTHS,
      visitOf('start lengths 9', 'want 6', 'bowl A 40 cream 6/0 + 60 dev-6', 'place A roots, lengths'),
    ],
    [
      'after a visit of the same day',
      [],
      [...visitOf(MIX, 'place A lengths'), ...visitOf('aim roots', 'bowl A 40 clay + 80 dev-6', 'place A lengths')],
    ],
  ])('is silent %s', (_, client, visit) => {
    expect(said(client, ...visit)).toEqual([]);
  });

  test('stops at lightener by the zones, by what was asked for, and by what the last visit left for today', () => {
    const once = 'stop: Bowl A, clay, goes on lengths, lightened in 2026-03.';
    expect(said(LENGTHS, ...visitOf(MIX, 'place A roots, lengths'))).toEqual([once]);
    expect(said(LENGTHS, ...visitOf('aim her regrowth', MIX, 'place A lengths'))).toEqual([once]);
    const left = ['visit 2026-07-04 wren-abbott', 'next 8w roots'];
    expect(said(LENGTHS, ...left, ...visitOf(MIX, 'place A lengths'))).toEqual([once]);
    expect(said(LENGTHS, 'visit 2026-07-04 wren-abbott', 'next 8w foils', ...visitOf(MIX, 'place A lengths'))).toEqual(
      [],
    );
  });

  test('a start without a depth to reach is no tint-back, nor is a depth to reach without a start', () => {
    const bowl = ['bowl A 40 cream 9/0 + 80 dev-6', 'place A roots, lengths'];
    for (const line of ['start lengths 9 warm, grey 30% temples', 'want 6 ash', 'want ash'])
      expect(said(LENGTHS, ...visitOf(line, ...bowl))).toHaveLength(1);
  });

  test('minds permanent colour, and stops at high-lift colour', () => {
    const bowl = (range: string): string[] => visitOf(`bowl A 40 ${range} 9/0 + 80 dev-6`, 'place A roots, lengths');
    expect(said(LENGTHS, ...bowl('cream'))).toEqual(['mind: Bowl A, cream, goes on lengths, lightened in 2026-03.']);
    expect(said(LENGTHS, ...bowl('high'))).toEqual(['stop: Bowl A, high, goes on lengths, lightened in 2026-03.']);
  });

  test('knows roots of earlier visits as lengths of today, and history without a date', () => {
    const roots = ['visit 2026-03-04 wren-abbott', MIX, 'place A roots'];
    expect(said([], ...roots, ...visitOf(MIX, 'place A roots, lengths'))).toEqual([
      'stop: Bowl A, clay, goes on lengths, lightened on 2026-03-04.',
    ]);
    expect(said(['history lightener'], ...visitOf(MIX, 'place A roots, mids'))).toEqual([
      'stop: Bowl A, clay, goes on mids, lightened before.',
    ]);
    const crown = ['visit 2026-03-04 wren-abbott', MIX, 'place A roots crown'];
    expect(said([], ...crown, ...visitOf(MIX, 'place A roots, ends nape'))).toEqual([]);
  });
});

describe('overlap-on-lightened where nothing speaks of a retouch', () => {
  const NINE = 'bowl A 40 clay + 80 dev-9';
  const lightened = (place: string, ...lines: string[]): string[] => [
    'visit 2026-06-10 wren-abbott',
    MIX,
    `place A ${place}`,
    ...lines,
  ];
  const said = (client: readonly string[], ...visits: readonly string[]): string[] =>
    saidBy(overlap, notesOf(client, visits));
  const fix = (zone: string, depth: string, when: string): string[] => [
    `fix: Bowl A, clay with 9 %, goes on ${zone} of depth ${depth}, lightened ${when}.`,
  ];

  test('strong lightener over blonde is a fix, by history, by the right earlier visit, and by depths over her own', () => {
    expect(said(LENGTHS, ...visitOf('start roots 7, lengths 9', NINE, 'place A lengths weave x20'))).toEqual(
      fix('lengths', '9', 'in 2026-03'),
    );
    // Two visits: the nape came later, the top is what goes on again.
    const two = [...lightened('top weave x10'), 'visit 2026-07-10 wren-abbott', MIX, 'place A nape weave x4'];
    const top = ['start top 8', NINE, 'place A top weave x10', 'result top 9'];
    expect(said([], ...two, ...visitOf(...top))).toEqual(fix('top', '8', 'on 2026-06-10'));
    expect(said(['natural 5'], ...visitOf('start lengths 8', NINE, 'place A ends'))).toEqual(
      fix('lengths', '8', 'before these notes'),
    );
    expect(said(['natural 6'], ...visitOf('start lengths 8', NINE, 'place A ends'))).toEqual([]);
    expect(said(['natural 5', 'grey 90%'], ...visitOf('start lengths 8', NINE, 'place A ends'))).toEqual([]);
  });

  test('a whole head of foils touches the lengths where they came out lighter, or were to', () => {
    const foils = 'place A full-head fine-weave x60 off-scalp 1cm foil';
    const start = ['start roots 6, lengths 9', 'regrowth 28mm'];
    const again = (...lines: string[]): string[] => said([], ...lightened('full-head weave x40'), ...visitOf(...lines));
    expect(again(...start, NINE, foils, 'result lengths 10')).toEqual(fix('lengths', '9', 'on 2026-06-10'));
    expect(again(...start, 'want lengths 10', NINE, foils)).toEqual(fix('lengths', '9', 'on 2026-06-10'));
    // Measured new growth and lengths as they were: the foils stayed on it.
    expect(again(...start, NINE, foils, 'result lengths 9')).toEqual([]);
    expect(again('start roots 6, lengths 9', NINE, foils)).toEqual([
      'mind: Bowl A, clay with 9 %, goes on lengths of depth 9, lightened on 2026-06-10.',
    ]);
    expect(again('start roots 6, lengths 9', NINE, foils.replace('foil', 'foil "regrowth only"'))).toEqual([]);
    expect(again('aim regrowth in foils', 'start roots 6, lengths 9', NINE, foils)).toEqual([]);
    expect(again('start roots 6, lengths 9', MIX, foils)).toEqual([]);
  });

  test('without a start, the last result says how light the hair is', () => {
    const light = lightened('lengths paint', 'result lengths 9 violet');
    expect(said([], ...light, ...visitOf(NINE, 'place A lengths paint'))).toEqual(fix('lengths', '9', 'on 2026-06-10'));
    expect(said([], ...lightened('lengths paint'), ...visitOf(NINE, 'place A lengths paint'))).toEqual([]);
  });

  test.each([
    ['6 % on depth 9', 'mind', ['start lengths 9', MIX, 'place A lengths']],
    [
      'a strand tried first, at 9 %',
      'mind',
      ['test strand clay 20min yellow', 'start lengths 9', NINE, 'place A ends'],
    ],
  ])('is a mind at %s', (_, severity, lines) => {
    const found = said(LENGTHS, ...visitOf(...lines));
    expect(found.map((one) => one.split(':')[0])).toEqual([severity]);
  });

  test.each([
    ['6 % on depth 8', ['start lengths 8', MIX, 'place A lengths']],
    ['depth 7', ['start lengths 7', NINE, 'place A lengths']],
    ['a bleach wash', ['start lengths 9', 'bowl A 20 clay + 20 3% + 30 milk', 'place A lengths comb-through']],
    ['6 % and a strand tried first', ['test strand clay 20min yellow', 'start lengths 9', MIX, 'place A lengths']],
    ['mids that the start gives apart', ['start mids 6, lengths 9', NINE, 'place A mids']],
    ['mids where long new growth was measured', ['start lengths 9', 'regrowth 5cm', MIX, 'place A mids weave x26']],
    ['another place', ['start lengths 9', NINE, 'place A brow']],
    ['new growth', ['start roots 6, lengths 9', NINE, 'place A roots']],
    ['hair that is cut off since', ['start lengths 9', NINE, 'place A lengths']],
  ])('is silent at %s', (what, lines) => {
    const client = what.includes('cut off') ? [...LENGTHS, 'hair length crop'] : LENGTHS;
    expect(said(client, ...visitOf(...lines))).toEqual([]);
  });

  test('on pale hair, or put on all of it, 6 % is a fix; as a retouch gone down all of the blonde it stops', () => {
    const six = (severity: string, zone: string, depth: string): string[] => [
      `${severity}: Bowl A, clay with 6 %, goes on ${zone} of depth ${depth}, lightened in 2026-03.`,
    ];
    expect(said(LENGTHS, ...visitOf('start ends 10', MIX, 'place A ends paint'))).toEqual(six('fix', 'ends', '10'));
    const combed = ['start roots 6, lengths 9', MIX, 'place A full-head comb-through'];
    expect(said(LENGTHS, ...visitOf(...combed))).toEqual(six('fix', 'lengths', '9'));
    expect(said(LENGTHS, ...visitOf('regrowth 15mm', ...combed))).toEqual(six('stop', 'lengths', '9'));
    expect(said(LENGTHS, ...visitOf('regrowth 15mm', ...combed, 'leave lengths "blonde enough"'))).toEqual([]);
  });

  test('is told once a visit, whatever is mixed again', () => {
    const lines = ['start lengths 9', NINE, 'more A 60 at 10:40', 'place A+A2 lengths'];
    expect(said(LENGTHS, ...visitOf(...lines))).toHaveLength(1);
  });
});

describe('banding-risk', () => {
  const said = (...lines: readonly string[]): string[] => saidBy(bandingRisk, notesOf([], visitOf(...lines)));
  const ON = 'place A roots on-scalp';

  test.each([
    ['at an inch', ['regrowth 2.5cm', MIX, ON]],
    ['without a measured length', [MIX, ON]],
    ['off the scalp', ['regrowth 4cm', MIX, 'place A roots off-scalp 1cm']],
    ['in sections', ['regrowth 4cm', MIX, 'place A roots weave x12 on-scalp']],
    ['where the mids are noted', ['regrowth 4cm', MIX, 'place A mids on-scalp', ON]],
    ['where it went on in two goes', ['regrowth 4cm', MIX, ON, 'on 14:00 A roots', 'on 14:20 A roots']],
    ['at colour', ['regrowth 4cm', 'bowl A 40 cream 6/0 + 60 dev-6', ON]],
  ])('is silent %s', (_, lines) => {
    expect(said(...lines)).toEqual([]);
  });

  test('tells how much new growth there is', () => {
    expect(said('regrowth 34mm', MIX, ON, 'on 14:00 A roots')).toEqual([
      'mind: 34 mm of new growth, and bowl A goes on all of it at once, on the scalp.',
    ]);
  });
});

describe('roots-first', () => {
  const said = (client: readonly string[], ...lines: readonly string[]): string[] =>
    saidBy(rootsFirst, notesOf(client, visitOf(...lines)));
  const [ROOTS, THEN] = ['on 14:00-14:10 A roots', 'on 14:10-14:20 A lengths'];

  test.each([
    ['when the lengths came first', [], [MIX, 'on 14:00-14:10 A lengths', 'on 14:10 A roots']],
    ['on hair lightened before', ['history 2025 lightener'], [MIX, ROOTS, THEN]],
    ['at colour', [], ['bowl A 40 cream 6/0 + 60 dev-6', ROOTS, THEN]],
    ['where a bowl is not mixed', [], [ROOTS, THEN]],
    ['on different parts of the head', [], [MIX, 'on 14:00-14:10 A roots nape', 'on 14:10 A lengths top']],
    ['on roots alone', [], [MIX, ROOTS]],
  ])('is silent %s', (_, client, lines) => {
    expect(said(client, ...lines)).toEqual([]);
  });

  test('names high-lift colour for what it is', () => {
    expect(said([], 'bowl A 40 high 10/1 + 80 dev-9', ROOTS, THEN)).toEqual([
      'mind: High-lift colour goes on roots at 14:00 and on lengths at 14:10.',
    ]);
  });

  test('names both times', () => {
    expect(said([], MIX, ROOTS, THEN)).toEqual(['mind: Lightener goes on roots at 14:00 and on lengths at 14:10.']);
    expect(foundBy(rootsFirst, notesOf([], visitOf(MIX, ROOTS, THEN)))[0]?.also?.[0]?.says).toBe('lengths later');
  });
});

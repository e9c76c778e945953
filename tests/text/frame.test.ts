import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frameOf } from '../../src/text/frame.ts';
import { spanOf } from '../../src/text/span.ts';
import { displayWidth } from '../../src/text/width.ts';

/** Frames the first `«…»` of a marked line. */
const framed = (marked: string, label = '', width?: number): string => {
  const from = marked.indexOf('«');
  const to = marked.indexOf('»') - 1;
  const line = marked.replace('«', '').replace('»', '');
  const { before, marked: run, after, indent, carets } = frameOf(line, spanOf(from, to), width);
  const under = `${' '.repeat('41  '.length + indent)}${'^'.repeat(carets)} ${label}`;
  return `\n${`41  ${before}${run}${after}`.trimEnd()}\n${under.trimEnd()}`;
};

describe('a line with carets', () => {
  test('under plain letters, with a label', () => {
    expect(framed('  bowl A 30 clay + «80 dev-6»', '60 g would be 1:2')).toBe(`
41    bowl A 30 clay + 80 dev-6
                       ^^^^^^^^ 60 g would be 1:2`);
  });

  test('after a tab', () => {
    expect(framed('\tbowl\tA «30» clay')).toBe(`
41      bowl    A 30 clay
                  ^^`);
  });

  test('after wide letters and an emoji', () => {
    expect(framed('note 染め 👩🏽‍🦰 «zoë» x')).toBe(`
41  note 染め 👩🏽‍🦰 zoë x
                 ^^^`);
  });

  test('under wide letters: two carets each', () => {
    expect(framed('a «染め»')).toBe(`
41  a 染め
      ^^^^`);
  });

  test('an empty run has one caret, also past the end', () => {
    expect(framed('bowl A«»', 'a weight is missing')).toBe(`
41  bowl A
          ^ a weight is missing`);
    expect(framed('a«»b')).toBe(`
41  ab
     ^`);
  });

  test('a run that touches part of a letter marks it whole', () => {
    expect(frameOf('a👩🏽‍🦰b', spanOf(3, 4))).toMatchObject({ before: 'a', marked: '👩🏽‍🦰', after: 'b', carets: 2 });
  });

  test('white space at the end is left out unless it is marked', () => {
    expect(frameOf('aim x   ', spanOf(0, 3)).after).toBe(' x');
    expect(frameOf('aim x   ', spanOf(5, 8))).toMatchObject({ marked: '   ', carets: 3 });
  });

  test('a control character is drawn, not sent', () => {
    expect(frameOf('a\x1bb', spanOf(1, 2))).toMatchObject({ marked: '␛', carets: 1 });
  });
});

describe('a long line', () => {
  const long = `note ${'x'.repeat(60)} «here» ${'y'.repeat(60)}`;

  test('is cut on both sides of the run', () => {
    expect(framed(long, '', 30)).toBe(`
41  …xxxxxxxxxxx here yyyyyyyyyyy…
                 ^^^^`);
  });

  test('is cut on one side where the run stands near an end', () => {
    expect(framed(`«note» ${'x'.repeat(60)}`, '', 20)).toBe(`
41  note xxxxxxxxxxxxx…
    ^^^^`);
    expect(framed(`${'x'.repeat(60)} «end»`, '', 20)).toBe(`
41  …xxxxxxxxxxxxxx end
                    ^^^`);
  });

  test('a run longer than the room is shown from its start', () => {
    const { marked, after, before, carets } = frameOf('x'.repeat(500), spanOf(10, 400), 40);
    expect([before, after]).toEqual(['…', '…']);
    expect(marked).toHaveLength(38);
    expect(carets).toBe(38);
  });
});

test('whatever the line, the frame fits its width, the carets stand under the run and what is shown was typed', () => {
  const line = fc.string({ unit: fc.constantFrom('a', ' ', '\t', 'ë', '染', '👩🏽‍🦰', '\u0301', '½'), maxLength: 200 });
  fc.assert(
    fc.property(line, fc.nat(), fc.nat(), fc.integer({ min: 8, max: 120 }), (text, a, b, width) => {
      const from = a % (text.length + 1);
      const to = from + (b % (text.length + 1 - from));
      const { before, marked, after, indent, carets } = frameOf(text, spanOf(from, to), width);
      expect(displayWidth(before + marked + after)).toBeLessThanOrEqual(width);
      expect(indent).toBe(displayWidth(before));
      expect(carets).toBe(Math.max(1, displayWidth(before + marked) - displayWidth(before)));
      const shown = (before + marked + after).replaceAll('…', '').replaceAll(' ', '');
      expect(text.replaceAll(/[ \t]/g, '')).toContain(shown);
    }),
    { seed: 7, numRuns: 500 },
  );
});

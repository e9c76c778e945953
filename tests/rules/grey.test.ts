import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product dev-3 "Cream developer" developer 3%
  product dev-6 "Cream developer" developer 6%
  range cream "Larkfield cream" permanent
    tones 0 natural, 3 gold, 4 copper
    shades brown
  range untold "A range without tones" permanent
  range gloss "Tidewater gloss" demi
    tones 0 natural, 4 copper`;

const visit = (...lines: string[]): string =>
  `${textOf(SHELF)}\nclient wren-abbott "Wren Abbott"\ntest skin 2026-09-01 11:00 cream, untold, gloss read 2026-09-03 11:30 clear\nvisit 2026-09-04 wren-abbott\n${lines.join('\n')}\n`;

const GREY = 'start roots 6, grey 60%';

describe('grey-base-missing', () => {
  test.each([
    ['less than half', ['start roots 6, grey 49%', 'bowl A 40 cream 6/4 + 60 dev-6']],
    ['no share of grey', ['start roots 6', 'bowl A 40 cream 6/4 + 60 dev-6']],
    ['a natural shade', [GREY, 'bowl A 20 cream 6/4 + 20 cream 6/0 + 60 dev-6']],
    ['a shade that begins with the natural sign', [GREY, 'bowl A 40 cream 6/04 + 60 dev-6']],
    ['a brown by name', [GREY, 'bowl A 40 cream brown + 60 dev-6']],
    ['a range that declares no tones', [GREY, 'bowl A 40 untold 6/4 + 60 dev-6']],
    ['demi colour', [GREY, 'bowl A 40 gloss 6/4 + 60 dev-3']],
    ['the lengths alone', [GREY, 'bowl A 40 cream 6/4 + 60 dev-6', 'place A lengths, ends']],
    ['a weight that is missing', [GREY, 'bowl A 20 cream 6/4 + cream 6/3 + 60 dev-6']],
    ['a bowl that was left', [GREY, 'bowl A 40 cream 6/4 + 60 dev-6', 'left A 100 binned']],
  ])('is silent at %s', (_, lines) => {
    expect(rulesIn(visit(...lines))).not.toContain('grey-base-missing');
  });

  test('names the share of the natural series, of two rows where they meet', () => {
    const { findings } = findIn(visit('start roots 6, grey 70%', 'bowl A 20 cream 6/4 + 20 cream 6/3 + 60 dev-6'));
    expect(
      findings.map(({ rule, severity, message, expected, todo }) => [severity, rule, message, expected, todo]),
    ).toEqual([
      [
        'mind',
        'grey-base-missing',
        'Bowl A covers 70 % grey with 6/4, 6/3, and no natural shade.',
        '50 % or 75 % of the colour from the natural series, a rough guide (a trade test of 2011, one maker).',
        'Add a shade with `0`, or give the reason: `because grey-base-missing "…"`.',
      ],
    ]);
  });
});

describe('grey-strength', () => {
  test('is silent at 6 % and without a developer', () => {
    expect(rulesIn(visit(GREY, 'bowl A 40 cream 6/0 + 60 dev-6'))).toEqual([]);
    expect(rulesIn(visit(GREY, 'bowl A 40 cream 6/0'))).not.toContain('grey-strength');
  });

  test('fires below it', () => {
    expect(saidIn(visit(GREY, 'bowl A 40 cream 6/0 + 60 dev-3'))).toEqual([
      'mind grey-strength: Bowl A covers 60 % grey with 3 %.',
    ]);
  });
});

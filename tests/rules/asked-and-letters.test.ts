import { describe, expect, test } from 'vitest';
import { findIn } from './compile.ts';

const SHELF = `product dev-6 "Cream developer" developer 6%
product clay "Peregrine clay" lightener
range cream "Larkfield cream" permanent
range neon "Kelp direct" semi
  shades teal
client wren-abbott "Wren Abbott"
`;
const OK = '  test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear\n';
const DYED = `visit 2026-09-10 wren-abbott
  bowl A 40 cream 6/0 + 60 dev-6
`;
const LIT = `visit 2026-09-10 wren-abbott
  bowl A 40 clay + 80 dev-6
`;

/** What is found and not answered with a reason. */
const told = (notes: string): string[] =>
  findIn(notes)
    .findings.filter(({ reason }) => reason === undefined)
    .map(({ severity, rule }) => `${severity} ${rule}`);

describe('an answer', () => {
  test.each([
    ['asked asthma no', []],
    ['asked asthma none', []],
    ['asked asthma "none"', []],
    ['asked asthma yes', ['stop persulphate-breathing']],
    ['asked asthma "wheezes in spring"', ['stop persulphate-breathing']],
    ['asked asthma no "never had it"', []],
  ])('`%s` counts as a caution of its visit or not', (line, found) => {
    expect(told(`${SHELF}${LIT}  ${line}\n`)).toEqual(found);
  });

  test('holds for its visit alone', () => {
    const later = LIT.replace('09-10', '11-10');
    expect(told(`${SHELF}${LIT}  asked asthma yes\n${later}`)).toEqual(['stop persulphate-breathing']);
  });

  test.each(['asked asthma', 'asked "yes"', 'asked'])('`%s` is asked about', (line) => {
    expect(told(`${SHELF}${LIT}  ${line}\n`)).toEqual(['fix nothing-said']);
  });
});

describe('hold dye', () => {
  const hold = '  hold dye from 2026-01-05 to letter "eyelids swelled"\n';
  const letter = '  letter 2026-08-20 "Dr N: may have hair colour"\n';

  test('keeps oxidative and direct dye off, and not lightener', () => {
    expect(told(`${SHELF}${hold}${DYED}`)).toContain('stop broken-hold');
    expect(told(`${SHELF}${hold}visit 2026-09-10 wren-abbott\n  bowl N 30 neon teal\n`)).toContain('stop broken-hold');
    expect(told(`${SHELF}${hold}${LIT}`)).toEqual([]);
  });

  test('lifts with a letter that gives leave, from its day on', () => {
    expect(told(`${SHELF}${hold}${letter}${OK}${DYED}`)).toEqual([]);
    expect(told(`${SHELF}${hold}${letter.replace('08-20', '10-20')}${DYED}`)).toContain('stop broken-hold');
    expect(told(`${SHELF}${hold}  letter 2026-08-20 "no hair dye"\n${DYED}`)).toContain('stop broken-hold');
    expect(told(`${SHELF}${hold}  letter 2025-08-20 "may have dye"\n${DYED}`)).toContain('stop broken-hold');
  });

  test.each([
    ['hold dye from 2026-01-05 to letter "eyelids swelled"', true],
    ['hold all from 2026-01-05', true],
    ['hold cream from 2026-01-05', true],
    ['hold oxidative from 2026-08-20 4w "scalp grazed"', false],
    ['hold oxidative from 2026-08-20 12w "reaction to the tint"', true],
    ['hold lightener from 2026-01-05', false],
    ['hold neon from 2026-01-05', false],
    ['hold dye from 2026-09-05 to letter', false],
  ])('with `%s` a skin test is a finding: %s', (line, found) => {
    expect(told(`${SHELF}  ${line}\n${OK}`)).toEqual(found ? ['stop test-under-hold'] : []);
  });

  test('a test that a doctor made is none of the salon’s', () => {
    const tested = OK.replace('clear', 'clear "made by the dermatologist"');
    expect(told(`${SHELF}${hold}${tested}`)).toEqual([]);
  });
});

describe('black henna', () => {
  test.each([
    ['', ['stop black-henna']],
    ['  letter 2026-08-20 "Dr N: may have hair colour"\n', []],
    ['  letter 2026-08-20 "Dr N: no hair dye"\n', ['stop black-henna']],
    ['  because black-henna "her consultant rang, went ahead"\n', []],
  ])('with %s after a clear test', (line, found) => {
    expect(told(`${SHELF}  caution black henna tattoo 2020, blistered\n${OK}${line}${DYED}`)).toEqual(found);
  });

  test('is read in a note too, and does not bear on lightener', () => {
    expect(told(`${SHELF}  note had a black henna tattoo in 2020\n${OK}${DYED}`)).toEqual(['stop black-henna']);
    expect(told(`${SHELF}  note had a black henna tattoo in 2020\n${LIT}`)).toEqual([]);
  });
});

describe('an allergy to kin of hair dye', () => {
  test('stops without a clear test, and is thought of once with one', () => {
    const again = DYED.replace('09-10', '10-10');
    expect(told(`${SHELF}  allergy "benzocaine"\n${OK}${DYED}${again}`)).toEqual(['mind allergy-named']);
    expect(told(`${SHELF}  allergy "benzocaine"\n${DYED}`)).toContain('stop allergy-named');
    expect(told(`${SHELF}  allergy "benzocaine"\n${LIT}`)).toEqual([]);
  });
});

describe('metal, relaxers and medicines in words', () => {
  test.each([
    ['note smells of rotten eggs wet, darker every day he combs it in', ['stop metal-under-peroxide']],
    ['note wet hair smells of rotten eggs', ['fix metal-under-peroxide']],
    ['note never any restorer', []],
    ['caution henna on the lengths in spring', ['fix metal-under-peroxide']],
    ['note lengths relaxed 2026-09', ['fix lightener-on-relaxed']],
    ['note relaxed about the length', []],
  ])('`%s` under lightener', (line, found) => {
    expect(told(`${SHELF}  ${line}\n${LIT}`)).toEqual(found);
  });

  test('a note of a later visit says nothing of an earlier one', () => {
    const later = 'visit 2026-10-10 wren-abbott\n  note uses a colour restorer\n';
    expect(told(`${SHELF}${LIT}${later}`)).toEqual([]);
  });

  test('a medicine begun before the test is silent', () => {
    const began = 'visit 2026-08-10 wren-abbott\n  note started antibiotics\n';
    expect(told(`${SHELF}${OK}${began}${DYED}`)).toEqual([]);
    expect(told(`${SHELF}${OK}${DYED}  note started antibiotics\n`)).toEqual(['mind medicine-since-test']);
  });
});

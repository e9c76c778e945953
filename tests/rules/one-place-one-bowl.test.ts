import { describe, expect, it } from 'vitest';
import kindsInBowl from '../../src/rules/mix/kinds-in-bowl.ts';
import otherDeveloper from '../../src/rules/strength/other-developer.ts';
import heatOnLightener from '../../src/rules/time/heat-on-lightener.ts';
import lightenerMinutes from '../../src/rules/time/lightener-minutes.ts';
import { heatSaid } from '../../src/trade/heat.ts';
import { saidBy } from './one-rule.ts';

const SHELF = `
product dev-3 "Cream developer" developer 3%
product dev-6 "Cream developer" developer 6%
product dev-9 "Cream developer" developer 9%
product gloss-act "Tidewater activator" developer 1.9%
product tint-dev "Cormorant developer" developer 6%
product milk "Oat milk" conditioner
product unpick "Unpick" remover
  uses unpick-b
product unpick-b "Unpick second half" developer 0%
product clay "Peregrine clay" lightener
  uses dev-3 dev-6 dev-9
  time 20-50 min from first-on
product powder "Gannet powder" lightener
  uses dev-6 dev-9
range cream "Larkfield cream" permanent
  uses dev-3 dev-6 dev-9
range high "Larkfield high" high-lift
  uses dev-9
range gloss "Tidewater gloss" demi
  uses gloss-act
  strength 1.9%
  shades clear
range toner "Tidewater toner" toner
  uses gloss-act dev-3
range tint "Cormorant tint" permanent
range plain "Shag" permanent
range neon "Kelp direct" semi
client wren-abbott "Wren Abbott"
`;

const visit = (...lines: string[]): string =>
  `${SHELF}visit 2026-09-04 wren-abbott\n${lines.map((line) => `  ${line}\n`).join('')}`;

describe('lightener minutes on one place', () => {
  const minutes = (...lines: string[]): string[] => saidBy(lightenerMinutes, visit(...lines));
  const TWO = ['bowl A 40 clay + 80 dev-9', 'bowl B 40 clay + 80 dev-9'];

  it('add up over the bowls that followed one another', () => {
    expect(minutes(...TWO, 'on 10:00 A top', 'off 10:45 A', 'on 10:45 B top', 'off 11:10 B')).toEqual([
      'fix: Lightener was on top for 70 min in all: 45 + 25, bowl A and B.',
    ]);
  });

  it('are a stop at twice the time with no test of the day, and a fix with one', () => {
    const lines = [...TWO, 'on 10:00 A top', 'off 10:50 A', 'on 10:50 B top', 'off 11:40 B'];
    expect(minutes(...lines)[0]).toMatch(/^stop: .+ 100 min .+ no test of the day/u);
    expect(minutes(...lines, 'test strand 10:50 springs-back')[0]).toMatch(/^fix: /u);
  });

  it('do not add over different places, nor over what lies in other foils', () => {
    expect(minutes(...TWO, 'on 10:00 A top', 'off 10:45 A', 'on 10:45 B nape', 'off 11:25 B')).toEqual([]);
    expect(minutes(...TWO, 'on 10:00 A lengths', 'off 10:45 A', 'on 10:45 B roots', 'off 11:25 B')).toEqual([]);
    // On beside one another: two sets of foils.
    expect(minutes(...TWO, 'on 10:00 A top', 'off 10:45 A', 'on 10:20 B top', 'off 11:05 B')).toEqual([]);
    const placed = ['place A top slice x4 foil', 'place B top weave x10 foil'];
    expect(minutes(...TWO, ...placed, 'on 10:00 A top', 'off 10:45 A', 'on 10:45 B top', 'off 11:25 B')).toEqual([]);
  });

  it('do not add where more of a bowl was mixed for what was still on', () => {
    const more = [
      'bowl A 40 clay + 80 dev-9',
      'more A 60 at 10:20',
      'on 10:00 A top',
      'on 10:25 A2 top',
      'off 10:48 A',
    ];
    expect(minutes(...more)).toEqual([]);
  });

  it('say a spell past its own time once', () => {
    const lines = [...TWO, 'on 10:00 A top', 'off 11:10 A'];
    expect(minutes(...lines)).toEqual([]);
  });

  it('find a place that lies within another, and leave a bleach wash out', () => {
    const all = ['on 10:00 A full-head', 'off 10:45 A', 'on 10:50 B nape', 'off 11:20 B'];
    expect(minutes(...TWO, ...all)).toHaveLength(1);
    const wash = ['bowl A 40 clay + 80 dev-9', 'bowl B 20 clay + 20 dev-3 + 30 milk'];
    expect(minutes(...wash, 'on 10:00 A top', 'off 10:48 A', 'on 10:55 B top', 'off 11:03 B')).toEqual([]);
  });

  it('do not guess where neither bowl says its place', () => {
    expect(minutes(...TWO, 'on 10:00 A', 'off 10:45 A', 'on 10:45 B', 'off 11:25 B')).toEqual([]);
  });
});

describe('a developer of another line', () => {
  const other = (bowl: string): string[] => saidBy(otherDeveloper, visit(bowl));

  it('is found by the uses line', () => {
    expect(other('bowl A 40 toner 9/1 + 40 tint-dev')).toEqual([
      'fix: Bowl A has toner with tint-dev, Cormorant developer.',
    ]);
    expect(other('bowl A 40 toner 9/1 + 40 dev-3')).toEqual([]);
    // Another strength of the same developer is no other line.
    expect(other('bowl A 40 high 9/1 + 80 dev-6')).toEqual([]);
    expect(other('bowl A 40 cream 6/0 + 20 high 9/0 + 90 dev-9')).toEqual([]);
  });

  it('leaves what the strength line finds already', () => {
    expect(other('bowl A 40 gloss 9/1 + 80 dev-6')).toEqual([]);
  });

  it('is found without a uses line where its own of that strength stands on the shelf', () => {
    expect(other('bowl A 40 tint 6/3 + 40 dev-6')).toEqual(['fix: Bowl A has tint with dev-6, Cream developer.']);
    expect(other('bowl A 40 tint 6/3 + 40 tint-dev')).toEqual([]);
    // There is no Cormorant developer of 9 %.
    expect(other('bowl A 40 tint 6/3 + 40 dev-9')).toEqual([]);
  });

  it('is not guessed of a range that the shelf shows no developer of', () => {
    expect(other('bowl A 40 plain 6/3 + 40 dev-6')).toEqual([]);
  });
});

describe('kinds in one bowl', () => {
  const kinds = (bowl: string, ...more: string[]): string[] => saidBy(kindsInBowl, visit(bowl, ...more));

  it('that are mixed apart are found', () => {
    expect(kinds('bowl A 20 clay + 20 cream 8/3 + 60 dev-9')).toEqual([
      'fix: Bowl A holds clay, lightener, and cream, permanent.',
    ]);
    for (const odd of [
      '20 clay + 20 gloss 8/3 + 60 dev-6',
      '20 clay + 10 toner 9/1 + 60 dev-6',
      '20 unpick + 20 cream 6/0',
    ])
      expect(kinds(`bowl A ${odd}`)).toHaveLength(1);
    expect(kinds('bowl A 20 clay + 40 dev-6', 'bowl B 20 from A + 20 cream 6/0 + 20 dev-6')).toHaveLength(1);
  });

  it('of two lines are found where the shelf shows the developers of both', () => {
    expect(kinds('bowl A 20 cream 6/0 + 20 gloss 6/1 + 60 dev-6')).toEqual([
      'fix: Bowl A holds cream, Larkfield cream, and gloss, Tidewater gloss: two lines.',
    ]);
    expect(kinds('bowl A 20 cream 6/0 + 20 tint 6/1 + 60 dev-6')).toHaveLength(1);
    expect(kinds('bowl A 20 cream 6/0 + 20 plain 6/1 + 60 dev-6')).toEqual([]);
  });

  it('that belong together, thin one another or are another rule’s are not', () => {
    const sound = [
      '20 cream 6/0 + 20 high 9/0 + 80 dev-9',
      '20 gloss 9/1 + 20 toner 9/2 + 40 gloss-act',
      '20 cream 6/0 + 20 gloss clear + 60 dev-6',
      '20 clay + 20 powder + 80 dev-6',
      '20 clay + 20 dev-3 + 30 milk',
      '20 neon teal + 20 milk',
      '20 clay + 20 neon teal + 40 dev-6',
    ];
    for (const bowl of sound) expect(kinds(`bowl A ${bowl}`)).toEqual([]);
  });
});

describe('heat on lightener', () => {
  const heat = (strength: string, says: string, scalp = 'off-scalp 1cm foil'): string[] =>
    saidBy(
      heatOnLightener,
      visit(
        `bowl A 40 clay + 80 ${strength}`,
        `place A top weave x10 ${scalp}`,
        'on 10:00 A top',
        `heat 10:05-10:20 A${says === '' ? '' : ` "${says}"`}`,
        'off 10:40 A',
      ),
    ).map((one) => one.slice(0, one.indexOf(':')));

  it('is graver the stronger the lightener and the heat', () => {
    expect(heat('dev-9', 'dryer hood, high')).toEqual(['fix']);
    expect(heat('dev-9', 'unter der Trockenhaube')).toEqual(['fix']);
    expect(heat('dev-9', 'casque chauffant')).toEqual(['fix']);
    expect(heat('dev-9', 'secador')).toEqual(['fix']);
    expect(heat('dev-6', 'hood dryer')).toEqual(['fix']);
    expect(heat('dev-3', 'hood dryer')).toEqual([]);
    expect(heat('dev-9', '')).toEqual(['mind']);
    expect(heat('dev-6', '')).toEqual([]);
    expect(heat('dev-9', 'warm towel')).toEqual([]);
    expect(heat('dev-9', 'hood on cool air')).toEqual([]);
  });

  it('on the scalp is a fix, and a warm towel there a thought', () => {
    expect(heat('dev-3', 'hood', 'on-scalp')).toEqual(['fix']);
    expect(heat('dev-3', '', 'on-scalp')).toEqual(['fix']);
    expect(heat('dev-3', 'warm towel', 'on-scalp')).toEqual(['mind']);
  });

  it('after it came off is none', () => {
    const after = ['bowl A 40 clay + 80 dev-9', 'on 10:00 A top', 'off 10:40 A', 'heat 10:45-11:00 A "hood"'];
    expect(saidBy(heatOnLightener, visit(...after))).toEqual([]);
  });

  it('is a dryer that dries what is still on', () => {
    const dried = (line: string): string[] =>
      saidBy(heatOnLightener, visit('bowl A 40 clay + 80 dev-9', 'on 10:00 A top', line, 'off 10:40 A'));
    expect(dried('dry 10:20-10:30 A "dryer over the foils"')).toEqual([
      'fix: Heat, “dried, dryer over the foils”, goes on bowl A, clay with 9 %.',
    ]);
    expect(dried('dry 10:20-10:30')).toHaveLength(1);
    for (const line of ['dry 10:40-10:50', 'dry 9:40-9:55', 'dry 10:20 nape', 'dry 10:20 "towel"'])
      expect([line, dried(line)]).toEqual([line, []]);
  });

  it('is told by the words of the chair', () => {
    const words = {
      strong: ['climazon', 'sous le casque', 'Föhn', 'hot air'],
      mild: ['warmes Handtuch', 'toalha morna'],
    };
    for (const one of words.strong) expect([one, heatSaid(one)]).toEqual([one, 'strong']);
    for (const one of words.mild) expect([one, heatSaid(one)]).toEqual([one, 'mild']);
    expect([heatSaid(''), heatSaid('kalte Luft')]).toEqual(['unsaid', 'none']);
  });
});

import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { askedShare, askedWords, leftOutBy } from '../../src/reckon/ahead/asked-words.ts';
import type { VisitReckoned } from '../../src/reckon/model.ts';
import { reckonAll } from '../../src/reckon/visit.ts';

const SHELF = `range cream "Larkfield cream" permanent
  mix 1:1.5
  uses dev-6
  tones 0 natural, 1 ash, 3 gold
product dev-6 "Cream developer" developer 6%
product clay "Clay" lightener
  mix 1:2
client wren-abbott "Wren Abbott"
visit 2026-06-05 wren-abbott
  bowl A 24 cream 6/3 + 36 dev-6
  bowl B 20 clay + 40 dev-6
  bowl T 20 cream 9/1 + 30 dev-6
  place A roots apply on-scalp
  place B top weave x6 foil
  place T ends
`;

const visitsOf = (lines: string): VisitReckoned[] =>
  [...reckonAll(joinSources([readSource('t.bowl', Buffer.from(SHELF + lines))])).values()][0] as VisitReckoned[];

const spoken = (lines: string): string => {
  const visits = visitsOf(`${lines}\n`);
  return [...askedWords(visits[0] as VisitReckoned, visits, '2026-08-05').keys()].sort().join('');
};

describe('the bowls of which words speak', () => {
  test.each([
    ['next 8w A 6/1', 'A'],
    ['next A: less gold', 'A'],
    ['next 8w roots, A cooler, B +10%', 'A'],
    ['next "go softer, 6/1 instead of 6/3"', 'A'],
    ['next 8w A -20% 6/1', 'A'],
    ['next 8w A, T cooler', 'AT'],
    ['next 8w A+B cooler', 'AB'],
    ['next 8w t less ash', 'T'],
    ['next 8w T a touch of violet', 'T'],
    ['next 8w cooler', 'AT'],
    ['next 8w "a bit cooler on the ends"', 'T'],
    ['next 8w "A softer look"', 'AT'],
    ['next 8w "20vol instead of 6%"', 'ABT'],
    ['next 8w "weaker developer on B"', 'B'],
    ['next 8w half a level darker', 'ABT'],
    ['next 8w "leave out the gold"', 'AT'],
    ['next 8w "10 g more of B"', 'B'],
    ['next 8w -20%', 'ABT'],
    ['next 8w "thinking plum"', 'AT'],
    ['next 8w "etwas kühler, weniger Gold"', 'AT'],
    ['next 8w "A mit 6/1 statt 6/3"', 'A'],
    ['next 8w "moins de doré, plus froid"', 'AT'],
    ['next 8w "A raiz mais fria"', 'A'],
    ['next 8w "6/0 en vez de 6/3"', 'A'],
    ['next 8w "B lo mismo, A más fría"', 'A'],
    ['note next time 6/1 for the roots', 'A'],
    ['call 2026-06-09 "too gold, A less gold next time"', 'A'],
    ['call 2026-06-09 "ends too dark"', 'T'],
    ['call 2026-06-09 "zu gelb"', 'AT'],
    ['visit 2026-06-20 wren-abbott\n  about 2026-06-05 "6/3 too warm, 6/1 instead"', 'A'],
    ['next 8w A -20%\n  next A 6/1', 'A'],
  ])('%s', (line, bowls) => {
    expect(spoken(`  ${line}`)).toBe(bowls);
  });

  test.each([
    'next 8w A -20%',
    'next 8w roots',
    'next 8w gloss on the ends',
    'next 8w violet-wash',
    'next 8w 1/2 head',
    'next 8w "back on 12/12"',
    'next 8w "bring a picture of the front"',
    'next 8w "same again"',
    'next 8w A as before',
    'next 8w "A first, then B"',
    'next 8w A 5 min longer',
    'next 8w "not darker"',
    'next 8w "keep the gold"',
    'next 8w "20% grey blending"',
    'call 2026-06-09 "not too gold, she loves it"',
    'call 2026-06-09 "redness gone"',
    'call 2026-06-09 "photo came out lovely"',
    'call 2026-08-09 "too gold"',
    'note begin at the nape',
  ])('of none: %s', (line) => {
    expect(spoken(`  ${line}`)).toBe('');
  });
});

describe('the lines of a plan', () => {
  const first = (lines: string): [VisitReckoned, VisitReckoned[]] => {
    const visits = visitsOf(lines);
    return [visits[0] as VisitReckoned, visits];
  };

  test('all count: a share stands in an earlier one, the last of two shares goes', () => {
    const share = (lines: string): number | undefined => {
      const [visit, visits] = first(lines);
      const bowl = visit.bowls[0];
      return bowl && askedShare(visit, bowl, visits, '2026-08-05');
    };
    expect(share('  next A -20%\n  next 8w roots\n')).toBe(-20);
    expect(share('  next A -20%\n  next 8w A +10%\n')).toBe(10);
    expect(share('  next 8w\nvisit 2026-06-20 wren-abbott\n  next A -30%\n')).toBe(-30);
  });

  test('leave shades out', () => {
    const [visit] = first('  next 8w "A without the 6/3"\n  next "6/0 statt 9/1"\n');
    expect(leftOutBy(visit).map(({ bowl, shade }) => `${bowl} ${shade}`)).toEqual(['A 6/3', 'T 9/1']);
  });
});

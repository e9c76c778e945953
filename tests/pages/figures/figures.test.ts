import { describe, expect, it } from 'vitest';
import { bowlMarks } from '../../../src/pages/figures/bowl-marks.ts';
import { liftFigure } from '../../../src/pages/figures/lift-panels.ts';
import { placementFigure } from '../../../src/pages/figures/placement-figure.ts';
import { swatchesOfVisit, swatchFigure } from '../../../src/pages/figures/swatches.ts';
import { timeline } from '../../../src/pages/figures/timeline.ts';
import { liftOf } from '../../../src/reckon/lift/series.ts';
import type { VisitReckoned } from '../../../src/reckon/model.ts';
import { reckonClient } from '../../../src/reckon/visit.ts';
import { clientOf, journalOf, SHELF } from '../compiled.ts';

const lastOf = (lines: string, head = ''): VisitReckoned => {
  const shelf = SHELF.replace('  uses dev-6\n', '  uses dev-6\n  time 20-50 min from first-on\n');
  const journal = journalOf(`${shelf}\nclient ada "Ada"\n${head}\nvisit 2026-09-04 ada by io
bowl A 40 clay + 80 dev-6\nbowl B 40 clay + 80 dev-6\nbowl T 30 cream 9/1 + 45 dev-6\n${lines}`);
  return reckonClient(journal, clientOf(journal, 'ada')).at(-1) as VisitReckoned;
};

const placed = (lines: string): string => placementFigure('f', lastOf(lines)) ?? '';
const timed = (lines: string): string => timeline('f', lastOf(lines), []) ?? '';

/** The words of a picture, by its title. */
const words = (svg: string): Record<string, string> =>
  Object.fromEntries(
    [...svg.matchAll(/<title[^>]*>(.*?)<\/title><desc[^>]*>(.*?)<\/desc>/g)].map(([, title = '', says = '']) => [
      title,
      says,
    ]),
  );

/** One view of the head. */
const view = (svg: string, key: string): string =>
  new RegExp(`<svg[^>]*f-head-${key}-title[\\s\\S]*?</svg>`).exec(svg)?.[0] ?? '';

const bars = (svg: string): string[] => svg.match(/<path[^>]*class="section"[^>]*>/g) ?? [];

describe('the head', () => {
  it('draws each counted section, a slice unbroken and a weave broken', () => {
    const slices = bars(view(placed('place A top slice x6'), 'top'));
    const weaves = bars(view(placed('place A top weave x6'), 'top'));
    expect([slices.length, weaves.length]).toEqual([6, 6]);
    expect(slices.filter((bar) => bar.includes('stroke-dasharray'))).toEqual([]);
    expect(weaves.filter((bar) => !bar.includes('stroke-dasharray'))).toEqual([]);
  });

  it('draws a mirrored line on both sides and says so', () => {
    const across = placed('place A hairline slice x2 mirror');
    expect(bars(view(across, 'top'))).toHaveLength(4);
    expect(view(across, 'top')).toContain('>A ×2+2</text>');
    const sides = placed('place A sides weave x3 mirror');
    expect([bars(view(sides, 'left')).length, bars(view(sides, 'right')).length]).toEqual([3, 3]);
  });

  it('shares what is not mirrored over both sides', () => {
    const sides = placed('place A sides weave x7');
    expect(bars(view(sides, 'left')).length + bars(view(sides, 'right')).length).toBe(7);
    expect(bars(view(placed('place A left temples weave x3'), 'right'))).toEqual([]);
  });

  it('gives each bowl a pattern of its own, in turn', () => {
    const top = view(placed('place A+B top slice x6 turn A B'), 'top');
    expect(bars(top).map((bar) => /stroke="url\(#(.*?)\)"/.exec(bar)?.[1])).toEqual(
      ['bowl-1', 'bowl-2', 'bowl-1', 'bowl-2', 'bowl-1', 'bowl-2'].map((kind) => `f-head-top-${kind}`),
    );
    expect(top).toContain('>A+B ×6</text>');
  });

  it('sets sections further apart where the gap is wider', () => {
    const pitch = (gap: string): number => {
      const [first = 0, second = 0] = bars(view(placed(`place A top slice x4 gap ${gap}`), 'top')).map((bar) =>
        Number(/d="M[\d.]+ ([\d.]+)/.exec(bar)?.[1]),
      );
      return second - first;
    };
    expect(pitch('15mm')).toBeGreaterThan(pitch('10mm'));
    expect(pitch('10mm')).toBeGreaterThan(pitch('6mm'));
  });

  it('strokes what was left out, and names it', () => {
    const back = view(placed('place A nape weave x3\nleave crown "stands up"'), 'back');
    expect(back).toContain('fill="url(#f-head-back-out)"');
    expect(back).toContain('>left out</text>');
    expect(words(back)['Head, from behind']).toBe('A weave ×3 on nape; crown left out');
  });

  it('says in words what each view shows, and where nothing is placed', () => {
    expect(words(placed('place A hairline slice x2 gap 0 mirror\nplace B back left weave x4'))).toEqual({
      'Head, from above': 'A slice ×2+2 on hairline',
      'Head, left side': 'nothing placed here',
      'Head, right side': 'nothing placed here',
      'Head, from behind': 'B weave ×4 on left back',
    });
  });

  it('draws places along the hair on a strand, and no head for them', () => {
    const svg = placed('place T roots apply\nplace A lengths, ends comb-through\nleave ends');
    expect(words(svg)).toEqual({ 'Along the hair': 'T: roots; A: mids and lengths and ends; left out: ends' });
    expect(svg).not.toContain('class="heads"');
  });

  it('takes lengths from the roots on, unless mids are spoken of', () => {
    expect(words(placed('place A lengths apply'))['Along the hair']).toBe('A: mids and lengths');
    expect(words(placed('place A lengths apply\nplace T mids apply'))['Along the hair']).toBe('A: lengths; T: mids');
  });

  it('names what it cannot draw', () => {
    expect(placed('place A top, band weave x3')).toContain('Not drawn: band.');
    expect(placementFigure('f', lastOf('place A brow apply'))).toBeUndefined();
  });
});

describe('the timeline', () => {
  it('draws a bar for each bowl and place, wide and narrow, and says the same in words', () => {
    const svg = timed('on 14:35-14:55 A top\ncheck 14:55 A orange\noff 15:15 A top\non 15:30 T lengths\noff 15:40 T');
    expect(svg.match(/class="bar"/g)).toHaveLength(4);
    expect(words(svg)['Times on the clock']).toBe(
      'A top on 14:35 to 14:55; 14:55 orange; off 15:15, 40 min from first on. T lengths on 15:30; off 15:40, 10 min from first on',
    );
    expect(svg).toContain('class="timeline wide"');
    expect(svg).toContain('class="timeline narrow"');
  });

  it('strokes what is past the shelf’s time, from its far end to the rinse', () => {
    const svg = timed('on 14:00-14:10 A top\noff 15:02 A');
    expect(svg).toContain('class="past"');
    expect(svg).toContain('12 min past its time on the shelf');
    expect(svg).toContain('Strokes: past the shelf’s time.');
    expect(timed('on 14:00-14:10 A top\noff 14:50 A')).not.toContain('class="past"');
  });

  it('leaves a bar open that nobody noted off', () => {
    const svg = timed('on 14:00 A top');
    expect(svg).toContain('class="bar open"');
    expect(svg).not.toContain('class="off-mark"');
    expect(svg).toContain('off not noted');
  });

  it('marks heat and a reaction at their times', () => {
    const svg = timed('on 14:00 A top\nheat 14:10-14:20 A\nreaction 14:25 A top burning\noff 14:40 A');
    expect(svg.match(/class="heat"/g)).toHaveLength(2);
    expect(svg).toContain('>reaction</text>');
    expect(words(svg)['Times on the clock']).toContain('heat 14:10 to 14:20');
  });

  it('is not drawn for a visit without a clock', () => {
    expect(timeline('f', lastOf('note no clock'), [])).toBeUndefined();
  });
});

describe('the lift', () => {
  const SEEN = 'on 14:00 A top\ncheck 14:10 A red to orange\ncheck 14:20 A gold\ncheck 14:30 A yellow\noff 14:35 A';

  it('draws what was seen as points, and a span as a bar', () => {
    const svg = liftFigure('f', liftOf(lastOf(SEEN))) ?? '';
    expect(svg.match(/class="look"/g)).toHaveLength(2);
    expect(svg.match(/class="span"/g)).toHaveLength(3);
    expect(svg.match(/class="curve"/g)).toHaveLength(1);
    expect(words(svg)).toEqual({
      'Lift of A top': 'A top: red to orange at 10 min, gold at 20 min, yellow at 30 min; off at 35 min',
    });
  });

  it('has a panel for each place, and none without a look', () => {
    const two = lastOf(`${SEEN}\non 14:02 A crown\ncheck 14:20 crown orange\noff 14:40 A crown`);
    expect(liftFigure('f', liftOf(two))?.match(/class="lift"/g)).toHaveLength(2);
    expect(liftFigure('f', [])).toBeUndefined();
  });
});

describe('the swatches', () => {
  it('stand for natural, found, undercoat and result, and are always called an illustration', () => {
    const visit = lastOf(
      'start roots 6, lengths 8 warm\non 14:00 A top\ncheck 14:30 A yellow\noff 14:35\nresult lengths 9 violet',
      'natural 6',
    );
    expect(swatchesOfVisit(visit).map(({ of, says }) => `${of}: ${says}`)).toEqual([
      'natural: 6',
      'found: roots 6',
      'found: lengths 8 warm',
      'undercoat: yellow, top',
      'result: lengths 9 violet',
    ]);
    const svg = swatchFigure('f', visit) ?? '';
    expect(Object.keys(words(svg)).every((title) => title.startsWith('Illustration: '))).toBe(true);
    expect(svg).toContain('<figcaption>Illustration:');
  });

  it('takes the undercoat from the chart where hair went up and no stage was noted', () => {
    const undercoat = (lines: string): string[] =>
      swatchesOfVisit(lastOf(lines))
        .filter(({ of }) => of === 'undercoat')
        .map(({ says }) => says);
    expect(undercoat('start lengths 6\nresult lengths 9')).toEqual(['yellow, by the chart at depth 9']);
    expect(undercoat('start lengths 6\nresult lengths 5')).toEqual([]);
  });

  it('are not drawn where no depth and no stage was noted', () => {
    expect(swatchFigure('f', lastOf('note none'))).toBeUndefined();
  });
});

describe('every figure', () => {
  const HOSTILE = '"></title><script>x</script>';
  const typed = lastOf(
    'place A band weave x3\nplace A top weave x4\non 14:00 A band\ncheck 14:10 A band yellow\noff 14:30\nstart lengths 6 warm',
    'natural 6',
  );
  // Whatever a name may hold one day: the figures are told hostile names of places and products.
  const visit: VisitReckoned = {
    ...typed,
    clock: { ...typed.clock, runs: typed.clock.runs.map((run) => ({ ...run, zone: HOSTILE })) },
    bowls: typed.bowls.map((bowl) => ({
      ...bowl,
      portions: bowl.portions.map((portion) => ({ ...portion, label: HOSTILE })),
    })),
  };
  const all = (id: string): string =>
    [
      placementFigure(`${id}1`, visit),
      timeline(`${id}2`, visit, []),
      liftFigure(`${id}3`, liftOf(visit)),
      swatchFigure(`${id}4`, visit),
      placementFigure(`${id}5`, lastOf('place A+B top weave x8 turn A B\nplace T roots apply\nleave crown')),
    ].join('');

  it('holds nothing but drawings and text: no script, style, link, picture or handler', () => {
    const tags = new Set([...all('f').matchAll(/<([a-z]+)/g)].map(([, tag]) => tag));
    const drawn = 'b circle defs desc div figcaption figure g li line path pattern rect svg text title ul'.split(' ');
    expect([...tags].filter((tag) => !drawn.includes(tag ?? ''))).toEqual([]);
    expect(
      [...all('f').matchAll(/ ([a-z-]+)="/g)]
        .map(([, name = '']) => name)
        .filter((name) => /^(on|style|href|src)/.test(name)),
    ).toEqual([]);
  });

  it('keeps every text of a note as text', () => {
    const shown = all('f').split('&quot;&gt;&lt;/title&gt;&lt;script&gt;x').length - 1;
    expect(shown).toBeGreaterThan(3);
    expect(all('f').includes('<script')).toBe(false);
  });

  it('has ids of its own, and refers to no other', () => {
    const svg = all('f');
    const ids = [...svg.matchAll(/ id="(.*?)"/g)].map(([, id]) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    const named = [
      ...[...svg.matchAll(/url\(#(.*?)\)/g)].map(([, id]) => id),
      ...[...svg.matchAll(/aria-labelledby="(.*?)"/g)].flatMap(([, both = '']) => both.split(' ')),
    ];
    expect(named.filter((id) => !ids.includes(id))).toEqual([]);
    expect(named.length).toBeGreaterThan(20);
  });

  it('has figures in plain decimals', () => {
    expect(all('f').match(/NaN|Infinity|undefined|\d\.\d{3}|\de-/g)).toBeNull();
  });

  it('gives a bowl the same pattern throughout, in the order of mixing', () => {
    expect([...bowlMarks(visit)]).toEqual([
      ['A', 0],
      ['B', 1],
      ['T', 2],
    ]);
  });
});

import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { blendOf, shadesText } from '../../reckon/bowl/shade-blend.ts';
import { isCutOff } from '../../reckon/client/cut-off.ts';
import { isLightening, stillHanging, testsFor, zonesOfBowl } from '../../reckon/client/state.ts';
import { isMadeSince, isTooLate } from '../../reckon/hair/tried-since.ts';
import { anyMeetLoosely, belowRoots, isAt } from '../../reckon/head/hair-meets.ts';
import { areLeftOut } from '../../reckon/head/left-out.ts';
import { depthsAt, depthText, isAway, meets, naturalDepth, type SeenDepth } from '../../reckon/head/seen-at.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { toNumber } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import { DARK_COLOUR, darkWords } from '../../trade/hair.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** Colour put in at home, whose depth and layers nobody here saw. What may hold metal has a test and a rule of its own. */
const UNSEEN = 'box-colour';

/** Colour that lies in layers where it is dark. */
const IN_LAYERS: ReadonlySet<string> = new Set(['salon-colour', 'direct-dye']);

/** Artificial colour that a strand is tried on first. */
type Under = { readonly says: string; readonly when: string | undefined; readonly place: Place };

/** Depths darker than her own from which lengths are coloured, whatever the history says: a choice. */
const DARKER = 2;

/** The depth from which hair is lighter than dark colour, and that colour has been taken out: a choice. */
const TAKEN_OUT = 7;

/** What the start of a visit says of the lengths that a bowl goes on. */
const lengthsAtStart = (visit: VisitReckoned, zones: readonly string[]): readonly SeenDepth[] =>
  depthsAt(visit, 'start').filter(
    ({ zone }) =>
      (isAway(zone) || zone === 'all' || zone === '') &&
      !areLeftOut(visit, [zone]) &&
      meets(belowRoots(zone), zones.map(belowRoots), visit.salon.zones),
  );

/** The lengths at the start that are dark, and at least so many depths darker than her own. */
const darkStart = (visit: VisitReckoned, starts: readonly SeenDepth[], darker: number): SeenDepth | undefined => {
  const natural = naturalDepth(visit.client, 'lengths')?.low;
  return starts.find(
    ({ depth }) =>
      depth.high <= DARK_COLOUR && (natural === undefined ? depth.high < DARK_COLOUR : natural - depth.high >= darker),
  );
};

/** A bowl of dark permanent colour that an earlier visit put on the same hair, or on roots that have grown into it. */
const darkBowl = (
  visit: VisitReckoned,
  zones: readonly string[],
  earlier: readonly VisitReckoned[],
): Under | undefined => {
  const natural = naturalDepth(visit.client, 'lengths')?.low;
  if (natural === undefined || (zones.length > 0 && zones.every((zone) => isAt(zone, 'roots')))) return undefined;
  for (const before of earlier.toReversed()) {
    if (before.date >= visit.date || isCutOff(visit, before.date)) continue;
    for (const bowl of areLeftOut(visit, ['lengths']) ? [] : bowlsPutOn(before)) {
      const depth = itemsIn(bowl).some(({ kind }) => kind === 'permanent') ? blendOf(bowl)?.depth : undefined;
      if (depth === undefined || toNumber(depth) > DARK_COLOUR || natural - toNumber(depth) < DARKER) continue;
      const coloured = zonesOfBowl(before, bowl.name).map((zone) => zone.replace('roots', 'all'));
      if (!anyMeetLoosely(zones, coloured, visit.salon.zones)) continue;
      return { says: `${shadesText(bowl)} of ${before.date}`, when: before.date, place: bowl.place };
    }
  }
  return undefined;
};

const underneath = (visit: VisitReckoned, bowl: BowlReckoned, earlier: readonly VisitReckoned[]): Under | undefined => {
  const zones = zonesOfBowl(visit, bowl.name);
  const done = stillHanging(visit).filter(
    (one) => anyMeetLoosely(zones, one.zones, visit.salon.zones) && !areLeftOut(visit, one.zones),
  );
  const unseen = done.find(({ kind }) => kind === UNSEEN);
  if (unseen !== undefined) return { says: unseen.kind, when: unseen.when, place: unseen.place };
  const starts = lengthsAtStart(visit, zones);
  if (starts.some(({ depth }) => depth.low >= TAKEN_OUT)) return undefined;
  for (const { kind, when, place, says } of done) {
    if (!IN_LAYERS.has(kind)) continue;
    const words = says === undefined ? undefined : darkWords(says);
    const dark = words === undefined ? darkStart(visit, starts, 1) : undefined;
    if (words !== undefined) return { says: `${kind}, "${words}",`, when, place };
    if (dark !== undefined) return { says: `${kind}, depth ${depthText(dark.depth)} today,`, when, place };
  }
  const before = darkBowl(visit, zones, earlier);
  if (before !== undefined) return before;
  const natural = naturalDepth(visit.client, 'lengths');
  const dark = natural === undefined ? undefined : darkStart(visit, starts, DARKER);
  return natural === undefined || dark === undefined
    ? undefined
    : {
        says: `depth ${depthText(dark.depth)} on hair of natural ${depthText(natural)}`,
        when: undefined,
        place: dark.place,
      };
};

const foundIn = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): Found | undefined => {
  const { client, date, salon } = visit;
  for (const bowl of bowlsPutOn(visit)) {
    const item = itemsIn(bowl).find(({ kind }) => kind === 'remover' || kind === 'lightener');
    if (item === undefined || !(item.kind === 'remover' || isLightening(bowl))) continue;
    const under = underneath(visit, bowl, earlier);
    if (under === undefined && item.kind !== 'remover') continue;
    const tried = testsFor(client, salon.hours, date).some(
      // One without a day came before the day it is noted for.
      (test) =>
        test.kind === 'strand' &&
        (test.made === undefined || (isMadeSince(test, under?.when, visit) && !isTooLate(visit, test.made))),
    );
    if (tried) continue;
    const what =
      under === undefined ? 'no strand test is noted' : `${under.says} is on file and no strand test is noted since`;
    return {
      place: placeInBowl(bowl, (portion) => portion.item === item),
      severity: item.kind === 'remover' ? 'mind' : 'fix',
      message: `Bowl ${bowl.name} holds ${item.name}, ${item.kind}; ${what}.`,
      expected:
        'A strand is tried first on dark artificial colour, and where nobody saw what went in (common practice).',
      todo: `Write the strand that was tried, as in \`test strand ${item.name} 20min orange\`; if none was, how it came out stands in a \`result\` line.`,
      label: 'no strand test',
      ...(item.kind === 'lightener' && { caution: 'lightener' }),
      ...(under && { also: [{ place: under.place, says: 'went in before' }] }),
    };
  }
  return undefined;
};

export default defineRule({
  name: 'strand-test-missing',
  family: 'condition',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['remover', 'lightener'] },
  what: 'Lightener goes on box colour, or on other colour that is dark, with no strand test since; `mind` for a remover without one.',
  why: 'Dark layers, and those that nobody saw go on, can stay dark, turn green, or break; one strand shows which.',
  source: { kind: 'common practice' },
  check(visit, { earlier }) {
    const found = foundIn(visit, earlier);
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2024-05 box-colour lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^
      place A top`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2024-05 box-colour lengths
    visit 2026-09-04 wren-abbott
      test strand clay 20min orange
      bowl A 40 clay + 80 dev-6
      place A top`,
});

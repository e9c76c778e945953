import { toNumber } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import { LIGHTEST } from '../../trade/lift-guide.ts';
import { bowlsPutOn } from '../bowl/applied.ts';
import { itemsIn } from '../bowl/contents.ts';
import { kindsMixed } from '../bowl/kinds-mixed.ts';
import { blendOf } from '../bowl/shade-blend.ts';
import { lightenedBefore, stillHanging } from '../client/state.ts';
import { depthsAt, isAway, meets, type SeenDepth } from '../head/seen-at.ts';
import { zonesOfBowl } from '../head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../model.ts';

/** Depths that a shade may be lighter than coloured hair before it is worth a word: a choice. */
const ROOM = 1.5;

const TINTS: ReadonlySet<string | undefined> = new Set(['permanent', 'high-lift']);
const CLEARING: ReadonlySet<string | undefined> = new Set(['lightener', 'remover']);

const NONE: readonly OverColour[] = [];

export type Coloured = { readonly zones: readonly string[]; readonly place: Place };

const holds = (bowl: BowlReckoned, kinds: ReadonlySet<string | undefined>): boolean =>
  itemsIn(bowl).some(({ kind }) => kinds.has(kind));

/** Where permanent colour was put on the hair before: by its history, then by earlier visits. Demi colour fades out. */
const colouredBefore = (now: VisitReckoned, earlier: readonly VisitReckoned[]): Coloured[] => [
  ...stillHanging(now).filter(({ kind }) => kind === 'box-colour' || kind === 'salon-colour'),
  ...earlier.flatMap((visit) =>
    bowlsPutOn(visit)
      .filter((bowl) => holds(bowl, TINTS))
      .map((bowl) => ({ zones: zonesOfBowl(visit, bowl.name), place: bowl.place })),
  ),
];

/** A bowl of permanent colour lighter than the coloured lengths it goes on. */
export type OverColour = {
  readonly bowl: BowlReckoned;
  /** The depth of its shades. */
  readonly shade: number;
  readonly start: SeenDepth;
  readonly before: Coloured;
};

/** The lengths a bowl of permanent colour is clearly lighter than, as the start gives them. */
const lighterThan = (visit: VisitReckoned, bowl: BowlReckoned, shade: number): readonly SeenDepth[] => {
  const starts = depthsAt(visit, 'start').filter(
    ({ zone, seen, depth }) =>
      shade - depth.high >= ROOM &&
      (isAway(zone) || zone === 'all') &&
      !seen.words.some(({ word }) => word === 'natural'),
  );
  if (starts.length === 0) return starts;
  const zones = zonesOfBowl(visit, bowl.name);
  return starts.filter(({ zone }) => meets(zone, zones, visit.salon.zones));
};

/** Where permanent colour goes over colour that it cannot lift, at a visit that others came before; one place a bowl. */
export const overColour = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): readonly OverColour[] => {
  const kinds = kindsMixed(visit);
  if (!kinds.includes('permanent') && !kinds.includes('high-lift')) return NONE;
  const bowls = bowlsPutOn(visit);
  if (bowls.some((bowl) => holds(bowl, CLEARING))) return NONE;
  const own = visit.salon.zones;
  return bowls.flatMap((bowl): readonly OverColour[] => {
    const depth = holds(bowl, TINTS) ? blendOf(bowl)?.depth : undefined;
    if (depth === undefined) return NONE;
    const shade = Math.min(toNumber(depth), LIGHTEST);
    const starts = lighterThan(visit, bowl, shade);
    if (starts.length === 0) return NONE;
    const coloured = colouredBefore(visit, earlier);
    const lightened = lightenedBefore(visit, earlier);
    for (const start of starts) {
      const before = coloured.find((one) => meets(start.zone, one.zones, own));
      if (before !== undefined && !lightened.some(({ zones }) => meets(start.zone, zones, own)))
        return [{ bowl, shade, start, before }];
    }
    return NONE;
  });
};

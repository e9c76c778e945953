import type { ShelfItem } from '../journal/shelf.ts';
import { bowlsPutOn } from '../reckon/bowl/applied.ts';
import { itemsIn } from '../reckon/bowl/contents.ts';
import { blendOf } from '../reckon/bowl/shade-blend.ts';
import { overColour } from '../reckon/hair/over-colour.ts';
import { depthsAt, meets, type SeenDepth, startsAt } from '../reckon/head/seen-at.ts';
import { zonesOfBowl } from '../reckon/head/services.ts';
import { lighteningOf } from '../reckon/lift/lightener.ts';
import type { BowlReckoned, VisitReckoned } from '../reckon/model.ts';
import { toNumber } from '../text/exact.ts';
import { recently } from '../text/recently.ts';
import type { Place } from '../text/span.ts';
import { LIGHTEST } from '../trade/lift-guide.ts';
import { type Found, foundEach } from './rule.ts';

/** What says how light a bowl is to take the hair: the result, else what is wanted, else its own shade. */
export type Aim = { readonly by: 'result' | 'want' | 'shade'; readonly depth: number; readonly place: Place };

/** A bowl that lightens, what it finds and what it is to reach. */
export type LiftGap = {
  readonly bowl: BowlReckoned;
  readonly item: ShelfItem;
  /** Of the developer, in per cent. */
  readonly strength: number;
  readonly start: SeenDepth;
  readonly aim: Aim;
  /** Depths from start to aim, read in favour of the note. */
  readonly depths: number;
  /** The depth that came of it, where that is less than the depth wanted, which is the aim here. */
  readonly reached: number | undefined;
};

const clears = (bowl: BowlReckoned): boolean =>
  itemsIn(bowl).some(({ kind }) => kind === 'lightener' || kind === 'remover');

/** Whether another bowl of the visit takes colour out of the hair too, so that no lift is this bowl’s own. */
const hasHelp = (visit: VisitReckoned, bowl: BowlReckoned): boolean =>
  bowlsPutOn(visit).some((other) => other !== bowl && clears(other));

/** The aims of a bowl where it starts: the one that counts, and after a result that fell short what had been wanted. */
const aimsFor = (
  visit: VisitReckoned,
  bowl: BowlReckoned,
  item: ShelfItem,
  start: SeenDepth,
): readonly Pick<LiftGap, 'aim' | 'reached'>[] => {
  const own = visit.salon.zones;
  const zones = zonesOfBowl(visit, bowl.name);
  // A start that is only lent by the roots or by nature stands for wherever the bowl goes.
  const at = start.zone !== '' && meets(start.zone, zones, own) ? [start.zone] : zones;
  const of = (word: 'result' | 'want'): Aim | undefined => {
    const said = depthsAt(visit, word).find(({ zone }) => meets(zone, at, own));
    return said && { by: word, depth: said.depth.low, place: said.place };
  };
  const [result, want] = [of('result'), of('want')];
  const aims: Pick<LiftGap, 'aim' | 'reached'>[] = [];
  if (result !== undefined) aims.push({ aim: result, reached: undefined });
  if (want !== undefined && (result === undefined || want.depth > result.depth))
    aims.push({ aim: want, reached: result?.depth });
  if (aims.length > 0) return aims;
  const shade = item.kind === 'lightener' ? undefined : blendOf(bowl)?.depth;
  if (shade === undefined) return [];
  const aim: Aim = { by: 'shade', depth: Math.min(toNumber(shade), LIGHTEST), place: bowl.place };
  return [{ aim, reached: undefined }];
};

const gapsOf = (visit: VisitReckoned): readonly LiftGap[] => {
  const gaps: LiftGap[] = [];
  for (const bowl of bowlsPutOn(visit)) {
    const { product: item, strength } = lighteningOf(bowl) ?? {};
    // A lightener without a lift line has neither claim nor guide.
    if (item === undefined || (item.kind === 'lightener' && item.lift === undefined)) continue;
    if (strength === undefined || hasHelp(visit, bowl)) continue;
    for (const start of startsAt(visit, zonesOfBowl(visit, bowl.name)))
      for (const { aim, reached } of aimsFor(visit, bowl, item, start))
        gaps.push({ bowl, item, strength, start, aim, depths: aim.depth - start.depth.high, reached });
  }
  return gaps;
};

/** The lift that each bowl of a visit is noted to do or to be for, where the notes say enough; asked of earlier visits too. */
const liftGaps = recently(gapsOf);

/** Whether an earlier visit shows this client lifted as far by the same product at that strength or a weaker one. */
const didBefore = (gap: LiftGap, earlier: readonly VisitReckoned[]): boolean =>
  earlier.some((visit) =>
    liftGaps(visit).some(
      ({ item, strength, aim, depths }) =>
        item === gap.item && strength <= gap.strength && aim.by === 'result' && depths >= gap.depths,
    ),
  );

/**
 * What a claim or a guide finds in the lifts of a visit, one finding a bowl. What her hair did before outweighs both,
 * and colour over colour, which does not lift at all, has a rule of its own.
 */
export const gapsFound = (
  visit: VisitReckoned,
  earlier: readonly VisitReckoned[],
  find: (gap: LiftGap) => Found | undefined,
): readonly Found[] => {
  // The gaps of a bowl stand together.
  let told: BowlReckoned | undefined;
  return foundEach(liftGaps(visit), (gap) => {
    const found = told === gap.bowl ? undefined : find(gap);
    if (found === undefined || didBefore(gap, earlier)) return undefined;
    if (overColour(visit, earlier).some(({ bowl }) => bowl === gap.bowl)) return undefined;
    told = gap.bowl;
    return found;
  });
};

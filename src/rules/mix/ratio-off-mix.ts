import { basesIn, portionsIn } from '../../reckon/bowl/contents.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import { greyShare } from '../../reckon/client/state.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { figure, grams, ratioText } from '../../reckon/say.ts';
import type { Ratio } from '../../records/schema/values.ts';
import { compare, div, type Exact, exact, exactOf, max, min, mul, sub, sum, toNumber, ZERO } from '../../text/exact.ts';
import { lasting } from '../../text/recently.ts';
import { sentence } from '../../text/sentence.ts';
import { GREY_TO_BASE } from '../../trade/grey.ts';
import { isVolume } from '../../trade/units.ts';
import { MEANT } from '../reason-words.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

const TENTH = exact(1, 10);
const HALF = exact(1, 2);
/** Developer measured by volume: a density makes `90ml` 90.9 g, and no jug shows the difference. A choice, no source. */
const BY_VOLUME = exact(1, 50);
/** What the hand pours beside what was meant: the scales are read, and nobody scoops a gram back. A choice, no source. */
const POURED = exact(2);

/** Least and most developer to one of colour; a shelf has few mix lines, and every bowl asks. */
const boundsOf = lasting(({ colour, developer, to }: Ratio): { readonly low: Exact; readonly high: Exact } => {
  const [near, far] = [exactOf(developer), exactOf(to ?? developer)];
  return { low: div(min(near, far), exactOf(colour)), high: div(max(near, far), exactOf(colour)) };
});

/** What a bleach wash is thinned with. */
const WASHES: ReadonlySet<string | undefined> = new Set(['conditioner', 'treatment', 'goods']);

/**
 * Whether a bowl is a bleach wash: lightener with so much shampoo or conditioner in it, half its weight or more, that the
 * leaflet's ratio is not meant for it. Common practice, no source; the half is a choice.
 */
const isWash = (bowl: BowlReckoned, base: Exact): boolean => {
  const portions = portionsIn(bowl);
  if (!portions.some(({ item }) => item?.kind === 'lightener')) return false;
  const wash = sum(portions.flatMap(({ item, weight }) => (WASHES.has(item?.kind) && weight ? [weight] : [])));
  return compare(wash, mul(base, HALF)) >= 0;
};

/** From one to one on: less developer than that is a slip of the hand. */
const EVEN = exact(1);

/**
 * Whether a bowl is colour mixed thick for white hair that does not hold (double pigment): permanent colour with as much
 * developer as colour at least, over half grey or more. Common practice, no source.
 */
const isDoublePigment = (bowl: BowlReckoned, { client, visit }: VisitReckoned, ratio: Exact): boolean =>
  compare(ratio, EVEN) >= 0 &&
  basesIn(bowl).every(({ kind }) => kind === 'permanent') &&
  (greyShare(client, visit)?.percent ?? 0) >= GREY_TO_BASE;

const foundIn = (bowl: BowlReckoned, visit: VisitReckoned): Found | undefined => {
  const { salon } = visit;
  const { base, developer, ratio, ratioPlace } = bowl;
  const weighed = bowl.weighed?.parts.length === 0 ? undefined : bowl.weighed;
  // A bowl made again was found out where it was first mixed, if it was not weighed anew.
  if ((bowl.again !== undefined && weighed === undefined) || base === undefined || developer === undefined)
    return undefined;
  if (ratio === undefined || ratioPlace === undefined || developer.n === 0) return undefined;
  const items = basesIn(bowl);
  const [item] = items;
  const mix = item?.mix;
  if (item === undefined || mix?.ratio === undefined) return undefined;
  const { low, high } = boundsOf(mix.ratio);
  const alike = items.every(({ mix: other }) => {
    const bounds = other?.ratio && boundsOf(other.ratio);
    return bounds !== undefined && compare(bounds.low, low) === 0 && compare(bounds.high, high) === 0;
  });
  if (!alike || (compare(ratio, low) >= 0 && compare(ratio, high) <= 0)) return undefined;
  const [least, most] = [mul(base, low), mul(base, high)];
  const byVolume = bowl.portions.some(({ component }) => isVolume(component.amount?.unit ?? ''));
  const share = bowl.about || weighed !== undefined ? TENTH : byVolume ? BY_VOLUME : ZERO;
  const steps = weighed === undefined ? HALF : POURED;
  const room = max(mul(salon.scale, steps), mul(developer, share));
  const under = compare(sub(least, developer), room) > 0;
  if (!under && compare(sub(developer, most), room) <= 0) return undefined;
  if (isWash(bowl, base)) return undefined;
  const names = items.map(({ name }) => name).join(' and ');
  const fits = compare(low, high) === 0 ? ratioText(low) : `${ratioText(low)} to ${ratioText(high)}`;
  const weights = compare(low, high) === 0 ? grams(least) : `${figure(least)} to ${grams(most)}`;
  const double = under && isDoublePigment(bowl, visit, ratio);
  const meant = bowl.meant?.ratio;
  const has = `${grams(developer)} developer to ${grams(base)} ${names}, ${ratioText(ratio)}`;
  return {
    place: weighed?.place ?? ratioPlace,
    ...(double && { severity: 'mind' }),
    message:
      weighed === undefined
        ? `Bowl ${bowl.name} has ${has}.`
        : `Bowl ${bowl.name} was weighed as ${has}${meant === undefined ? '' : `; ${ratioText(meant)} was meant`}.`,
    expected: sentence`${item.full} takes ${fits}, ${weights} here (${citeLine(item, mix)}).`,
    todo: 'Write the weight as it was, or the reason: `because ratio-off-mix "…"`.',
    figures: {
      hasRatio: toNumber(ratio),
      leastRatio: toNumber(low),
      mostRatio: toNumber(high),
      baseGrams: toNumber(base),
      developerGrams: toNumber(developer),
    },
    label: `${under ? 'at least' : 'at most'} ${grams(under ? least : most)}`,
    also: [{ place: placeOf(item.stood, mix, mix.ratio.at), says: 'its mix line' }],
  };
};

export default defineRule({
  name: 'ratio-off-mix',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  what: 'Developer to colour, as weighed where the scales said, is outside the mix line of the shelf by more than the scales or the hand; `mind` for colour mixed thick over grey, and nothing for a bleach wash.',
  why: 'Off the maker’s ratio the mixture runs, dries or works otherwise than its times and claims say.',
  source: { kind: 'shelf', cites: 'the mix line of what is mixed' },
  accepts: MEANT,
  check: (visit) => foundEach(visit.bowls, (bowl) => foundIn(bowl, visit)),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 80 dev-6
                       ^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6`,
});

import { inPercent, placeInBowl } from '../../reckon/bowl/contents.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import { depthText, placeName } from '../../reckon/head/seen-at.ts';
import { figure } from '../../reckon/say.ts';
import type { Lift } from '../../records/schema/shelf.ts';
import { exactOf, toNumber } from '../../text/exact.ts';
import { sentence } from '../../text/sentence.ts';
import { gapsFound, type LiftGap } from '../lift-gap.ts';
import { defineRule, type Found } from '../rule.ts';

type Claim = Lift['claims'][number];

/** The claim for a strength: its own, else that of the next stronger developer. */
const claimFor = ({ claims }: Lift, strength: number): Claim | undefined =>
  claims
    .toSorted((a, b) => toNumber(inPercent(a.strength)) - toNumber(inPercent(b.strength)))
    .find((claim) => toNumber(inPercent(claim.strength)) >= strength);

/** A shade alone does not say how light the hair is meant to be, so it has more room than a depth that is written. */
const roomOf = ({ aim }: LiftGap): number => (aim.by === 'shade' ? 1 : 0.5);

const SAYS = { result: 'result', want: 'wanted', shade: 'shade' } as const;

const foundIn = (gap: LiftGap): Found | undefined => {
  const { bowl, item, strength, start, aim, depths, reached } = gap;
  const claim = item.lift && claimFor(item.lift, strength);
  if (item.lift === undefined || claim === undefined || depths <= claim.high + roomOf(gap)) return undefined;
  const percent = `${figure(exactOf(strength))} %`;
  const range = claim.low === claim.high ? `${claim.low}` : `${claim.low} to ${claim.high}`;
  return {
    place: aim.by === 'shade' ? placeInBowl(bowl, (portion) => portion.item === item) : aim.place,
    ...((aim.by === 'shade' || reached !== undefined) && { severity: 'mind' as const }),
    message: `${placeName(start.zone)}: start ${depthText(start.depth)}, ${SAYS[aim.by]} ${figure(exactOf(aim.depth))}, ${figure(exactOf(depths))} depths apart, with ${item.name} and ${percent}${reached === undefined ? '' : `; the result is ${figure(exactOf(reached))}`}.`,
    expected: sentence`${item.full} claims ${range} depths with ${figure(inPercent(claim.strength))} % (${citeLine(item, item.lift)}).`,
    todo:
      reached === undefined
        ? 'Write the depth or the strength as it was, or plan it in two steps: lighten first, then colour.'
        : 'Write the depth or the strength as it was; if it was asked for so, `because lift-beyond-claim "…"`. The rest takes two steps: lighten first, then colour.',
    label: `${range} claimed`,
    also: [
      { place: start.place, says: 'starts here' },
      { place: placeOf(item.stood, item.lift, claim.strength.at), says: 'its lift line' },
    ],
  };
};

export default defineRule({
  name: 'lift-beyond-claim',
  family: 'lift',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  what: 'The result or the depth wanted is further from the start than the product’s own lift line claims for the strength; `mind` where the result is noted and fell short.',
  why: 'Hair left short of its depth comes out warm and uneven, and is lightened again for it.',
  source: { kind: 'shelf', cites: 'the lift line of what lightens' },
  check: (visit, { earlier }) => gapsFound(visit, earlier, foundIn),
  bad: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      lift 3% 0-1, 6% 1-2, 9% 2-3
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      start roots 4
      want roots 9 gold
                 ^
      bowl A 40 cream 9/3 + 60 dev-6
      place A roots`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      lift 3% 0-1, 6% 1-2, 9% 2-3
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      start roots 4
      want roots 6 gold
      bowl A 40 cream 6/3 + 60 dev-6
      place A roots`,
});

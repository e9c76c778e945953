import type { ShelfItem } from '../../journal/shelf.ts';
import { basesIn, developerStrength, placeInBowl } from '../../reckon/bowl/contents.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { compare, exact } from '../../text/exact.ts';
import { MEANT } from '../reason-words.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

/** The most peroxide, in per cent, that demi colour and toner are mixed with: common practice, no source. */
const MOST = exact(6);

const isToner = ({ kind, strengths }: ShelfItem): boolean =>
  (kind === 'toner' || kind === 'demi') && strengths === undefined;

const foundIn = (bowl: BowlReckoned): Found | undefined => {
  const bases = basesIn(bowl);
  const [item] = bases;
  if (bowl.again !== undefined || item === undefined || !bases.every(isToner)) return undefined;
  const strength = developerStrength(bowl);
  if (strength === undefined || compare(strength, MOST) <= 0) return undefined;
  return {
    place: placeInBowl(bowl, ({ role }) => role === 'developer'),
    message: `Bowl ${bowl.name} has ${item.name} with ${figure(strength)} %.`,
    expected: `Toner and demi colour take up to ${figure(MOST)} % (common practice; a rough guide).`,
    todo: 'Write the developer that was used, or the maker’s own strengths on the shelf, as in `strength 1.9%`.',
    label: `${figure(strength)} %`,
  };
};

export default defineRule({
  name: 'toner-strength',
  family: 'strength',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'A toner or demi colour without a strength line is mixed with more than 6 per cent.',
  why: 'What is meant to tone then lightens the hair around it, and leaves warmth at the roots.',
  source: { kind: 'common practice' },
  accepts: MEANT,
  check: ({ bowls }) => foundEach(bowls, foundIn),
  bad: `
    product dev-9 "Cream developer" developer 9%
    range toner "Tidewater toner" toner
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 toner read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 20 toner 9/2 + 20 dev-9
                            ^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range toner "Tidewater toner" toner
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 toner read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 20 toner 9/2 + 20 dev-6`,
});

import type { ShelfItem } from '../../journal/shelf.ts';
import { basesIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { shadesIn, shadesText } from '../../reckon/bowl/shade-blend.ts';
import { citeLine } from '../../reckon/cite.ts';
import { isWrongOpposite, type LastLook, type Toning, toningsOf } from '../../reckon/hair/toning.ts';
import { placeName } from '../../reckon/head/seen-at.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { exactOf, toNumber } from '../../text/exact.ts';
import { capital } from '../../text/fold.ts';
import { sentence } from '../../text/sentence.ts';
import { MEANT } from '../reason-words.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

/** Depths that a toner may be lighter than what it goes over, where its shelf says nothing: a choice, since stages tell a depth only roughly. */
const ROOM = 2;

/** Depths beyond that from which no undercoat chart makes it right; of a look some minutes early, one more. A choice. */
const FAR = 2;

/** The darkest depth that a bowl of this depth goes over: by the `over` lines of what is in it, else two depths below its own. */
const darkestUnder = (bowl: BowlReckoned, depth: number): { readonly depth: number; readonly item?: ShelfItem } => {
  const said = basesIn(bowl).flatMap((item) =>
    item.over.map(({ depth: least, darker }) => ({
      // A shade that is darker itself goes over its own depth.
      depth: darker === undefined ? Math.min(least ?? depth, depth) : depth - darker,
      item,
    })),
  );
  const [least] = said.toSorted((a, b) => b.depth - a.depth);
  return least ?? { depth: depth - ROOM };
};

const seenText = ({ stage, depth }: LastLook): string => stage ?? `depth ${figure(exactOf(depth))}`;

const foundIn = ({ bowl, blend, looks, ...toning }: Toning): Found | undefined => {
  const depth = blend.depth && toNumber(blend.depth);
  if (depth === undefined) return undefined;
  const least = darkestUnder(bowl, depth);
  const [darkest] = looks.filter((look) => look.depth < least.depth).toSorted((a, b) => a.depth - b.depth);
  // Where the tone is wrong as well, that is the finding.
  if (darkest === undefined || isWrongOpposite({ bowl, blend, looks, ...toning })) return undefined;
  const [shade] = shadesIn(bowl);
  const { item } = least;
  const line = item?.over[0];
  const seen = seenText(darkest);
  const where = darkest.zone === '' ? '' : ` at the ${darkest.zone}`;
  const rough =
    darkest.stage === undefined
      ? ''
      : `${capital(darkest.stage)} is about depth ${figure(exactOf(darkest.depth))}, a rough guide (an undercoat chart).`;
  const takes =
    item === undefined || line === undefined
      ? ''
      : sentence`${item.full} goes over depth ${figure(exactOf(least.depth))} and lighter (${citeLine(item, line)}).`;
  return {
    place: placeInBowl(bowl, (portion) => portion === shade),
    severity: least.depth - darkest.depth >= FAR + (darkest.early ? 1 : 0) ? 'fix' : 'mind',
    message: `Bowl ${bowl.name} is depth ${figure(exactOf(depth))} (${shadesText(bowl)}), over ${seen}${where}.`,
    expected: [rough, takes].filter((part) => part !== '').join(' ') || 'A toner lightens nothing (common practice).',
    todo: 'Write the stage it was lifted to before this went on, or the shade that was used; what this range does over darker hair, once on the shelf, as in `over 8` or `over 3 darker`.',
    label: `over ${seen}`,
    also: [{ place: darkest.place, says: `${placeName(darkest.zone).toLowerCase()} seen last` }],
  };
};

export default defineRule({
  name: 'toner-over-dark',
  family: 'tone',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'A toner is lighter than what was seen last at a place where it goes, by more than two depths, or than its `over` line gives; `fix` from two depths beyond that.',
  why: 'A toner lightens nothing: over hair that is too dark it does not show, and the warmth stays.',
  source: { kind: 'published', cites: 'US training page, "Underlying pigment chart", for the depth of a stage' },
  accepts: MEANT,
  check: (visit, { earlier }) => foundEach(toningsOf(visit, earlier), foundIn),
  bad: `
    product act "Activator" developer 1.9%
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    range toner "Tidewater toner" toner
      tones 1 ash, 2 violet
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 toner read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:30 A top orange
      off 14:31 A
      bowl T 20 toner 8/1 + 20 act
             ^^^^^^^^^^^^
      on 14:40 T top
      off 14:50 T`,
  good: `
    product act "Activator" developer 1.9%
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    range toner "Tidewater toner" toner
      tones 1 ash, 2 violet
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 toner read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:40 A top yellow
      off 14:41 A
      bowl T 20 toner 9/1 + 20 act
      on 14:50 T top
      off 15:00 T`,
});

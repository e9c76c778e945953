import { leftOutBy } from '../../reckon/ahead/asked-words.ts';
import { wentOn } from '../../reckon/bowl/applied.ts';
import { itemsIn } from '../../reckon/bowl/contents.ts';
import { placeOf } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import type { BowlReckoned, Portion, VisitReckoned } from '../../reckon/model.ts';
import { figure, grams } from '../../reckon/say.ts';
import type { Next } from '../../records/schema/visit.ts';
import { compare, exactOf } from '../../text/exact.ts';
import { fold } from '../../text/fold.ts';
import { defineRule, type Found } from '../rule.ts';

type Promised = { readonly from: VisitReckoned; readonly lines: readonly Next[] };

const bowlNamed = ({ bowls }: VisitReckoned, name: string): BowlReckoned | undefined =>
  bowls.find((bowl) => bowl.name === name.toUpperCase());

/** Whether two bowls hold the same things: another mix of that name promises nothing. */
const isSameMix = (a: BowlReckoned, b: BowlReckoned): boolean => {
  const [first, second] = [itemsIn(a), itemsIn(b)];
  return first.length === second.length && first.every((item) => second.includes(item));
};

function* broken({ from, lines }: Promised, visit: VisitReckoned): Generator<Found> {
  const asked = lines.flatMap((fact) => fact.changes.map((change) => ({ ...change, fact })));
  for (const { bowl: name, percent = 0, text, fact } of asked) {
    const was = name && bowlNamed(from, name.name);
    const now = name && bowlNamed(visit, name.name);
    if (!name || !was?.mixed || !now?.mixed || percent === 0 || !isSameMix(was, now)) continue;
    const moved = compare(now.mixed, was.mixed);
    if (percent < 0 ? moved <= 0 : moved >= 0) continue;
    const change = `${figure(exactOf(Math.abs(percent)))} % ${percent < 0 ? 'less' : 'more'}`;
    yield {
      place: now.place,
      message: `Bowl ${now.name} is ${grams(now.mixed)}; it was ${grams(was.mixed)}, and ${change} was promised.`,
      expected: `The visit of ${from.date} says \`next … ${text}\`.`,
      todo: 'Correct the amount, or write in a `note` why it changed.',
      label: change,
      also: [{ place: placeOf(from.visit, fact, name.at), says: 'promised here' }],
    };
  }
}

/** Shades that were to be left out of a bowl, and are in it again. */
function* mixedAgain(from: VisitReckoned, visit: VisitReckoned): Generator<Found> {
  for (const { fact, text, bowl: name, shade } of leftOutBy(from)) {
    const is = (one: Portion): boolean => one.shade !== undefined && fold(one.shade) === fold(shade);
    const portion = bowlNamed(visit, name)?.portions.find(is);
    if (portion === undefined || !bowlNamed(from, name)?.portions.some(is)) continue;
    yield {
      place: portion.place,
      message: `Bowl ${name} holds ${shade} again, which was to be left out.`,
      expected: `The visit of ${from.date} says \`next … ${text}\`.`,
      todo: 'Correct the shade, or write why it is in again: `because promise-unkept "…"`.',
      label: 'to be left out',
      also: [{ place: placeOf(from.visit, fact), says: 'noted here' }],
    };
  }
}

export default defineRule({
  name: 'promise-unkept',
  family: 'promise',
  severity: 'mind',
  bears: 'never',
  over: 'client',
  what: 'The last visit’s `next` wants a bowl smaller or larger, and the bowl went the other way; or it leaves a shade out, and the bowl holds it again.',
  why: 'The change was noted because of what came of it last time.',
  source: { kind: 'notation' },
  *check(_, visits) {
    let promised: Promised | undefined;
    for (const visit of visits) {
      if (!visit.bowls.some(wentOn)) continue;
      if (promised !== undefined) {
        yield* broken(promised, visit);
        if (promised.lines.length > 0) yield* mixedAgain(promised.from, visit);
      }
      promised = { from: visit, lines: factsOf(visit.visit, 'next') };
    }
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      bowl A 40 neon teal
      next 8w A -20%
    visit 2026-09-04 wren-abbott
      bowl A 50 neon teal
           ^^^^^^^^^^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      bowl A 40 neon teal
      next 8w A -20%
    visit 2026-09-04 wren-abbott
      bowl A 32 neon teal`,
});

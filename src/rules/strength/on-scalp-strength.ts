import type { Journal } from '../../journal/journal.ts';
import { developerStrength, inPercent, itemsIn } from '../../reckon/bowl/contents.ts';
import { citeLine, placeOf, wordsPlace } from '../../reckon/cite.ts';
import { liesOnScalp, unsaidRoots } from '../../reckon/head/on-scalp.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import type { Placing } from '../../records/schema/visit.ts';
import { compare, toNumber } from '../../text/exact.ts';
import { sentence } from '../../text/sentence.ts';
import { defineRule, type Found } from '../rule.ts';

function* found({ visit }: VisitReckoned, bowl: BowlReckoned, placing: Placing, journal: Journal): Generator<Found> {
  if (itemsIn(bowl).every(({ scalp }) => scalp === undefined)) return;
  const strength = developerStrength(bowl);
  const roots = unsaidRoots(placing, bowl);
  const place =
    roots === undefined
      ? wordsPlace(journal, placeOf(visit, placing), /\bon\p{Pd}scalp\b/iu)
      : placeOf(visit, placing, roots.at);
  for (const item of itemsIn(bowl)) {
    const { scalp } = item;
    if (scalp === undefined) continue;
    const most = scalp.upTo && inPercent(scalp.upTo);
    if (most !== undefined && (strength === undefined || compare(strength, most) <= 0)) continue;
    const takes = most === undefined ? 'is never for the scalp' : `is for the scalp up to ${figure(most)} %`;
    const has = strength === undefined ? '' : ` with ${figure(strength)} %`;
    const weaker = most === undefined ? '' : ' or the strength that was used,';
    yield {
      place,
      message:
        roots === undefined
          ? `Bowl ${bowl.name}, ${item.name}${has}, is placed on the scalp.`
          : `Bowl ${bowl.name}, ${item.name}${has}, is placed at ${roots.zone}: on the scalp, as no \`off-scalp\` stands.`,
      expected: sentence`${item.full} ${takes} (${citeLine(item, scalp)}).`,
      todo: `Write \`off-scalp 1cm\` if that is how it was placed,${weaker} or what was used instead; if it went on, why: \`because on-scalp-strength "…"\`.`,
      ...(strength !== undefined &&
        most !== undefined && { figures: { hasPercent: toNumber(strength), mostPercent: toNumber(most) } }),
      also: [{ place: placeOf(item.stood, scalp, scalp.upTo?.at), says: 'its scalp line' }],
    };
  }
}

export default defineRule({
  name: 'on-scalp-strength',
  family: 'strength',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  what: 'A bowl is placed on the scalp, or lightener on roots without `off-scalp`, that its scalp line keeps off it, at all or at this strength.',
  why: 'A product that the maker keeps off the scalp can burn it.',
  source: { kind: 'shelf', cites: 'the scalp line of what is mixed' },
  caution: 'peroxide',
  *check(visit, { journal }) {
    for (const placing of visit.visit.entry.facts) {
      if (placing.word !== 'place') continue;
      for (const bowl of visit.bowls)
        if (liesOnScalp(placing, bowl) && placing.bowls.some(({ name }) => name.toUpperCase() === bowl.name))
          yield* found(visit, bowl, placing, journal);
    }
  },
  bad: `
    product dev-9 "Cream developer" developer 9%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 60 dev-9
      place A top on-scalp
                  ^^^^^^^^`,
  good: `
    product dev-9 "Cream developer" developer 9%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 60 dev-9
      place A top off-scalp 1cm`,
});

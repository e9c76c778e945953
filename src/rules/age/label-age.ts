import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn } from '../../reckon/bowl/contents.ts';
import { zonesOfBowl } from '../../reckon/client/state.ts';
import { isAt } from '../../reckon/head/hair-meets.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { LAW } from '../../trade/law.ts';
import { EYE } from '../../trade/zones.ts';
import { defineRule, type Found, NONE } from '../rule.ts';
import { testedAt } from '../skin-tests.ts';

function* found(visit: VisitReckoned, age: number): Generator<Found> {
  const { salon } = visit;
  const { youngestSays, youngestSource } = LAW.eu;
  for (const { standing, place } of testedAt(visit)) {
    const [found] = bowlsPutOn(visit).flatMap((one) =>
      itemsIn(one).flatMap((own) => (own.name === standing.product ? [{ bowl: one, kind: String(own.kind) }] : [])),
    );
    // What a skin test comes before was put on in one of the bowls.
    const { bowl, kind } = found as NonNullable<typeof found>;
    const atEye = kind === 'brow' || zonesOfBowl(visit, bowl.name).some((zone) => isAt(zone, ...EYE));
    // A salon's own policy decides for the head, and its own rule says so.
    const decided =
      salon.under !== undefined && (!atEye || (age < salon.under.age && !salon.under.only.includes(kind)));
    if (decided) continue;
    yield {
      place,
      message: `Aged ${age}, and bowl ${bowl.name} holds ${standing.product}, an oxidative dye${atEye ? ' beside the eye' : ''}.`,
      expected: `${youngestSays.replace(/\.$/, '')} (${youngestSource}).`,
      todo: 'Write what was really used, or `declined` and why; if it went on, who agreed: `because label-age "…"`.',
      label: `aged ${age}`,
      ...(atEye && { caution: 'eyes' as const }),
    };
    return;
  }
}

export default defineRule({
  name: 'label-age',
  family: 'age',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  what: 'Oxidative dye is used on someone under the age on its label, and the salon has no `policy under` line of its own; beside the eye, whatever the policy.',
  why: 'Labels of oxidative dyes say that they are not meant for anyone under 16.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III, label warnings of the oxidative hair dyes; entry 8b for lashes',
  },
  caution: 'under-16',
  check: (visit) => (visit.age === undefined || visit.age >= LAW.eu.youngest ? NONE : found(visit, visit.age)),
  bad: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client juno-pike "Juno Pike"
      born 2012-05-20
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 juno-pike
      bowl A 30 cream 6/0 + 45 dev-6
             ^^^^^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client juno-pike "Juno Pike"
      born 2010-05-20
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 juno-pike
      bowl A 30 cream 6/0 + 45 dev-6`,
});

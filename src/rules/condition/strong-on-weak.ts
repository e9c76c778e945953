import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { basesIn, developerStrength, placeInBowl } from '../../reckon/bowl/contents.ts';
import { placeOf } from '../../reckon/cite.ts';
import { cautionsOn, holdsOfVisit, testsOfKind, zonesOfBowl } from '../../reckon/client/state.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { matchZones } from '../../reckon/zone-match.ts';
import { daysBetween } from '../../text/dates.ts';
import { compare, exact } from '../../text/exact.ts';
import { recently } from '../../text/recently.ts';
import type { Place } from '../../text/span.ts';
import { isPorous, STRONG_DEVELOPER, weakWord } from '../../trade/condition.ts';
import { CONDITION_HOLDS } from '../../trade/intervals.ts';
import { isAlong } from '../../trade/zones.ts';
import { defineRule, type Found } from '../rule.ts';

/** What calls the hair weak, and where; no zones: all of it. */
type Weak = { readonly says: string; readonly zones: readonly string[]; readonly place: Place };

const placesIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter(isAlong);

const testedWeak = ({ client, date, salon }: VisitReckoned): Weak[] => {
  const last = testsOfKind(client, salon.hours, 'porosity', date).findLast(
    ({ made }) => made !== undefined && made.date <= date && daysBetween(made.date, date) <= CONDITION_HOLDS,
  );
  return (last?.fact.result ?? []).flatMap(({ words, zones }) =>
    words.flatMap(({ word }) =>
      isPorous(word) && last !== undefined
        ? [
            {
              says: `the porosity test of ${last.made?.date} says ${word}`,
              zones: zones.map(({ zone }) => zone),
              place: last.place,
            },
          ]
        : [],
    ),
  );
};

const porousHair = recently(({ entries }: VisitReckoned['client']): readonly Weak[] =>
  entries.flatMap((stood) =>
    stood.entry.facts.flatMap((fact) =>
      fact.word !== 'hair'
        ? []
        : fact.qualities.flatMap(({ quality, words, zones }) =>
            quality.word === 'porosity' && words.some(({ word }) => isPorous(word))
              ? [
                  {
                    says: `its porosity is on file as ${words.map(({ word }) => word).join(' ')}`,
                    zones: zones.map(({ zone }) => zone),
                    place: placeOf(stood, fact, quality.at),
                  },
                ]
              : [],
          ),
    ),
  ),
);

const warned = (visit: VisitReckoned): Weak[] =>
  [
    ...cautionsOn(visit.date, visit.client),
    ...holdsOfVisit(visit).map(({ says, place }) => ({ text: says ?? '', place })),
  ]
    .filter(({ text }) => weakWord(text) !== undefined)
    .map(({ text, place }) => ({ says: `"${text}" is on file`, zones: placesIn(text), place }));

const isOn = (visit: VisitReckoned, bowl: BowlReckoned, { zones }: Weak): boolean => {
  const named = zonesOfBowl(visit, bowl.name);
  return (
    named.length === 0 ||
    zones.length === 0 ||
    zones.some((weak) => named.some((zone) => matchZones(zone, weak, visit.salon.zones) !== undefined))
  );
};

function* found(visit: VisitReckoned): Generator<Found> {
  for (const bowl of bowlsPutOn(visit)) {
    if (!basesIn(bowl).some(({ kind }) => kind === 'lightener')) continue;
    const strength = developerStrength(bowl);
    if (strength === undefined || compare(strength, exact(STRONG_DEVELOPER)) < 0) continue;
    const weak = [...testedWeak(visit), ...porousHair(visit.client), ...warned(visit)].find((one) =>
      isOn(visit, bowl, one),
    );
    if (weak === undefined) continue;
    yield {
      place: placeInBowl(bowl, ({ role }) => role === 'developer'),
      message: `Bowl ${bowl.name} lightens with ${figure(strength)} %, and ${weak.says}.`,
      expected: `Weak hair is lightened with less than ${STRONG_DEVELOPER} %, if at all (common practice).`,
      todo: 'Write the zones it really went on, or why the strength was chosen: `because strong-on-weak "…"`.',
      label: `${figure(strength)} %`,
      also: [{ place: weak.place, says: 'called weak' }],
    };
    return;
  }
}

export default defineRule({
  name: 'strong-on-weak',
  family: 'condition',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener'] },
  what: 'Lightener with 9 % or more goes on hair that a porosity test, its `hair` line, a caution or a hold calls weak.',
  why: 'Porous or gummy hair takes up more and holds less, and strong peroxide breaks it before it lightens.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check: found,
  bad: `
    product dev-9 "Cream developer" developer 9%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      hair medium, porosity high ends
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-9
                       ^^^^^^^^
      place A lengths, ends`,
  good: `
    product dev-9 "Cream developer" developer 9%
    product clay "Peregrine clay" lightener
      scalp to 9%
    client wren-abbott "Wren Abbott"
      hair medium, porosity high ends
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-9
      place A roots, hairline on-scalp`,
});

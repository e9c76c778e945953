import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { cautionsOn, isColour, leaveSince } from '../../reckon/client/state.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { daysBetween } from '../../text/dates.ts';
import type { Place } from '../../text/span.ts';
import { sameLine } from '../../text/span.ts';
import { TREATMENT_HOLDS, treatmentTold } from '../../trade/medical.ts';
import { defineRule, type Found, NONE } from '../rule.ts';
import { dayNamed, historySaid, isOnFile, notesSaid, type SaidOnFile } from '../said-on-file.ts';

type Told = SaidOnFile & { readonly says: string; readonly from: string };

const tells = (text: string): boolean => treatmentTold(text) !== undefined;

/** What is told of a treatment up to a visit and not too long before it, with the day it is of; '' where nothing tells. */
const toldAt = ({ client, date }: VisitReckoned): readonly Told[] =>
  [
    ...cautionsOn(date, client).map(({ text, place }) => ({ text, place, from: '' })),
    ...historySaid(client, date).map(({ text, place }) => ({ text, place, from: '' })),
    ...notesSaid(client, date, tells),
  ].flatMap(({ text, place, from }) => {
    const says = treatmentTold(text);
    const day = dayNamed(text) ?? from;
    const isLong = day !== '' && daysBetween(day, date) > TREATMENT_HOLDS;
    return says === undefined || day > date || isLong ? [] : [{ text, place, says, from: day }];
  });

const foundIn = (visit: VisitReckoned, { says, from, place }: Told): Found | undefined => {
  const bowl = bowlsPutOn(visit).find(isColour);
  if (bowl === undefined || leaveSince(visit.client, from, visit.date) !== undefined) return undefined;
  return {
    place: placeInBowl(bowl, () => true),
    message: `Bowl ${bowl.name} goes on, and "${says}" is on file; no letter of a doctor since.`,
    expected: 'During and after such a treatment colour waits for the leave of her doctor (common practice).',
    todo: `Write it under the client, as in \`letter ${visit.date} "Dr N: may have …"\`.`,
    label: 'leave of her doctor',
    also: [{ place, says: 'the treatment' }],
  };
};

/** One finding a line that tells it: at the first visit after it, or at the last where nothing says when it was. */
function* found(visits: readonly VisitReckoned[]): Generator<Found> {
  const byLine: { readonly line: Place; found: Found }[] = [];
  for (const visit of visits)
    for (const told of toldAt(visit)) {
      const known = byLine.find(({ line }) => sameLine(line, told.place));
      if (told.from !== '' && known !== undefined) continue;
      const one = foundIn(visit, told);
      if (one === undefined) continue;
      if (known === undefined) byLine.push({ line: told.place, found: one });
      else known.found = one;
    }
  yield* byLine.map((one) => one.found);
}

export default defineRule({
  name: 'medical-leave',
  family: 'cautions',
  severity: 'mind',
  bears: 'always',
  over: 'client',
  what: 'Colour or lightener is used where history, a caution or a note of the year before tells of chemotherapy, radiotherapy or a recent operation, and no letter of a doctor gives leave.',
  why: 'Treatment like that changes hair and skin, so that tests and old formulas no longer hold for them.',
  source: { kind: 'common practice' },
  caution: 'medical',
  check: (client, visits) => (isOnFile(client, tells) ? found(visits) : NONE),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      caution chemotherapy, last round in July
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      caution chemotherapy, last round in July
      letter 2026-08-28 "Dr N: may have colour again"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6`,
});

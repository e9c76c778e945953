import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { shadesIn, shadesText } from '../../reckon/bowl/shade-blend.ts';
import { isWrongOpposite, type Toning, toningsOf, turnsGreen } from '../../reckon/hair/toning.ts';
import { placeName } from '../../reckon/head/seen-at.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import type { Severity } from '../../text/finding.ts';
import { capital } from '../../text/fold.ts';
import { neutralisersOf } from '../../trade/neutralise.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

const GREEN = /\b(?:green\w*|khaki)\b/iu;

/** Whether the client's `avoid` lines speak of green. */
const avoidsGreen = ({ client }: VisitReckoned): boolean =>
  client.entries.some(({ entry }) =>
    entry.facts.some(
      (fact) =>
        fact.word === 'avoid' && GREEN.test([...fact.what.map(({ word }) => word), fact.says?.text ?? ''].join(' ')),
    ),
  );

type Wrong = { readonly says: string; readonly severity: Severity };

/** What is wrong with a toner over what was seen, if anything: it answers none of it, or makes green with it. */
const wrongOf = (visit: VisitReckoned, toning: Toning): Wrong | undefined => {
  if (isWrongOpposite(toning)) return { says: '', severity: 'fix' };
  const green = turnsGreen(toning);
  if (green === undefined) return undefined;
  const avoided = avoidsGreen(visit);
  // Ash over yellow is daily work: it is said where green is to be avoided, or where hardly any yellow is left.
  if (green === 'ash' && !avoided && toning.over.some(({ stage }) => stage !== 'pale-yellow')) return undefined;
  return {
    says: avoided ? ', and makes green with it, which is on the `avoid` line' : ', and makes green with it',
    severity: green === 'blue' || avoided ? 'fix' : 'mind',
  };
};

const foundIn = (visit: VisitReckoned, toning: Toning): Found | undefined => {
  const { bowl, blend, over } = toning;
  const [seen] = over;
  const wrong = wrongOf(visit, toning);
  if (seen === undefined || wrong === undefined) return undefined;
  const [shade] = shadesIn(bowl);
  const tones = listed(blend.tones.map(({ family }) => family));
  return {
    place: placeInBowl(bowl, (portion) => portion === shade),
    severity: wrong.severity,
    message: `Bowl ${bowl.name} is ${tones} (${shadesText(bowl)}), over ${seen.stage}${wrong.says}.`,
    expected: `${capital(seen.stage)} is answered by ${listed(neutralisersOf(seen.stage))} (the trade’s opposite pairs).`,
    todo: 'Write the shade that was used or the stage that was seen; if both stand, what answers it next: `next 2w …`.',
    label: `${tones} over ${seen.stage}`,
    also: [{ place: seen.place, says: `${placeName(seen.zone).toLowerCase()} seen last` }],
  };
};

export default defineRule({
  name: 'tone-wrong-opposite',
  family: 'tone',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  what: 'A cool toner goes over a stage of lift that its tone does not neutralise: violet over orange, blue over yellow; `mind` for ash over pale yellow.',
  why: 'Violet answers yellow, blue answers orange, green answers red; another tone leaves the warmth, or turns it muddy or green.',
  source: {
    kind: 'published',
    cites: 'US training page, "Underlying pigment chart"; every training page read agrees on the pairs',
  },
  check: (visit, { earlier }) => foundEach(toningsOf(visit, earlier), (toning) => foundIn(visit, toning)),
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
      bowl T 20 toner 7/2 + 20 act
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
      check 14:30 A top orange
      off 14:31 A
      bowl T 20 toner 7/1 + 20 act
      on 14:40 T top
      off 14:50 T`,
});

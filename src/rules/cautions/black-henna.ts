import type { VisitReckoned } from '../../reckon/model.ts';
import { testsFor } from '../../reckon/state.ts';
import { saysBlackHenna } from '../../trade/contraindications.ts';
import { defineRule, type Found, NONE } from '../rule.ts';
import { alertsOn, dayNamed, historySaid, isOnFile } from '../said-on-file.ts';
import { testedAt } from '../skin-tests.ts';

const found = (visit: VisitReckoned): Found | undefined => {
  const { client, date, salon } = visit;
  const [first] = testedAt(visit);
  if (first === undefined) return undefined;
  const said = [...alertsOn(date, client), ...historySaid(client, date)].find(({ text }) => saysBlackHenna(text));
  if (said === undefined) return undefined;
  // A tattoo without a date came before any test that is on file.
  const since = dayNamed(said.text) ?? '';
  const clear = testsFor(client, salon.hours, date).findLast(({ kind, result, made, read }) => {
    const known = read ?? made;
    return kind === 'skin' && result === 'clear' && made !== undefined && made.date >= since && known !== undefined;
  });
  return {
    place: first.place,
    severity: clear === undefined ? 'stop' : 'mind',
    message:
      clear === undefined
        ? `${first.standing.product} is used, "${said.text}" is on file, and no clear skin test was made since.`
        : `${first.standing.product} is used, and "${said.text}" is on file; a skin test made since was clear.`,
    expected:
      'Labels of oxidative dyes name a reaction to a black henna tattoo as a reason not to colour (Regulation (EC) 1223/2009, Annex III).',
    todo:
      clear === undefined
        ? 'Write the skin test that was made since or what was really used; if it went on, why: `because black-henna "…"`.'
        : 'Nothing, if medical advice was taken where it was needed.',
    label: 'oxidative dye',
    also: [{ place: said.place, says: 'black henna' }],
  };
};

function* foundIn(visits: readonly VisitReckoned[]): Generator<Found> {
  let minded = false;
  for (const visit of visits) {
    const one = found(visit);
    if (one === undefined || (minded && one.severity === 'mind')) continue;
    minded ||= one.severity === 'mind';
    yield one;
  }
}

export default defineRule({
  name: 'black-henna',
  family: 'cautions',
  severity: 'stop',
  bears: 'always',
  over: 'client',
  what: 'Oxidative dye is used where black henna is on file, with no clear skin test made since; `mind`, once, with one.',
  why: 'Black henna tattoos often hold the dyes of permanent colour, so many who had one react to hair dye.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III, label warnings of the oxidative hair dyes',
  },
  caution: 'reaction',
  check: (client, visits) => (isOnFile(client, saysBlackHenna) ? foundIn(visits) : NONE),
  bad: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-07-01 11:00 cream read 2026-07-03 11:30 clear
      caution black henna tattoo 2026-08, itched
    visit 2026-09-04 wren-abbott
      bowl A 40 cream 6/0 + 60 dev-6
             ^^^^^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-07-01 11:00 cream read 2026-07-03 11:30 clear
      caution never had black henna or another tattoo
    visit 2026-09-04 wren-abbott
      bowl A 40 cream 6/0 + 60 dev-6`,
});

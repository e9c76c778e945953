import { leaveSince } from '../../reckon/client/state.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { saysBlackHenna } from '../../trade/contraindications.ts';
import { defineRule, type Found, NONE } from '../rule.ts';
import { alertsOn, dayNamed, historySaid, isOnFile, notesSaid } from '../said-on-file.ts';
import { testedAt } from '../skin-tests.ts';

const foundIn = (visit: VisitReckoned): readonly Found[] => {
  const { client, date } = visit;
  const first = testedAt(visit).find(({ clear }) => !clear);
  if (first === undefined) return NONE;
  const said = [
    ...alertsOn(date, client),
    ...historySaid(client, date),
    ...notesSaid(client, date, saysBlackHenna),
  ].find(({ text }) => saysBlackHenna(text));
  // A tattoo without a date came before any letter that is on file.
  if (said === undefined || leaveSince(client, dayNamed(said.text) ?? '', date) !== undefined) return NONE;
  return [
    {
      place: first.place,
      message: `${first.standing.product} is used, "${said.text}" is on file, and no letter of a doctor since.`,
      expected:
        'Labels of oxidative dyes name a reaction to a black henna tattoo as a reason not to colour (Regulation (EC) 1223/2009, Annex III); a clear test can be false (SCCP/1104/07).',
      todo: `Write what her doctor says under the client, as in \`letter ${date} "Dr N: may have …"\`; if it went on without, why: \`because black-henna "…"\`.`,
      label: 'oxidative dye',
      also: [{ place: said.place, says: 'black henna' }],
    },
  ];
};

export default defineRule({
  name: 'black-henna',
  family: 'cautions',
  severity: 'stop',
  bears: 'always',
  over: 'visit',
  what: 'Oxidative dye is used where black henna is on file, and no letter of a doctor lifts it; a clear skin test does not.',
  why: 'Black henna tattoos often hold the dyes of permanent colour, so many who had one react to hair dye.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III, label warnings of the oxidative hair dyes',
  },
  caution: 'reaction',
  check: (visit) => (isOnFile(visit.client, saysBlackHenna) ? foundIn(visit) : NONE),
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

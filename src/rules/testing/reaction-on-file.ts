import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { holdsDye, isLightening, isOxidative, leaveSince, reactionsOf } from '../../reckon/client/state.ts';
import type { BowlReckoned, Reacted, VisitReckoned } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import type { Place } from '../../text/span.ts';
import { reactionTold } from '../../trade/reaction-words.ts';
import { defineRule, type Found, NONE } from '../rule.ts';
import { testedAt } from '../skin-tests.ts';

/** A reaction on file, from a visit or a skin test. */
type OnFile = {
  readonly date: string;
  /** `A reaction (temple burning) with bowl A of 2026-03-04` */
  readonly says: string;
  readonly bySkinTest: boolean;
  readonly place: Place;
};

const tellOf = ({ words, says }: Reacted): string => [...words, says ?? ''].join(' ').trim();

const reactedText = (reaction: Reacted): string => {
  const { words, bowls, date } = reaction;
  const what = words.length === 0 ? '' : ` (${words.join(' ')})`;
  const which = bowls.length === 0 ? '' : ` with bowl${bowls.length === 1 ? '' : 's'} ${listed(bowls)}`;
  return `A reaction${what}${which} of ${date}`;
};

const ofVisit = (reaction: Reacted): OnFile => ({
  date: reaction.date,
  says: reactedText(reaction),
  bySkinTest: false,
  place: reaction.place,
});

/** What dye did, or can have done, before a visit, oldest first; what a letter lifted is left out. */
const ofDye = ({ client, salon, date, reacted }: VisitReckoned): OnFile[] => {
  const positives = reactionsOf(client, [], salon.hours, date)
    .filter(({ by }) => by === 'skin-test')
    .map(
      (test): OnFile => ({
        date: test.date,
        says: `A positive skin test of ${test.date}`,
        bySkinTest: true,
        place: test.place,
      }),
    );
  return [...reacted.filter(({ dye }) => dye).map(ofVisit), ...positives]
    .filter((one) => one.date < date && leaveSince(client, one.date, date) === undefined)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
};

const dyeFound = (visit: VisitReckoned, bowl: BowlReckoned, last: OnFile): Found | undefined => {
  // A positive test of what is put on is found as such.
  if (last.bySkinTest && testedAt(visit).some(({ standing }) => standing.status === 'positive')) return undefined;
  return {
    place: placeInBowl(bowl, () => true),
    message: `${last.says} is on file, and no letter that lifts it; bowl ${bowl.name} holds oxidative dye.`,
    expected:
      'Labels of oxidative dyes name any earlier reaction as a reason not to colour (Regulation (EC) 1223/2009, Annex III); a clear test can be false (SCCP/1104/07).',
    todo: `Write what her doctor says under the client, as in \`letter ${visit.date} "Dr N: may have …"\`; if it went on without, why: \`because reaction-on-file "…"\`.`,
    also: [{ place: last.place, says: 'the reaction' }],
  };
};

/** Lightener after a reaction that lightener can have caused; how grave by how it is told, and less once it went well since. */
const lightenerAgain = (
  visit: VisitReckoned,
  bowl: BowlReckoned,
  last: Reacted,
  wentWell: boolean,
): readonly Found[] => {
  const told = reactionTold(tellOf(last));
  if (leaveSince(visit.client, last.date, visit.date) !== undefined) return NONE;
  if (wentWell && told !== 'grave') return NONE;
  const severity = wentWell || told === 'mild' ? 'mind' : told === 'grave' ? 'stop' : 'fix';
  return [
    {
      place: placeInBowl(bowl, () => true),
      severity,
      message: `${reactedText(last)} is on file; bowl ${bowl.name} holds lightener again.`,
      expected: wentWell
        ? 'Lightener went on since without a reaction noted.'
        : 'What burned or itched under lightener can do so again (common practice).',
      todo: 'Write what was changed and why it went on: `because reaction-on-file "…"`.',
      caution: 'lightener',
      also: [{ place: last.place, says: 'the reaction' }],
    },
  ];
};

const lightenerFound = (visit: VisitReckoned, bowl: BowlReckoned, lightened: string): readonly Found[] => {
  const under = visit.reacted.findLast(({ lightener, date }) => lightener && date < visit.date);
  return under === undefined ? NONE : lightenerAgain(visit, bowl, under, lightened > under.date);
};

function* foundIn(visits: readonly VisitReckoned[]): Generator<Found> {
  /** The last day that lightener went on. */
  let lightened = '';
  for (const visit of visits) {
    const bowls = bowlsPutOn(visit);
    const dye = bowls.find((bowl) => isOxidative(bowl) && holdsDye(bowl));
    const lightener = bowls.find((bowl) => isLightening(bowl) && !holdsDye(bowl));
    const last = dye === undefined ? undefined : ofDye(visit).at(-1);
    const found = dye === undefined || last === undefined ? undefined : dyeFound(visit, dye, last);
    if (found !== undefined) yield found;
    else if (lightener !== undefined) yield* lightenerFound(visit, lightener, lightened);
    if (lightener !== undefined) lightened = visit.date;
  }
}

export default defineRule({
  name: 'reaction-on-file',
  family: 'testing',
  severity: 'stop',
  bears: 'that-day',
  over: 'client',
  what: 'Oxidative dye is used after a reaction that dye can have caused, or a positive test, and no letter lifts it; lightener after a reaction under lightener, by how it is told.',
  why: 'A later reaction can be worse than the one before.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III, label warnings of the oxidative hair dyes',
  },
  caution: 'reaction',
  *check(client, visits) {
    const [first] = visits;
    const reactions = first === undefined ? [] : reactionsOf(client, client.visits, first.salon.hours);
    if (reactions.length > 0) yield* foundIn(visits);
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-03-04 wren-abbott
      reaction temple burning
    visit 2026-09-04 wren-abbott
      bowl A 40 cream 6/0 + 60 dev-6
             ^^^^^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      letter 2026-04-10 "Dr N: may have hair colour again"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-03-04 wren-abbott
      reaction temple burning
    visit 2026-09-04 wren-abbott
      bowl A 40 cream 6/0 + 60 dev-6`,
});

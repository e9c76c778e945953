import { cautionIn } from '../../reckon/bowl/caution-in.ts';
import { placeOf } from '../../reckon/cite.ts';
import { minuteIn } from '../../reckon/clock/lines.ts';
import { pastMidnight } from '../../reckon/clock/settle.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { mayMeet } from '../../reckon/head/hair-meets.ts';
import type { FactsOf, Minute, Run, VisitReckoned } from '../../reckon/model.ts';
import { runText } from '../../reckon/timing/timed-runs.ts';
import { clockText } from '../../text/dates.ts';
import { defineRule, type Found, foundEach, NONE } from '../rule.ts';

type Reaction = FactsOf<'reaction'>;

/** Minutes in which what hurts can be off again: common practice, no source. A hedged time gets as many more. */
const AT_ONCE = 5;

/** What lightener often does for a while, and what is no more than that: common practice, no source. */
const MILD = /\b(?:tingl\p{L}*|warm\p{L}*|prickl\p{L}*)\b/iu;
const GRAVE =
  /\b(?:burn\p{L}*|sting\p{L}*|stung|sore|pain\p{L}*|hurt\p{L}*|blister\p{L}*|swoll\p{L}*|swell\p{L}*|red|redness|rash|hives|weep\p{L}*|cry\p{L}*|hot)\b/iu;

/** `reaction none`, `reaction "no redness"`: a look that found nothing. */
const NOTHING = /^(?:none|nil|nothing|no\s(?!longer\b)\p{L}+(?:\s\p{L}+)?)\.?$/iu;

const wordsOf = ({ words, says }: Reaction): string =>
  [...words.map(({ word }) => word), says?.text ?? ''].join(' ').trim();

/** The runs that a line of a bowl, a place, both or neither can speak of. */
const runsOf = (
  { clock: { runs }, salon }: VisitReckoned,
  { bowls, zones }: Pick<Reaction, 'bowls' | 'zones'>,
): readonly Run[] => {
  const ofBowl = runs.filter(
    ({ bowl }) => bowls.length === 0 || bowls.some(({ name }) => name.toUpperCase() === bowl?.toUpperCase()),
  );
  const there = ofBowl.filter((run) => zones.some(({ zone }) => mayMeet(zone, run.zone, salon.zones)));
  // A bowl that is named is meant, though it stings beside the place it was put on.
  return zones.length === 0 || (bowls.length > 0 && there.length === 0) ? ofBowl : there;
};

type Timed = { readonly minute: Minute; readonly about: boolean };

/** The minute of a line of the visit; undefined without a time, and while two bowls could be counted from. */
const timeOf = (visit: VisitReckoned, time: Reaction['time'], runs: readonly Run[]): Timed | undefined => {
  const about = time?.about === true;
  if (time?.after !== undefined) {
    const [first, ...more] = runs;
    if (first === undefined || more.some(({ bowl }) => bowl !== first.bowl)) return undefined;
    return { minute: Math.min(...runs.map(({ firstOn }) => firstOn)) + time.after, about };
  }
  const minute = time && minuteIn(visit.visit, time, visit.salon.hours);
  const begins = Math.min(...visit.clock.runs.map(({ firstOn }) => firstOn));
  return minute === undefined ? undefined : { minute: pastMidnight(minute, begins), about };
};

/** Whether a line says that something was rinsed off or stopped in time. */
const isRinsed = (visit: VisitReckoned, fact: Reaction, from: Minute, until: Minute): boolean =>
  visit.visit.entry.facts.some((other) => {
    if (other.word !== 'rinse' && other.word !== 'wash' && other.word !== 'stopped') return false;
    const time = other.word === 'stopped' ? other.time : other.period?.from;
    const at = timeOf(visit, time, runsOf(visit, other.bowls.length > 0 ? other : fact))?.minute;
    return at !== undefined && at >= from && at <= until;
  });

/** What is still on comes before what came off first. */
const urgency = ({ off }: Run): number => off ?? Number.NEGATIVE_INFINITY;

const foundOf = (visit: VisitReckoned, fact: Reaction): Found | undefined => {
  const meant = runsOf(visit, fact);
  const time = timeOf(visit, fact.time, meant);
  const words = wordsOf(fact);
  if (time === undefined || NOTHING.test(words)) return undefined;
  const { minute, about } = time;
  const until = minute + (about ? 2 * AT_ONCE : AT_ONCE);
  const on = meant.filter(({ firstOn, off }) => firstOn <= minute && (off === undefined || off > minute));
  const [first, ...more] = on;
  // Where some of it came off in time, the hand knew which part hurt.
  if (first === undefined || on.some(({ off }) => off !== undefined && off <= until)) return undefined;
  if (isRinsed(visit, fact, minute, until)) return undefined;
  const run = more.reduce((known, one) => (urgency(one) < urgency(known) ? one : known), first);
  const { off } = run;
  const at = clockText(minute);
  const bowl = visit.bowls.find(({ name }) => name === run.bowl);
  const rinse = run.bowl === undefined ? `rinse ${at}` : `rinse ${at} ${run.bowl}`;
  const mild = MILD.test(words) && !GRAVE.test(words);
  return {
    place: placeOf(visit.visit, fact, fact.time?.at),
    ...(mild && { severity: 'mind' as const }),
    message:
      off === undefined
        ? `Reaction at ${at} while ${runText(run).replace(/^B/u, 'b')} was on, and nothing says that it came off.`
        : `Reaction at ${at}; ${runText(run).replace(/^B/u, 'b')} came off at ${clockText(off)}, ${off - minute} min later.`,
    expected: 'What burns, stings or swells is rinsed off at once (common practice; the maker’s leaflet comes first).',
    todo: `Write when it came off or was rinsed, as in \`${rinse}\`; if it stayed on, why: \`because reaction-left-on "…"\`.`,
    label: off === undefined ? 'still on' : `on for ${off - minute} min more`,
    caution: bowl === undefined ? false : cautionIn(bowl, 'lightener', 'peroxide', 'reaction'),
    also: [{ place: run.offPlace ?? run.onPlace, says: off === undefined ? 'went on' : 'came off' }],
  };
};

export default defineRule({
  name: 'reaction-left-on',
  family: 'time',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['reaction'] },
  what: 'A reaction is noted while something is on there, and it came off more than five minutes later, or nothing says that it did; `mind` where it only tingled or was warm.',
  why: 'What burns or swells goes on doing so until it is rinsed off, and the skin under it with it.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check: (visit) =>
    visit.clock.runs.length === 0 ? NONE : foundEach(factsOf(visit.visit, 'reaction'), (fact) => foundOf(visit, fact)),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:10 A orange
      reaction 14:18 A top burning
               ^^^^^
      check 14:20 A gold
      check 14:30 A yellow
      off 14:40 A`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:10 A orange
      reaction 14:18 A top burning
      off 14:20 A`,
});

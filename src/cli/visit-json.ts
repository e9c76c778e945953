import type { Journal } from '../journal/journal.ts';
import { rowOf } from '../journal/where.ts';
import type { MoneyReckoned, Run, Unclocked, VisitReckoned } from '../reckon/model.ts';
import { bowlJson } from './bowl-json.ts';
import { figureJson, plainJson } from './plain-json.ts';
import { timeText } from './today.ts';

const runJson = (run: Run): object => ({
  bowl: run.bowl,
  zone: run.zone,
  firstOn: timeText(run.firstOn),
  allOn: timeText(run.allOn),
  off: run.off === undefined ? undefined : timeText(run.off),
  minutesFromFirstOn: run.fromFirst,
  minutesFromAllOn: run.fromAll,
  minutesTold: run.told,
  sections: run.sections && {
    firstOff: timeText(run.sections.firstOff),
    leastMinutes: run.sections.least,
    mostMinutes: run.sections.most,
    untold: run.sections.untold,
  },
  partsOff: run.partsOff?.map(({ minute, sections, placed }) => ({ off: timeText(minute), sections, placed })),
  heatMinutes: run.heat,
  checks: run.checks.map(({ at }) => (at === undefined ? null : timeText(at))),
  about: run.about,
});

/** Minutes as typed: a time of day is not made up for them. */
const unclockedJson = ({ bowl, zone, minutes, last, about }: Unclocked): object => ({
  bowl,
  zone,
  minutes: minutes?.least,
  minutesTo: minutes === undefined || minutes.most === minutes.least ? undefined : minutes.most,
  last,
  about,
});

const moneyJson = ({ items, claim, ...money }: MoneyReckoned): object => ({
  ...money,
  items: items.map(({ item, amount }) => ({ item, amount })),
  claim: claim?.amount,
});

/**
 * A visit as worked out, as plain JSON. Money is in the currency's minor units, growth in millimetres; exact numbers
 * stand as `{ value, exact }`, rounded to three decimals and as a fraction. What is not known is left out.
 */
export const visitJson = (journal: Journal, { visit, ...reckoned }: VisitReckoned): object => ({
  path: visit.file,
  line: rowOf(journal, { in: visit, line: 0 }) + 1,
  date: reckoned.date,
  time: visit.entry.time?.minutes === undefined ? undefined : timeText(visit.entry.time.minutes),
  by: visit.entry.by?.name,
  age: reckoned.age,
  bowls: reckoned.bowls.map(bowlJson),
  runs: reckoned.clock.runs.map(runJson),
  withoutClock: reckoned.clock.unclocked.map(unclockedJson),
  minutes: reckoned.clock.span,
  money: moneyJson(reckoned.money),
  uses: plainJson(reckoned.uses),
  daysSinceColour: reckoned.daysSinceColour,
  daysSinceRoots: reckoned.daysSinceRoots,
  growth: {
    expected: figureJson(reckoned.growth.expected),
    rate: figureJson(reckoned.growth.rate),
    own: reckoned.growth.own,
    measured: figureJson(reckoned.growth.measured),
  },
});

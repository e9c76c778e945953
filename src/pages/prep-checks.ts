import { basesIn } from '../reckon/bowl/contents.ts';
import { zonesOfBowl } from '../reckon/head/services.ts';
import { lighteningOf } from '../reckon/lift/lightener.ts';
import { type PaceAsk, paceFor } from '../reckon/lift/pace.ts';
import { sayPace } from '../reckon/lift/say-pace.ts';
import type { LiftSeries } from '../reckon/lift/series.ts';
import { liftOf } from '../reckon/lift/series.ts';
import type { BowlReckoned, Run, VisitReckoned } from '../reckon/model.ts';
import { minutesOf, timeLineOf } from '../reckon/timing/time-line.ts';
import { bowlOf } from '../reckon/timing/timed-runs.ts';
import { kindFacts } from '../trade/kinds.ts';
import { escapeText } from './escape.ts';
import { FILL_IN_HEADING } from './headings.ts';
import { commas } from './noted.ts';
import { lookEvery, runName } from './shelf-times.ts';
import { type Column, table } from './tables.ts';

/** What to look at and when: how fast this head lifts, what the shelf says, and a clock to fill in by hand. */

/** The stage that a bowl was taken to the last time, to aim at again; pale yellow where none was seen. */
const stageOf = (series: readonly LiftSeries[]): string => {
  const last = series.flatMap(({ looks }) => looks.at(-1)?.seen.stage ?? []).at(-1);
  return last?.to ?? last?.stage ?? 'yellow';
};

/**
 * One item for every lightener and strength that was in a bowl: how long to reckon with, by the lift of all visits of the
 * journal before the day.
 */
export const paceItems = (visit: VisitReckoned, salonLift: readonly LiftSeries[], on: string): string[] => {
  const own = liftOf(visit);
  const said = new Map<string, string>();
  for (const bowl of visit.bowls) {
    const lightening = lighteningOf(bowl);
    const series = own.filter((one) => one.bowl === bowl.name);
    if (lightening === undefined || (lightening.product.kind !== 'lightener' && series.length === 0)) continue;
    const ask: PaceAsk = {
      client: visit.client.name,
      ...lightening,
      stage: stageOf(series),
      before: on,
    };
    const sentence = sayPace(ask, paceFor(salonLift, ask));
    const key = `${lightening.product.name} ${lightening.strength} ${ask.stage}`;
    if (!said.has(key))
      said.set(
        key,
        `- **Pace ${escapeText(bowl.name)}, ${escapeText(lightening.product.name)}** ${escapeText(sentence)}`,
      );
  }
  return [...said.values()];
};

/** `20–50 min, look every 10`, by the shelf's line for the run the last time. */
const shelfText = (visit: VisitReckoned, earlier: readonly VisitReckoned[], run: Run): string => {
  const bowl = bowlOf(visit, run);
  if (bowl === undefined) return '';
  const lines = basesIn(bowl).flatMap((item) => {
    const line = timeLineOf(item, { visit, earlier, bowl, run });
    if (line === undefined) return [];
    const { near, far } = minutesOf(line.minutes);
    const from = line.from ?? (item.kind === undefined ? 'all-on' : kindFacts(item.kind).timeFrom);
    return [`${near === far ? near : `${near}–${far}`} min from ${from.replace('-', ' ')}`];
  });
  return [...new Set(lines)].join('; ');
};

const lastText = ({ fromFirst, fromAll, spanned }: Run): string =>
  commas([fromFirst !== undefined && `${fromFirst} min`, spanned && fromAll !== undefined && `${fromAll} from all on`]);

const COLUMNS: readonly Column[] = [
  { head: 'Bowl and place' },
  { head: 'Shelf' },
  { head: 'Last time' },
  { head: 'On' },
  { head: 'Looks, minutes and what is seen' },
  { head: 'Off' },
];

/** Most looks to leave room for in one row. */
const MOST_LOOKS = 5;

/** Room for a time to be written by hand. */
const TIME = '\\_\\_:\\_\\_';
const SPACE = '\\_\\_\\_\\_\\_\\_';

/** Room for a look after every so many minutes of the time that the run took the last time. */
const looksCell = (minutes: number | undefined, every: number | undefined): string => {
  if (every === undefined) return SPACE;
  const count = Math.min(MOST_LOOKS, Math.max(1, Math.ceil((minutes ?? every) / every)));
  return Array.from({ length: count }, (_, index) => `+${(index + 1) * every} ${SPACE}`).join(' ');
};

/** A visit, the client's visits before it, oldest first, and its bowls that are not asked for. */
type Dated = {
  readonly visit: VisitReckoned;
  readonly earlier: readonly VisitReckoned[];
  readonly others: ReadonlySet<string>;
};

/** The looks of the runs of a visit as rows to fill in; none without a clock. */
const clockRows = ({ visit, earlier, others }: Dated): string[][] =>
  visit.clock.runs
    .filter(({ bowl }) => bowl === undefined || !others.has(bowl))
    .map((run) => [
      runName(run) || 'all of it',
      shelfText(visit, earlier, run),
      lastText(run),
      run.spanned ? `${TIME}–${TIME}` : TIME,
      looksCell(run.fromFirst, lookEvery(visit, earlier, run)),
      TIME,
    ]);

const fillIn = (rows: readonly string[][]): string[] =>
  rows.length === 0 ? [] : [`## ${FILL_IN_HEADING}`, table(COLUMNS, rows)];

/** The clock to fill in, as blocks of Markdown with their heading; none where no clock was noted. */
export const fillInBlocks = (all: readonly Dated[]): string[] => fillIn(all.flatMap(clockRows));

/** A run that has not begun: of a bowl at a place that its notes name. */
const runAhead = (bowl: BowlReckoned, zone: string): Run => ({
  bowl: bowl.name,
  zone,
  firstOn: LAST_MINUTE,
  allOn: LAST_MINUTE,
  spanned: true,
  off: undefined,
  fromFirst: undefined,
  fromAll: undefined,
  told: undefined,
  sections: undefined,
  meant: undefined,
  heat: 0,
  checks: [],
  onPlace: bowl.place,
  offPlace: undefined,
  about: false,
});

/** After everything else of the day. */
const LAST_MINUTE = 2 * 1440;

/** Minutes to leave room for looks in, while no last time says how long: a choice. */
const LOOKED_AT_FOR = 40;

/** The clock of the day's own bowls, to fill in: a row a bowl and place that is not on yet. */
export const ownClockBlocks = (today: VisitReckoned, earlier: readonly VisitReckoned[]): string[] => {
  const begun = new Set(today.clock.runs.map(({ bowl }) => bowl));
  const rows = today.bowls
    .filter(({ name }) => !begun.has(name))
    .flatMap((bowl) => {
      const zones = zonesOfBowl(today, bowl.name);
      return (zones.length === 0 ? [''] : zones).map((zone) => runAhead(bowl, zone));
    })
    .map((run) => [
      runName(run),
      shelfText(today, earlier, run),
      '',
      `${TIME}–${TIME}`,
      looksCell(LOOKED_AT_FOR, lookEvery(today, earlier, run)),
      TIME,
    ]);
  return fillIn(rows);
};

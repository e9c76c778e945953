import { addDays, clockText } from '../../src/text/dates.ts';
import { stageDepth } from '../../src/trade/stages.ts';
import { chanceOf } from './chance.ts';

/** Heads whose true pace is known, and the journal that a colourist with a watch would have kept of them. */
export type Simulated = {
  readonly text: string;
  /** Minutes to yellow that each head takes on the whole, visits apart. */
  readonly heads: ReadonlyMap<string, number>;
  /** Minutes to yellow that each visit really took, by `client date`. */
  readonly visits: ReadonlyMap<string, number>;
};

export type PaceWorld = {
  readonly seed: number;
  readonly heads: number;
  readonly visitsEach: number;
  /** Standard deviations of the logarithm of a pace: between heads, between visits of a head, and its walk over visits. */
  readonly spread: number;
  readonly noise: number;
  readonly walk: number;
  /** Minutes after which she takes it off whatever is seen; never by the clock while undefined. */
  readonly offBy?: number;
};

/** Minutes to a depth at a pace of 1. */
const COURSE: readonly (readonly [depth: number, minutes: number])[] = [
  [2, 0],
  [3, 6],
  [4, 11],
  [5, 17],
  [7, 26],
  [9, 37],
  [10, 52],
  [10, 500],
];

const YELLOW = 37;

const depthAfter = (minutes: number): number => {
  const next = COURSE.findIndex(([, at]) => at > minutes);
  const [before, after] = [COURSE[next - 1], COURSE[next]];
  if (before === undefined || after === undefined) return 2;
  return before[0] + ((after[0] - before[0]) * (minutes - before[1])) / (after[1] - before[1]);
};

/** Minutes to a stage of a head that takes so many to yellow. */
export const minutesAtPace = (stage: string, toYellow: number): number => {
  const depth = stageDepth(stage) ?? 0;
  const next = COURSE.findIndex(([at]) => at >= depth);
  const [before, after] = [COURSE[next - 1], COURSE[next]];
  if (before === undefined || after === undefined) return 0;
  const minutes = before[1] + ((after[1] - before[1]) * (depth - before[0])) / (after[0] - before[0]);
  return (minutes * toYellow) / YELLOW;
};

/** The stages and half steps of the notation, from red on. */
const SEEN = ['red', 'red-orange', 'orange', 'orange-gold', 'gold', 'gold-yellow', 'yellow', 'pale-yellow'].map(
  (stage) => ({ stage, depth: stageDepth(stage) ?? 0 }),
);

/** The stage or half step nearest to what the hair is. */
const seenAs = (depth: number): string =>
  SEEN.reduce((nearest, one) => (Math.abs(one.depth - depth) < Math.abs(nearest.depth - depth) ? one : nearest)).stage;

const SHELF = `salon harbour "Harbour Row"
  hours 9:00-19:00
product clay "Peregrine clay" lightener
  mix 1:2
  time 20-50 min from first-on, check every 10 min
product dev-6 "Cream developer" developer 6%
`;

/** She looks about every ten minutes at first and every five once it is gold, and takes it off when it is yellow. */
const visitText = (client: string, date: string, pace: number, even: () => number, offBy: number): string => {
  const on = 10 * 60 + Math.floor(even() * 30);
  const lines = [`visit ${date} 10:00 ${client}`, '  bowl A 30 clay + 60 dev-6', `  on ${clockText(on)} A top`];
  let minute = 8 + Math.floor(even() * 5);
  for (;;) {
    const seen = seenAs(depthAfter(minute / pace));
    lines.push(`  check ${clockText(on + minute)} A top ${seen}`);
    if (seen === 'yellow' || seen === 'pale-yellow' || minute >= offBy) break;
    minute += seen === 'gold' || seen === 'gold-yellow' ? 4 + Math.floor(even() * 3) : 8 + Math.floor(even() * 5);
    minute = Math.min(minute, offBy);
  }
  return [...lines, `  off ${clockText(on + minute)} A top`].join('\n');
};

/** A salon of heads with one lightener, and what is true of them. */
export const simulatePace = ({ seed, heads, visitsEach, spread, noise, walk, offBy = 100 }: PaceWorld): Simulated => {
  const { even, normal } = chanceOf(seed);
  const notes: string[] = [];
  const ofHeads = new Map<string, number>();
  const ofVisits = new Map<string, number>();
  for (let head = 0; head < heads; head++) {
    const client = `head-${String(head).padStart(3, '0')}`;
    const own = spread * normal();
    ofHeads.set(client, YELLOW * Math.exp(own));
    let walked = own;
    let date = addDays('2024-01-08', Math.floor(even() * 60));
    for (let visit = 0; visit < visitsEach; visit++) {
      const pace = Math.exp(walked + noise * normal());
      notes.push(visitText(client, date, pace, even, offBy));
      ofVisits.set(`${client} ${date}`, YELLOW * pace);
      walked += walk * normal();
      date = addDays(date, 42 + Math.floor(even() * 28));
    }
  }
  return { text: `${SHELF}${notes.join('\n')}\n`, heads: ofHeads, visits: ofVisits };
};

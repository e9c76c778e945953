import { basesIn } from '../reckon/bowl/contents.ts';
import { nextLook, type SideSpread, sidesOf } from '../reckon/clock/sides.ts';
import type { Run, VisitReckoned } from '../reckon/model.ts';
import { minutesOf, timeLineOf, timeText } from '../reckon/timing/time-line.ts';
import { bowlOf, type TimedRun, timedRuns } from '../reckon/timing/timed-runs.ts';
import { clockText } from '../text/dates.ts';
import { escapeText } from './escape.ts';
import { commas, joined } from './noted.ts';
import { counted } from './say-numbers.ts';

/** The clock of a visit held against the shelf and against itself: times taken, sides apart, the next look due. */

export const runName = ({ bowl, zone }: Pick<Run, 'bowl' | 'zone'>): string =>
  joined([bowl && escapeText(bowl), escapeText(zone)], ' ');

const against = ({ run, minutes, whole, near, far }: TimedRun): string => {
  // Colour that went on in sections is done too late by the last of them.
  const over = whole > far ? `${whole - far} past` : minutes < near && `${near - minutes} short`;
  const sections = 'sections' in run ? run.sections : undefined;
  const shown = sections === undefined ? `${minutes} min` : sectionMinutes(sections);
  return `${runName(run)} ${shown}${over === false ? '' : ` (${over})`}`;
};

/** `44 to 54 min`: of the section that was on shortest and of the one longest; `48 min or more` where that is not told. */
export const sectionMinutes = ({ least, most, untold }: NonNullable<Run['sections']>): string => {
  if (untold) return `${counted(most, 'min')} or more`;
  return least === most ? counted(most, 'min') : `${least} to ${most} min`;
};

/** One item a time line of the shelf: what it says, and how long each bowl and place was on. */
const timeItems = (timed: readonly TimedRun[]): string[] => {
  const byLine = new Map<string, TimedRun[]>();
  for (const one of timed) {
    const says = `${escapeText(one.item.full)} ${timeText(one.line, one.from)}`;
    byLine.set(says, [...(byLine.get(says) ?? []), one]);
  }
  return [...byLine].map(([says, some]) => `- **Shelf time** ${says}: ${some.map(against).join(', ')}`);
};

const sideText = ({ bowl, zone, left, right, on, longer }: SideSpread): string => {
  const apart =
    on === 0
      ? `both on at ${clockText(left.firstOn)}`
      : `left on at ${clockText(left.firstOn)}, right at ${clockText(right.firstOn)}`;
  const spread =
    longer === undefined
      ? undefined
      : longer === 0
        ? `both on for ${counted(left.fromFirst ?? 0, 'min')}`
        : `the ${longer > 0 ? 'right' : 'left'} on for ${counted(Math.abs(longer), 'min')} longer`;
  return commas([joined([bowl && escapeText(bowl), escapeText(zone)], ' ') || undefined, apart, spread]);
};

/** When what is still on is looked at next: by what is in the bowl, as often as its time line asks. */
const lookItems = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): string[] =>
  visit.clock.runs.flatMap((run) => {
    const bowl = bowlOf(visit, run);
    const every = bowl && lookEvery(visit, earlier, run);
    const at = every === undefined ? undefined : nextLook(run, every);
    return at === undefined
      ? []
      : [`- **Next look** ${runName(run)} at ${clockText(at)}, every ${every} min by the shelf`];
  });

/** How often, in minutes, a run is looked at by the time lines of what is in its bowl; undefined where none says. */
export const lookEvery = (visit: VisitReckoned, earlier: readonly VisitReckoned[], run: Run): number | undefined => {
  const bowl = bowlOf(visit, run);
  if (bowl === undefined) return undefined;
  const all = basesIn(bowl).flatMap((item) => {
    const own = timeLineOf(item, { visit, earlier, bowl, run })?.checkEvery;
    const any = own ?? item.times.find(({ checkEvery }) => checkEvery !== undefined)?.checkEvery;
    return any === undefined ? [] : [minutesOf(any).near];
  });
  return all.length === 0 ? undefined : Math.min(...all);
};

/** List items beneath the times of a visit; `earlier` are the client's visits before it. */
export const shelfTimeItems = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): string[] => [
  ...timeItems(timedRuns(visit, earlier)),
  ...sidesOf(visit.clock).map((sides) => `- **Sides** ${sideText(sides)}`),
  ...lookItems(visit, earlier),
];

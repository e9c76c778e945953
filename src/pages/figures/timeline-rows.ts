import { settleClock } from '../../reckon/clock/settle.ts';
import type { Looked, Run, VisitReckoned } from '../../reckon/model.ts';
import { timedRuns } from '../../reckon/timing/timed-runs.ts';
import { clockText } from '../../text/dates.ts';
import { lookInShort } from './look-words.ts';

/** A bowl on a place as the timeline draws it; minutes of the day. */
export type TimelineRow = {
  readonly run: Run;
  /** `A hairline` */
  readonly name: string;
  /** The time line of the shelf: from its near end to its far end. */
  readonly wanted: { readonly from: number; readonly to: number } | undefined;
  readonly heat: readonly { readonly from: number; readonly to: number }[];
};

/** Something that happened to the whole head at a minute. */
export type TimelineEvent = { readonly at: number; readonly says: string };

const heatsOf = ({ visit, salon }: VisitReckoned, run: Run): TimelineRow['heat'] =>
  run.heat === 0
    ? []
    : visit.entry.facts.flatMap((fact) => {
        if (fact.word !== 'heat' || fact.period === undefined) return [];
        const names = fact.bowls.map(({ name }) => name.toUpperCase());
        if (names.length > 0 && run.bowl !== undefined && !names.includes(run.bowl)) return [];
        const from = settleClock(fact.period.from, salon.hours).minute;
        const typed = fact.period.to && settleClock(fact.period.to, salon.hours).minute;
        if (from === undefined) return [];
        const to = typed ?? from + run.heat;
        const within = { from: Math.max(from, run.firstOn), to: Math.min(to, run.off ?? to) };
        return within.to > within.from ? [within] : [];
      });

/** The rows of a visit in the order they went on; `earlier` are the client's visits before it. */
export const timelineRows = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): TimelineRow[] => {
  const timed = timedRuns(visit, earlier);
  return visit.clock.runs.map((run) => {
    const span = timed.find((one) => one.run === run);
    // Of sections that came off in order, the one that was on longest is held against the shelf.
    const from =
      run.sections !== undefined && run.off !== undefined
        ? run.off - run.sections.most
        : span?.from === 'first on'
          ? run.firstOn
          : run.allOn;
    return {
      run,
      name: [run.bowl ?? '', run.zone].filter((part) => part !== '').join(' ') || 'no bowl named',
      wanted: span && { from: from + span.near, to: from + span.far },
      heat: heatsOf(visit, run),
    };
  });
};

/** Reactions, and what was stopped early, at the times noted. */
export const timelineEvents = ({ visit, salon }: VisitReckoned): TimelineEvent[] =>
  visit.entry.facts.flatMap((fact) => {
    if ((fact.word !== 'reaction' && fact.word !== 'stopped') || fact.time === undefined) return [];
    const at = settleClock(fact.time, salon.hours).minute;
    return at === undefined ? [] : [{ at, says: fact.word === 'reaction' ? 'reaction' : 'stopped early' }];
  });

const lookText = (look: Looked): string =>
  [look.at === undefined ? '' : clockText(look.at), lookInShort(look) || 'looked at']
    .filter((part) => part !== '')
    .join(' ');

/** A row in words: `A hairline on 14:35 to 14:55; 14:45 orange; off 15:15, 40 min from first on`. */
export const rowText = ({ run, name, wanted, heat }: TimelineRow): string => {
  const on = run.spanned ? `${clockText(run.firstOn)} to ${clockText(run.allOn)}` : clockText(run.firstOn);
  const off =
    run.off === undefined
      ? run.told === undefined
        ? 'off not noted'
        : `${run.told} min as noted`
      : run.sections === undefined || run.sections.firstOff === run.off
        ? `off ${clockText(run.off)}, ${run.fromFirst ?? 0} min from first on`
        : `off ${clockText(run.sections.firstOff)} to ${clockText(run.off)} in the order they went on, ${run.sections.most} min at ${run.sections.untold ? 'least' : 'most'}`;
  const past = wanted !== undefined && run.off !== undefined ? run.off - wanted.to : 0;
  return [
    `${name} on ${on}`,
    ...run.checks.map(lookText),
    ...heat.map(({ from, to }) => `heat ${clockText(from)} to ${clockText(to)}`),
    off,
    ...(past > 0 ? [`${past} min past its time on the shelf`] : []),
  ].join('; ');
};

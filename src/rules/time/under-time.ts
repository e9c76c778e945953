import { clockText } from '../../text/dates.ts';
import { GREY_TO_BASE } from '../../trade/grey.ts';
import { citeLine, placeOf } from '../cite.ts';
import { defineRule, type Found } from '../rule.ts';
import { speaksOfRun } from '../run-events.ts';
import { isAway, seenAt } from '../seen-at.ts';
import { timeText } from '../time-line.ts';
import { endOf, ofEachBowl, runText, type TimedRun } from '../timed-runs.ts';

/** Kinds that come off by what is seen and not by the clock: what lightens or tones. */
const BY_EYE: ReadonlySet<string | undefined> = new Set(['lightener', 'toner', 'demi']);

/** Whether the eye said it was done. */
const cameOffByEye = ({ run, item }: TimedRun): boolean =>
  BY_EYE.has(item.kind) && run.checks.some(({ seen }) => seen.length > 0);

/** Whether lengths or ends are only refreshed: the bowl was on the roots before, and comes through for the last of its time. */
const isRefresh = ({ visit, run }: TimedRun): boolean =>
  isAway(run.zone) &&
  visit.clock.runs.some(
    (other) => other.bowl === run.bowl && other.zone !== '' && !isAway(other.zone) && other.allOn <= run.firstOn,
  );

const isShort = (timed: TimedRun): boolean =>
  timed.minutes < timed.near &&
  !timed.run.about &&
  timed.run.meant === undefined &&
  !cameOffByEye(timed) &&
  !isRefresh(timed) &&
  !speaksOfRun(timed.visit, timed.run);

/** Grey that is to be covered: half the hair or more, as the start of the visit gives it. */
const coversGrey = ({ visit, item }: TimedRun): boolean =>
  item.kind === 'permanent' &&
  seenAt(visit, 'start').some(({ seen: { grey } }) => grey !== undefined && (grey.to ?? grey.value) >= GREY_TO_BASE);

const found = (timed: TimedRun): Found => {
  const { run, item, line, from, off, minutes, near } = timed;
  const grey = coversGrey(timed);
  const end = clockText(off);
  const full = clockText(off + near - minutes);
  const why = `\`stopped ${end} ${run.bowl} "…"\``;
  return {
    place: endOf(run),
    severity: grey ? 'fix' : 'mind',
    message: `${runText(run)} was on for ${minutes} min from ${from}, ${near - minutes} min short${grey ? ', over grey' : ''}.`,
    expected: `${item.full} takes ${timeText(line, from)} (${citeLine(item, line)}).`,
    todo: BY_EYE.has(item.kind)
      ? `Write what was seen when it came off, as in \`check ${end} ${run.bowl} even\`, or why: ${why}.`
      : `Correct the time, as in \`off ${full} ${run.bowl}\`; if it came off then, why: ${why}.`,
    label: `${minutes} min`,
    also: [{ place: placeOf(item.stood, line, line.minutes.at), says: 'its time line' }],
  };
};

const isShorter = (timed: TimedRun, known: TimedRun): boolean => timed.minutes < known.minutes;

export default defineRule({
  name: 'under-time',
  family: 'time',
  severity: 'mind',
  over: 'client',
  what: 'Something came off before the near end of its time line, and nothing seen or noted says why; `fix` where half the hair or more is grey.',
  why: 'Colour taken off early holds badly; the next visit cannot tell whether it was meant.',
  source: { kind: 'shelf', cites: 'the time line of what was put on' },
  check: (_client, visits) => ofEachBowl(visits, isShort, isShorter).map(found),
  bad: `
    range neon "Kelp direct" semi
      mix none
      time 15-30 min from all-on
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:00-14:10 A
      off 14:20 A
          ^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      time 15-30 min from all-on
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:00-14:10 A
      off 14:30 A`,
});

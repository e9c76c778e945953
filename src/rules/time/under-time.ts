import { keptApart } from '../../reckon/bowl/kept-apart.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import { greyShare } from '../../reckon/client/state.ts';
import { isAway } from '../../reckon/head/seen-at.ts';
import { otherClockText } from '../../reckon/timing/claimed-minutes.ts';
import { speaksOfRun } from '../../reckon/timing/run-events.ts';
import { fromText, timeText } from '../../reckon/timing/time-line.ts';
import { endOf, ofEachBowl, runText, type TimedRun } from '../../reckon/timing/timed-runs.ts';
import { clockText } from '../../text/dates.ts';
import { sentence } from '../../text/sentence.ts';
import { GREY_TO_BASE } from '../../trade/grey.ts';
import { MEANT, type ReasonWords, wordsOf } from '../reason-words.ts';
import { defineRule, type Found } from '../rule.ts';

/** Kinds that come off by what is seen and not by the clock: what lightens or tones. */
const BY_EYE: ReadonlySet<string | undefined> = new Set(['lightener', 'toner', 'demi']);

/** Whether the eye said it was done. */
const cameOffByEye = ({ run, item }: TimedRun): boolean =>
  BY_EYE.has(item.kind) && run.checks.some(({ seen }) => seen.length > 0);

/** Whether lengths or ends are only refreshed: the bowl was on the roots before, and comes through for the last of its time. */
const isRefresh = ({ visit, run }: TimedRun): boolean =>
  isAway(run.zone) &&
  'firstOn' in run &&
  visit.clock.runs.some(
    (other) => other.bowl === run.bowl && other.zone !== '' && !isAway(other.zone) && other.allOn <= run.firstOn,
  );

/** Minutes that are meant beside a clock are a decision; without a clock they are how long it was on. */
const isMeant = ({ run }: TimedRun): boolean => 'firstOn' in run && run.meant !== undefined;

const isShort = (timed: TimedRun): boolean =>
  timed.minutes < timed.near &&
  !timed.run.about &&
  !isMeant(timed) &&
  !cameOffByEye(timed) &&
  !isRefresh(timed) &&
  !speaksOfRun(timed.visit, timed.run);

/** Minutes short up to which a cover is no worse for it: clocks are read to the minute. A choice. */
const LITTLE = 5;

/** Grey that is to be covered: half the hair or more, as the start of the visit gives it, else the client's own. */
const coversGrey = ({ visit, run, item }: TimedRun): boolean =>
  item.kind === 'permanent' &&
  !isAway(run.zone) &&
  (greyShare(visit.client, visit.visit)?.percent ?? 0) >= GREY_TO_BASE;

const todoOf = ({ run, item, off, minutes, near }: TimedRun): string => {
  const bowl = run.bowl ?? '';
  if (off === undefined)
    return `Correct the minutes, or say why after them, as in \`off ${bowl} ${minutes}min "even by then"\`.`;
  const end = clockText(off);
  const why = `\`stopped ${end} ${bowl} "…"\``;
  return BY_EYE.has(item.kind)
    ? `Write what was seen when it came off, as in \`check ${end} ${bowl} even\`, or why: ${why}.`
    : `Correct the time, as in \`off ${clockText(off + near - minutes)} ${bowl}\`; if it came off then, why: ${why}.`;
};

const found = (timed: TimedRun): Found => {
  const { run, item, line, from, minutes, near } = timed;
  const grey = coversGrey(timed);
  return {
    place: endOf(run),
    severity: grey && near - minutes > LITTLE ? 'fix' : 'mind',
    message: `${runText(run)} was on for ${minutes} min${fromText(from)}, ${near - minutes} min short${grey ? ', over grey' : ''}.`,
    expected: sentence`${item.full} takes ${timeText(line, from)} (${citeLine(item, line)}).${otherClockText(timed)}`,
    todo: todoOf(timed),
    label: `${minutes} min`,
    also: [
      ...(run.offPlace === undefined ? [] : [{ place: run.onPlace, says: 'went on' }]),
      { place: placeOf(item.stood, line, line.minutes.at), says: 'its time line' },
    ],
  };
};

/** Words that say the eye found it done, or that less was wanted. */
const SEEN_DONE: ReasonWords = {
  en: ['took fast', 'taken fast', 'already there', 'done by then', 'enough by then', 'even by then', 'softened only'],
  de: ['hat schnell gegriffen', 'schon genug', 'fertig', 'reicht so'],
  fr: ['a pris vite', 'déjà assez', 'suffisant'],
  pt: ['pegou rápido', 'já chega', 'já chegou ao tom'],
  es: ['cogió rápido', 'ya está', 'ya era suficiente'],
};

const isShorter = (timed: TimedRun, known: TimedRun): boolean => timed.minutes < known.minutes;

export default defineRule({
  name: 'under-time',
  family: 'time',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'Something came off before the near end of its time line, and nothing seen or noted says why; `fix` for a cover that is more than 5 minutes short where half the hair or more is grey.',
  why: 'Colour taken off early holds badly; the next visit cannot tell whether it was meant.',
  source: { kind: 'shelf', cites: 'the time line of what was put on' },
  accepts: wordsOf(MEANT, SEEN_DONE),
  check: (visit, { earlier, journal: { shelf } }) =>
    // No time is right for what does not belong into one bowl.
    ofEachBowl(visit, earlier, (timed) => isShort(timed) && keptApart(timed.bowl, shelf) === undefined, isShorter).map(
      found,
    ),
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

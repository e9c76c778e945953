import { cautionIn } from '../../reckon/bowl/caution-in.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import { otherClockText } from '../../reckon/timing/claimed-minutes.ts';
import { fromText, isOnScalp, timeText } from '../../reckon/timing/time-line.ts';
import { endOf, ofEachBowl, runText, type TimedRun } from '../../reckon/timing/timed-runs.ts';
import { sentence } from '../../text/sentence.ts';
import { MEANT } from '../reason-words.ts';
import { defineRule, type Found } from '../rule.ts';

/** Minutes that a hedged time may be out by: a choice. */
const HEDGE = 5;

/** Minutes past its time up to which nothing need have happened: clocks are read to the minute, by a hand in gloves. A choice. */
const LITTLE = 5;

const isPast = ({ whole, far, run }: TimedRun): boolean => whole - far > (run.about ? HEDGE : 0);

const isLonger = (timed: TimedRun, known: TimedRun): boolean => timed.whole - timed.far > known.whole - known.far;

const isGrave = ({ visit, bowl, run, item, whole, far }: TimedRun): boolean =>
  whole - far > LITTLE && (item.kind === 'lightener' || isOnScalp(visit, bowl, run));

const found = (timed: TimedRun): Found => ({ ...wording(timed), severity: isGrave(timed) ? 'stop' : 'fix' });

const wording = (timed: TimedRun): Found => {
  const { bowl, run, item, line, from, whole: minutes, far } = timed;
  return {
    place: endOf(run),
    message: `${runText(run)} was on for ${minutes} min${fromText(from)}, ${minutes - far} min past its time.`,
    expected: sentence`${item.full} takes ${timeText(line, from)} (${citeLine(item, line)}).${otherClockText(timed)}`,
    todo: 'Correct a time that was typed wrongly, or give the reason: `because past-time "…"`.',
    label: `${minutes} min`,
    figures: { onMinutes: minutes, mostMinutes: far },
    caution: cautionIn(bowl, 'lightener', 'peroxide'),
    also: [
      { place: run.onPlace, says: 'went on' },
      { place: placeOf(item.stood, line, line.minutes.at), says: 'its time line' },
    ],
  };
};

export default defineRule({
  name: 'past-time',
  family: 'time',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  what: 'Something stayed on past the far end of its time line; `stop` for lightener and on the scalp by more than 5 minutes, else `fix`.',
  why: 'Past the maker’s time hair and scalp are at risk, and how far it lifts can no longer be told.',
  source: { kind: 'shelf', cites: 'the time line of what was put on' },
  accepts: MEANT,
  caution: 'lightener',
  // Zones of one bowl that came off together are one finding.
  check: (visit, { earlier }) => ofEachBowl(visit, earlier, isPast, isLonger).map(found),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      time 20-50 min from first-on
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00-14:15 A top
      check 14:40 A gold
      off 14:58 A
          ^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      time 20-50 min from first-on
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00-14:15 A top
      check 14:40 A gold
      off 14:45 A`,
});

import { citeLine, placeOf } from '../../reckon/cite.ts';
import { onOtherClock } from '../../reckon/timing/claimed-minutes.ts';
import { timeText } from '../../reckon/timing/time-line.ts';
import { ofEachBowl, runText, type TimedRun } from '../../reckon/timing/timed-runs.ts';
import { sentence } from '../../text/sentence.ts';
import { defineRule, type Found } from '../rule.ts';

/** Past its time or short of it, the finding about that names the other clock as well. */
const isWithin = ({ minutes, whole, near, far }: TimedRun): boolean => minutes >= near && whole <= far;

const isOther = (timed: TimedRun): boolean => isWithin(timed) && onOtherClock(timed) !== undefined;

const found = (timed: TimedRun): readonly Found[] => {
  const { run, item, line, from } = timed;
  const other = onOtherClock(timed);
  if (other === undefined) return [];
  return [
    {
      place: other.place,
      message: `${runText(run)}: ${other.said} min is typed, which is from ${other.from}; from ${from} it is ${other.right} min.`,
      expected: sentence`${item.full} takes ${timeText(line, from)} (${citeLine(item, line)}).`,
      todo: `Write \`${other.right}min\`, or leave the minutes out: they are worked out.`,
      label: `from ${other.from}`,
      also: [
        { place: run.onPlace, says: 'went on' },
        { place: placeOf(item.stood, line, line.minutes.at), says: 'its time line' },
      ],
    },
  ];
};

export default defineRule({
  name: 'minutes-other-clock',
  family: 'time',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  what: 'The minutes typed after `off` count from first on where the leaflet counts from all on, or the other way round.',
  why: 'Read as the leaflet’s minutes, they say that it was on for longer or for less than it was.',
  source: { kind: 'shelf', cites: 'the time line of what was put on' },
  check: (visit, { earlier }) => ofEachBowl(visit, earlier, isOther, (a, b) => a.whole > b.whole).flatMap(found),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      time 20-50 min from first-on
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00-14:15 A top
      check 14:40 A gold
      off 14:46 A 31min
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
      off 14:46 A 46min`,
});

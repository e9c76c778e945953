import { citeLine, placeOf } from '../../reckon/cite.ts';
import { triedOnTheDay } from '../../reckon/hair/tried-since.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import { type Spell, spellsOnOnePlace, withinTime } from '../../reckon/timing/lightener-spells.ts';
import { isOnScalp } from '../../reckon/timing/time-line.ts';
import { endOf } from '../../reckon/timing/timed-runs.ts';
import { sentence } from '../../text/sentence.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** Minutes that a hedged time may be out by: a choice. */
const HEDGE = 5;

/** So many times its time is beyond what any leaflet foresees in a day: a choice, no source. */
const MANY = 2;

type Timed = Spell & { readonly far: number };

const isTimed = (spell: Spell): spell is Timed => spell.far !== undefined;

const foundIn = (visit: VisitReckoned, spells: readonly Spell[]): Found | undefined => {
  const timed = spells.filter(isTimed);
  // Of several products the one that may stay the longest.
  const [longest] = timed.toSorted((a, b) => b.far - a.far);
  const last = spells.at(-1);
  if (longest?.line === undefined || last === undefined) return undefined;
  const { far, item, line } = longest;
  const within = spells.reduce((sum, spell) => sum + withinTime(spell), 0);
  const about = spells.some(({ run }) => run.about) ? HEDGE : 0;
  if (within - far <= about) return undefined;
  const minutes = spells.reduce((sum, { from, to }) => sum + to - from, 0);
  const isMany = within >= MANY * far && !triedOnTheDay(visit);
  // No strand tells what skin can bear.
  const onScalp = within - far > HEDGE && spells.some(({ bowl, run }) => isOnScalp(visit, bowl, run));
  const bowls = listed([...new Set(spells.map(({ bowl }) => bowl.name))]);
  const parts = spells.map(({ from, to }) => to - from).join(' + ');
  return {
    place: endOf(last.run),
    severity: isMany || onScalp ? 'stop' : 'fix',
    message: `Lightener was on ${last.zone} for ${minutes} min in all: ${parts}, bowl ${bowls}${isMany ? '; no test of the day' : ''}.`,
    expected: sentence`${item.full} takes up to ${far} min (${citeLine(item, line)}), on the same hair whatever the bowl.`,
    todo: isMany
      ? 'Write the strand that was tried between, as in `test strand 10:55 springs-back`, the place if it was another, or why: `because lightener-minutes "…"`.'
      : 'Write the place if it was another, or why it went on: `because lightener-minutes "…"`.',
    label: `${minutes} min in all`,
    figures: { onMinutes: minutes, mostMinutes: far },
    also: [
      ...spells.slice(0, -1).map(({ run }) => ({ place: run.onPlace, says: 'went on before' })),
      { place: placeOf(item.stood, line, line.minutes.at), says: 'its time line' },
    ],
  };
};

export default defineRule({
  name: 'lightener-minutes',
  family: 'time',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener', 'high-lift'] },
  what: 'The bowls of lightener that followed one another on one place come to more minutes than its time line allows; `stop` for twice as many with no strand or stretch test that day, and on the scalp; else `fix`.',
  why: 'A fresh bowl starts the maker’s minutes anew and the hair’s do not: what it has borne adds up until it breaks.',
  source: { kind: 'shelf', cites: 'the time line of the lightener' },
  caution: 'lightener',
  check(visit, { earlier }) {
    // The place with the most minutes stands for all that went on with it.
    const [most] = spellsOnOnePlace(visit, earlier);
    const found = most && foundIn(visit, most);
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      time 20-45 min from first-on
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      bowl B 40 clay + 80 dev-6
      on 14:00-14:10 A top
      check 14:25 A orange
      off 14:45 A
      on 14:50-14:55 B top
      check 15:10 B yellow
      off 15:35 B
          ^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      time 20-45 min from first-on
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      bowl B 40 clay + 80 dev-6
      on 14:00-14:10 A top
      check 14:15 A orange
      off 14:20 A
      on 14:30-14:35 B top
      check 14:45 B yellow
      off 14:52 B`,
});

import { wentOn } from '../../reckon/bowl/applied.ts';
import { basesIn } from '../../reckon/bowl/contents.ts';
import { placeOf } from '../../reckon/cite.ts';
import { placingsOf } from '../../reckon/client/state.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import { isZero } from '../../text/exact.ts';
import { defineRule, type Found, foundEach, NONE } from '../rule.ts';

/** Words that stand in the notes of a visit that is over. */
const CLOSING: ReadonlySet<string> = new Set(['result', 'charge', 'paid', 'next', 'left', 'rinse', 'off']);

/** Whether the visit is over: what is placed and waits for its lightener has nothing to be asked for. */
const isOver = ({ visit, date }: VisitReckoned, on: string | undefined): boolean =>
  visit.entry.facts.some(({ word }) => CLOSING.has(word)) && (on === undefined || date <= on);

const isLightener = (bowl: BowlReckoned): boolean => basesIn(bowl).some(({ kind }) => kind === 'lightener');

/** Whether an `on` line of the bowl, of a further mix of it, or one without a letter puts it on. */
const isOn = ({ clock }: VisitReckoned, { name }: BowlReckoned): boolean =>
  [...clock.runs, ...clock.unclocked].some(({ bowl }) => bowl === undefined || bowl === name);

/** Lines that end it without a time on are another rule's, and so is work that was given up. */
const isSpokenOf = ({ visit }: VisitReckoned, { name }: BowlReckoned): boolean =>
  visit.entry.facts.some(
    (fact) =>
      fact.word === 'declined' ||
      ((fact.word === 'off' || fact.word === 'stopped') &&
        (fact.bowls.length === 0 || fact.bowls.some((bowl) => bowl.name.toUpperCase() === name))),
  );

const foundIn = (visit: VisitReckoned, bowl: BowlReckoned): Found | undefined => {
  const { name } = bowl;
  const [placing] = placingsOf(visit.visit, name);
  if (placing === undefined || !isLightener(bowl) || !wentOn(bowl) || !isZero(bowl.taken)) return undefined;
  if (isOn(visit, bowl) || isSpokenOf(visit, bowl)) return undefined;
  const zones = placing.zones.map(({ zone }) => zone);
  const where = zones.length === 0 ? '' : ` at ${listed(zones)}`;
  return {
    place: placeOf(visit.visit, placing, placing.bowls[0]?.at),
    message: `Bowl ${name}, lightener, is placed${where}, and no line says when it went on or came off.`,
    expected: 'How long lightener was on, and what was seen meanwhile, is noted (common practice).',
    todo: `Write \`on\` and \`off\` with their times, or its minutes, as in \`on ${name} ${zones[0] ?? ''} for 35min\`.`.replace(
      /\s{2,}/g,
      ' ',
    ),
    label: 'no time on',
    also: [{ place: bowl.place, says: 'mixed here' }],
  };
};

export default defineRule({
  name: 'lightener-not-on',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener'] },
  what: 'Lightener is mixed and placed at a visit that is over, and no line says when it went on or came off.',
  why: 'How long lightener was on this hair is what the next one must know, and what nobody can work out later.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check: (visit, { on }) => (!isOver(visit, on) ? NONE : foundEach(visit.bowls, (bowl) => foundIn(visit, bowl))),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A top weave x8 off-scalp 1cm foil
            ^
      result top 9`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A top weave x8 off-scalp 1cm foil
      on A top for 35min
      check A top yellow
      result top 9`,
});

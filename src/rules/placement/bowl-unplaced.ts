import { itemsIn } from '../../reckon/bowl/contents.ts';
import { placingsOf } from '../../reckon/client/state.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { isZero } from '../../text/exact.ts';
import { defineRule, foundEach, NONE } from '../rule.ts';

/** The bowls that some line beside their own speaks of. */
const spokenOf = ({ entry }: VisitReckoned['visit']): ReadonlySet<string> => {
  const said = new Set<string>();
  for (const fact of entry.facts) {
    if ('bowls' in fact) for (const { name } of fact.bowls) said.add(name.toUpperCase());
    if (fact.word === 'left') for (const { bowl } of fact.left) said.add(bowl.name.toUpperCase());
    if ((fact.word === 'home' || fact.word === 'more') && fact.bowl) said.add(fact.bowl.name.toUpperCase());
  }
  return said;
};

/** Kinds that care for hair: where and when they went on is nothing that the next visit asks. */
const CARE: ReadonlySet<string | undefined> = new Set(['treatment', 'conditioner', 'additive', 'goods']);

const isCareAlone = (bowl: BowlReckoned): boolean => {
  const items = itemsIn(bowl);
  return items.length > 0 && items.every(({ kind }) => CARE.has(kind));
};

export default defineRule({
  name: 'bowl-unplaced',
  family: 'placement',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'A bowl of colour, lightener or remover is mixed that no other line of the visit mentions, while another bowl has its time on.',
  why: 'What went where, and for how long, is what the next visit needs; a bowl alone says neither.',
  source: { kind: 'notation' },
  check({ visit, bowls, clock: { runs, unclocked } }) {
    // Where some run names no bowl, it may be this one.
    const on = [...runs, ...unclocked];
    if (on.length === 0 || on.some(({ bowl }) => bowl === undefined)) return NONE;
    const notOn = bowls.filter((bowl) => !on.some((run) => run.bowl === bowl.name) && !isCareAlone(bowl));
    if (notOn.length === 0) return NONE;
    const said = spokenOf(visit);
    return foundEach(notOn, (bowl) => {
      const { name } = bowl;
      const further = bowls.some((one) => one !== bowl && one.name.startsWith(name.replace(/\d+$/, '')));
      if (said.has(name) || further || placingsOf(visit, name).length > 0 || !isZero(bowl.taken)) return undefined;
      return {
        place: bowl.place,
        message: `Bowl ${name} is mixed, and no line says where or when it went on.`,
        todo: `Write \`on\` with its time, \`${name}\` and its zones, or \`left ${name}\` with its weight if it was not used.`,
        label: 'goes nowhere',
      };
    });
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      bowl B 30 neon coral
           ^^^^^^^^^^^^^^^
      on 14:00 A
      off 14:20 A`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      bowl B 30 neon coral
      on 14:00 A
      off 14:20 A
      on 14:30 B
      off 14:50 B`,
});

import type { VisitReckoned } from '../../reckon/model.ts';
import { historyKinds, isLightening, testsFor, zonesOfBowl } from '../../reckon/state.ts';
import { firstDayOf } from '../../reckon/when.ts';
import { bowlsPutOn } from '../applied.ts';
import { itemsIn, placeInBowl } from '../contents.ts';
import { anyMeetLoosely } from '../hair-meets.ts';
import { kindsMixed } from '../kinds-mixed.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** Colour put in at home, whose depth and layers nobody here saw. What may hold metal has a test and a rule of its own. */
const UNSEEN = 'box-colour';

const mayNeed = (visit: VisitReckoned): boolean => {
  const kinds = kindsMixed(visit);
  return kinds.includes('remover') || kinds.includes('lightener');
};

const foundIn = (visit: VisitReckoned): Found | undefined => {
  const { client, date, salon } = visit;
  for (const bowl of bowlsPutOn(visit)) {
    const item = itemsIn(bowl).find(({ kind }) => kind === 'remover' || kind === 'lightener');
    if (item === undefined || !(item.kind === 'remover' || isLightening(bowl))) continue;
    const under = historyKinds(client).find(
      ({ kind, when, zones }) =>
        kind === UNSEEN &&
        (when === undefined || firstDayOf(when) <= date) &&
        anyMeetLoosely(zonesOfBowl(visit, bowl.name), zones, salon.zones),
    );
    if (under === undefined && item.kind !== 'remover') continue;
    const from = under?.when === undefined ? '' : firstDayOf(under.when);
    const tried = testsFor(client, salon.hours, date).some(
      // One without a day came before the day it is noted for.
      ({ kind, made }) => kind === 'strand' && (made === undefined || made.date >= from),
    );
    if (tried) continue;
    const what =
      under === undefined ? 'no strand test is noted' : `${under.kind} is on file and no strand test is noted since`;
    return {
      place: placeInBowl(bowl, (portion) => portion.item === item),
      severity: item.kind === 'remover' ? 'mind' : 'fix',
      message: `Bowl ${bowl.name} holds ${item.name}, ${item.kind}; ${what}.`,
      expected: 'A strand is tried first where nobody saw what went into the hair (common practice).',
      todo: `Write the strand that was tried, as in \`test strand ${item.name} 20min orange\`; if none was, how it came out stands in a \`result\` line.`,
      label: 'no strand test',
      ...(item.kind === 'lightener' && { caution: 'lightener' }),
      ...(under && { also: [{ place: under.place, says: 'went in before' }] }),
    };
  }
  return undefined;
};

export default defineRule({
  name: 'strand-test-missing',
  family: 'condition',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  what: 'Lightener goes on box colour with no strand test since; `mind` for a remover without one.',
  why: 'Layers that nobody saw go on can stay dark, turn green, or break; one strand shows which.',
  source: { kind: 'common practice' },
  check: (visit) => {
    const found = mayNeed(visit) ? foundIn(visit) : undefined;
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2024-05 box-colour lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^
      place A top`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2024-05 box-colour lengths
    visit 2026-09-04 wren-abbott
      test strand clay 20min orange
      bowl A 40 clay + 80 dev-6
      place A top`,
});

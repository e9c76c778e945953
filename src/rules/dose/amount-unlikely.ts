import { bowlsPutOn, wentOn } from '../../reckon/bowl/applied.ts';
import { basesIn } from '../../reckon/bowl/contents.ts';
import { isColour, placingsOf, zonesOfBowl } from '../../reckon/head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { grams, listed } from '../../reckon/say.ts';
import { sectionsOf } from '../../reckon/sections-of.ts';
import { exact, sub, toNumber } from '../../text/exact.ts';
import { recently } from '../../text/recently.ts';
import { defineRule, type Found } from '../rule.ts';

/** Grams of one mix that no head takes, and of colour that does not go round one: common practice, no source, generous. */
const [MOST, LEAST] = [400, 5];

/** The same for hair that is long and thick or dense, by the client's `hair` line. A choice, no source. */
const MOST_OF_MUCH = 700;

const LONG = /long|waist|hip|bra|mid-?back/u;
const MUCH: ReadonlySet<string> = new Set(['high', 'coarse']);

/** The most that one mix can be for a client: more for long hair of which there is much. */
const mostFor = recently((client: VisitReckoned['client']): number => {
  const said = client.entries.flatMap(({ entry }) =>
    entry.facts.flatMap((fact) => (fact.word === 'hair' ? fact.qualities : [])),
  );
  const has = (quality: string, fits: (word: string) => boolean): boolean =>
    said.some((one) => one.quality.word === quality && one.words.some(({ word }) => fits(word)));
  const isMuch = ['density', 'thickness'].some((quality) => has(quality, (word) => MUCH.has(word)));
  return isMuch && has('length', (word) => LONG.test(word)) ? MOST_OF_MUCH : MOST;
});

/** Places that take more than a few grams: the whole head, or all of its roots. */
const WHOLE: ReadonlySet<string> = new Set(['roots', 'all', 'full-head']);

const isWhole = (zone: string): boolean => zone.split(' ').every((word) => WHOLE.has(word));

/** Whether a bowl is the only colour for the whole head or all the roots: a few grams beside another bowl are a touch. */
const isAlone = (visit: VisitReckoned, bowl: BowlReckoned): boolean =>
  zonesOfBowl(visit, bowl.name).some(isWhole) && bowlsPutOn(visit).filter(isColour).length === 1;

/** Grams of mix that no section takes, foil or slice, of a bowl that is no small one: common practice, generous. */
const [PER_SECTION, SMALL] = [40, 150];

/** So many times what went to the same place before, and so many grams more, is no longer one head's whim: a choice. */
const [TIMES, MORE] = [3, 60];

const TODO = 'Write the grams as they were weighed; if they stand, why: `because amount-unlikely "…"`.';

/** Grams of a bowl that did not go on into another one. */
const ownGrams = ({ mixed, taken }: BowlReckoned): number | undefined => mixed && toNumber(sub(mixed, taken));

/** The sections of the bowls of a visit that share what went to one place; undefined where some of it is in none. */
const allSections = ({ visit }: VisitReckoned, bowls: readonly BowlReckoned[]): number | undefined => {
  let sections = 0;
  for (const placing of new Set(bowls.flatMap(({ name }) => placingsOf(visit, name)))) {
    const own = sectionsOf(placing);
    if (own === undefined) return undefined;
    sections += own;
  }
  return sections === 0 ? undefined : sections;
};

/** All that went on of one kind to the same places in the same way at one visit. */
type Service = {
  readonly key: string;
  readonly visit: VisitReckoned;
  readonly bowls: readonly BowlReckoned[];
  readonly grams: number;
  readonly sections: number | undefined;
};

/** What makes two bowls of one service: kinds of base, places, techniques. Undefined where no place is named. */
const keyOf = (reckoned: VisitReckoned, bowl: BowlReckoned): string | undefined => {
  const zones = zonesOfBowl(reckoned, bowl.name);
  if (zones.length === 0) return undefined;
  const techniques = placingsOf(reckoned.visit, bowl.name).map(({ technique }) => technique?.word ?? '');
  const kinds = basesIn(bowl).map(({ kind }) => kind ?? '');
  return [kinds, zones, techniques].map((words) => [...new Set(words)].sort().join(' ')).join('\n');
};

const servicesOf = (visit: VisitReckoned): Service[] => {
  const groups = new Map<string, BowlReckoned[]>();
  for (const bowl of visit.bowls) {
    if (!isColour(bowl) || !wentOn(bowl) || ownGrams(bowl) === undefined) continue;
    // A further mix goes where the first did, unless a line says where.
    const key = keyOf(visit, bowl) ?? keyOf(visit, { ...bowl, name: bowl.name.replace(/(?<=\p{L})\d+$/u, '') });
    if (key === undefined) continue;
    const same = groups.get(key);
    if (same === undefined) groups.set(key, [bowl]);
    else same.push(bowl);
  }
  return [...groups].map(([key, bowls]) => {
    const grams = bowls.reduce((sum, bowl) => sum + (ownGrams(bowl) ?? 0), 0);
    return { key, visit, bowls, grams, sections: allSections(visit, bowls) };
  });
};

const growthOf = ({ growth: { measured, expected } }: VisitReckoned): number | undefined => {
  const length = measured ?? expected;
  return length && toNumber(length);
};

/** How much more one visit has to cover than another: by its sections, else by its new growth. */
const moreToCover = (now: Service, then: Service): number => {
  if (now.sections !== undefined && then.sections !== undefined) return now.sections / then.sections;
  const [grown, before] = [growthOf(now.visit), growthOf(then.visit)];
  return grown === undefined || before === undefined || before <= 0 ? 1 : grown / before;
};

/** What earlier visits did, by its key, in order. */
type Before = ReadonlyMap<string, readonly Service[]>;

const NEVER: readonly Service[] = [];

const againstLast = (now: Service, before: Before): Found | undefined => {
  const same = before.get(now.key) ?? NEVER;
  const last = same.at(-1);
  const [first] = now.bowls;
  if (last === undefined || first === undefined) return undefined;
  const isMore = same.every(
    (then) => now.grams >= TIMES * then.grams * Math.max(1, moreToCover(now, then)) && now.grams - then.grams >= MORE,
  );
  if (!isMore) return undefined;
  const names = now.bowls.map(({ name }) => name);
  const where = zonesOfBowl(now.visit, first.name).join(', ');
  return {
    place: first.place,
    message: `Bowl ${listed(names)}${names.length > 1 ? ' together are' : ' is'} ${grams(exact(Math.round(now.grams)))} for ${where}; on ${last.visit.date} it was ${grams(exact(Math.round(last.grams)))}.`,
    expected: `Less than ${TIMES} times what the same place and way of working took before (her own notes).`,
    todo: TODO,
    label: 'perhaps too much',
    also: last.bowls.slice(0, 1).map(({ place }) => ({ place, says: 'mixed then' })),
  };
};

const foundIn = (visit: VisitReckoned, bowl: BowlReckoned): Found | undefined => {
  const { base, mixed, name, place } = bowl;
  const weight = mixed && toNumber(mixed);
  const little = base !== undefined && toNumber(base) > 0 && toNumber(base) <= LEAST;
  if (!wentOn(bowl) || !isColour(bowl)) return undefined;
  const most = mostFor(visit.client);
  if (mixed !== undefined && weight !== undefined && weight >= most)
    return {
      place,
      message: `Bowl ${name} is ${grams(mixed)}.`,
      expected: `One head takes less than ${most} g of a mix (common practice, a generous bound).`,
      todo: TODO,
      label: 'perhaps a nought too many',
    };
  const sections = allSections(visit, [bowl]);
  if (
    mixed !== undefined &&
    weight !== undefined &&
    sections !== undefined &&
    weight >= SMALL &&
    weight >= PER_SECTION * sections
  )
    return {
      place,
      message: `Bowl ${name} is ${grams(mixed)} for ${sections} ${sections === 1 ? 'section' : 'sections'}, ${Math.round(weight / sections)} g each.`,
      expected: `A section takes less than ${PER_SECTION} g of a mix (common practice, a generous bound).`,
      todo: TODO,
      label: 'perhaps too much',
    };
  if (little && isAlone(visit, bowl))
    return {
      place,
      message: `Bowl ${name} has ${grams(base)} of colour for ${zonesOfBowl(visit, name).find(isWhole)}.`,
      expected: `Roots or a whole head take more than ${LEAST} g of colour (common practice, a generous bound).`,
      todo: TODO,
      label: 'perhaps a nought too few',
    };
  return undefined;
};

/** So many times what two or more visits took before is no thought any more: a nought has slipped. A choice. */
const NOUGHT = 6;

const isSlip = (now: Service, before: Before): boolean => {
  const same = before.get(now.key) ?? NEVER;
  return (
    same.length > 1 && same.every((then) => now.grams >= NOUGHT * then.grams * Math.max(1, moreToCover(now, then)))
  );
};

const graver = <F extends Found | undefined>(found: F, slip: boolean): F =>
  found === undefined || !slip ? found : { ...found, severity: 'fix' };

/** What is found in a visit, each bowl once: by itself, else against what went to the same place before. */
const foundAt = (visit: VisitReckoned, services: readonly Service[], before: Before): Found[] => {
  const alone = new Map<BowlReckoned, Found>();
  for (const bowl of visit.bowls) {
    const found = foundIn(visit, bowl);
    if (found !== undefined) alone.set(bowl, found);
  }
  const against = services
    .filter(({ bowls }) => !bowls.some((bowl) => alone.has(bowl)))
    .flatMap((service) => graver(againstLast(service, before), isSlip(service, before)) ?? []);
  const ofOne = [...alone].map(([bowl, found]) => {
    const service = services.find(({ bowls }) => bowls.includes(bowl));
    return graver(found, service !== undefined && isSlip(service, before));
  });
  return [...ofOne, ...against];
};

export default defineRule({
  name: 'amount-unlikely',
  family: 'dose',
  severity: 'mind',
  bears: 'never',
  over: 'client',
  what: 'A bowl of colour is 400 g or more, 40 g or more for each of its sections, or thrice what the same place and way of working took before; or 5 g of colour or less are all there is for the roots or the whole head. `fix` for six times what several visits took.',
  why: 'A slipped nought goes into the stock, the cost and the next bowl made from this one.',
  source: { kind: 'common practice' },
  check(_client, visits) {
    const all: Found[] = [];
    const before = new Map<string, Service[]>();
    for (const visit of visits) {
      if (visit.bowls.length === 0) continue;
      const services = servicesOf(visit);
      const found = foundAt(visit, services, before);
      for (const one of found) all.push(one);
      // What is too much itself is no measure for the next time.
      if (found.length > 0) continue;
      for (const service of services) {
        const same = before.get(service.key);
        if (same === undefined) before.set(service.key, [service]);
        else same.push(service);
      }
    }
    return all;
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 400 clay + 80 dev-6
           ^^^^^^^^^^^^^^^^^^^^^
      place A top`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A top`,
});

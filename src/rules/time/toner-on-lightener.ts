import { basesIn } from '../../reckon/bowl/contents.ts';
import { isAt } from '../../reckon/head/hair-meets.ts';
import { placingsOf } from '../../reckon/head/services.ts';
import type { Run, VisitReckoned } from '../../reckon/model.ts';
import { bowlOf, runText } from '../../reckon/timing/timed-runs.ts';
import { matchZones } from '../../reckon/zone-match.ts';
import type { Placing } from '../../records/schema/visit.ts';
import { clockText } from '../../text/dates.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** Minutes that a hedged time may be out: common practice, no source. */
const HEDGED = 5;

/** Ways of placing that take hair out in sections, so that other hair lies between them. */
const IN_SECTIONS: ReadonlySet<string> = new Set(['slice', 'weave', 'fine-weave', 'babylight', 'paint']);

/** Ways of placing by which a bowl goes over all the hair of a place. */
const ALL_OVER: ReadonlySet<string> = new Set(['comb-through', 'melt']);

const LIGHTENER: readonly string[] = ['lightener'];
const TONER: readonly string[] = ['toner', 'demi'];

const isKind = (visit: VisitReckoned, run: Run, kinds: readonly string[]): boolean => {
  const bowl = bowlOf(visit, run);
  const bases = bowl === undefined ? [] : basesIn(bowl);
  return bases.length > 0 && bases.every(({ kind }) => kind !== undefined && kinds.includes(kind));
};

const placingsAt = ({ visit, salon }: VisitReckoned, { bowl = '', zone }: Run): readonly Placing[] =>
  placingsOf(visit, bowl).filter(
    ({ zones }) => zones.length === 0 || zones.some((one) => matchZones(one.zone, zone, salon.zones) !== undefined),
  );

const isInSections = ({ technique, cover, turn }: Placing): boolean =>
  turn !== undefined || cover?.word === 'foil' || IN_SECTIONS.has(technique?.word ?? '');

/** Whether two runs lie on the same hair: the same place or one within the other, and not strands beside strands. */
const isSameHair = (visit: VisitReckoned, toner: Run, lightener: Run, lighteners: readonly Run[]): boolean => {
  // One place named and the other not leaves room for both.
  if ((toner.zone === '') !== (lightener.zone === '')) return false;
  const match = matchZones(toner.zone, lightener.zone, visit.salon.zones);
  if (match !== 'same' && match !== 'within') return false;
  const own = placingsAt(visit, toner);
  if (own.some(isInSections)) return false;
  if (!placingsAt(visit, lightener).some(isInSections)) return true;
  if (isForLightened(visit, toner, lighteners)) return true;
  // Between sections a root colour or a block can go on; a comb goes through all of them.
  if (isAt(toner.zone, 'roots') && !isAt(lightener.zone, 'roots')) return false;
  return own.every(({ technique, says }) => says === undefined && ALL_OVER.has(technique?.word ?? 'melt'));
};

/** Whether the same line puts the toner on other places where lightener has come off: then it is meant for what was lightened. */
const isForLightened = ({ clock: { runs }, salon }: VisitReckoned, toner: Run, lighteners: readonly Run[]): boolean =>
  runs.some(
    (one) =>
      one !== toner &&
      one.onPlace.line === toner.onPlace.line &&
      one.bowl === toner.bowl &&
      lighteners.some(
        ({ zone, off }) =>
          off !== undefined && off <= toner.firstOn && matchZones(one.zone, zone, salon.zones) === 'same',
      ),
  );

const foundOf = (visit: VisitReckoned, toner: Run, lightener: Run, lighteners: readonly Run[]): Found | undefined => {
  const { off, offPlace } = lightener;
  if (off === undefined || offPlace === undefined || toner.firstOn < lightener.firstOn) return undefined;
  // Of sections that are off before, those are toned.
  if (lightener.partsOff?.some(({ minute }) => minute <= toner.firstOn)) return undefined;
  const early = off - toner.firstOn;
  if (early <= (toner.about || lightener.about ? HEDGED : 0) || !isSameHair(visit, toner, lightener, lighteners))
    return undefined;
  return {
    place: toner.onPlace,
    message: `${runText(toner)} went on at ${clockText(toner.firstOn)}, ${early} min before ${runText(lightener).replace(/^B/u, 'b')} came off.`,
    expected: 'Lightener is rinsed out before toner goes on the same hair (common practice).',
    todo: 'Correct the time that was typed wrongly, or the place where it went.',
    label: `${early} min too early`,
    also: [{ place: offPlace, says: 'the lightener came off' }],
  };
};

export default defineRule({
  name: 'toner-on-lightener',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['on'] },
  what: 'Toner or demi goes on hair while lightener is still on it, by the clock.',
  why: 'One of the two times is a slip, and minutes on and lift are reckoned from both.',
  source: { kind: 'common practice' },
  check(visit) {
    const { runs } = visit.clock;
    if (runs.length < 2) return NONE;
    const lighteners = runs.filter((run) => isKind(visit, run, LIGHTENER));
    if (lighteners.length === 0) return NONE;
    const all: Found[] = [];
    const told: number[] = [];
    for (const toner of runs) {
      if (!isKind(visit, toner, TONER)) continue;
      for (const lightener of lighteners) {
        const found = told.includes(toner.onPlace.line) ? undefined : foundOf(visit, toner, lightener, lighteners);
        if (found === undefined) continue;
        told.push(toner.onPlace.line);
        all.push(found);
      }
    }
    return all;
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    product pearl "Pearl toner" toner
      mix none
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      bowl T 20 pearl
      on 14:00 A top
      check 14:30 A yellow
      on 14:35 T top
         ^^^^^
      off 14:40 A
      off 14:50 T`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    product pearl "Pearl toner" toner
      mix none
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      bowl T 20 pearl
      on 14:00 A top
      check 14:30 A yellow
      off 14:35 A
      on 14:40 T top
      off 14:50 T`,
});

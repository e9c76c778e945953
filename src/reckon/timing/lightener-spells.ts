import type { ShelfItem } from '../../journal/shelf.ts';
import type { TimeLine } from '../../records/schema/shelf.ts';
import { itemsIn } from '../bowl/contents.ts';
import { placingsOf, zonesOfBowl } from '../head/services.ts';
import type { BowlReckoned, FactsOf, Run, VisitReckoned } from '../model.ts';
import { matchZones } from '../zone-match.ts';
import { minutesOf, timeLineOf } from './time-line.ts';
import { bowlOf } from './timed-runs.ts';

/** One time that lightener was on a place and came off again: minutes from first on to off, and its product's far end. */
export type Spell = {
  readonly run: Run;
  readonly bowl: BowlReckoned;
  readonly item: ShelfItem;
  readonly zone: string;
  readonly from: number;
  readonly to: number;
  /** The `time` line it goes by, and that line's far end; undefined where its product has none. */
  readonly line: TimeLine | undefined;
  readonly far: number | undefined;
};

/** Whether a bowl is a wash of lightener with shampoo or conditioner, which is weak, short and sound after any bleach. */
const isWash = (bowl: BowlReckoned): boolean => itemsIn(bowl).some(({ kind }) => kind === 'conditioner');

/** Where a run lies: the zone of its line, else the zones that its bowl was placed at. */
const zonesOf = (visit: VisitReckoned, { bowl, zone }: Run): readonly string[] =>
  zone !== '' || bowl === undefined ? [zone] : zonesOfBowl(visit, bowl);

const spellsOf = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): Spell[] =>
  visit.clock.runs.flatMap((run): Spell[] => {
    const bowl = bowlOf(visit, run);
    const item = bowl && itemsIn(bowl).find(({ kind }) => kind === 'lightener');
    if (bowl === undefined || item === undefined || run.off === undefined || isWash(bowl)) return [];
    const line = timeLineOf(item, { visit, earlier, bowl, run });
    const far = line && minutesOf(line.minutes).far;
    const { firstOn: from, off: to } = run;
    return zonesOf(visit, run)
      .filter((zone) => zone !== '')
      .map((zone) => ({ run, bowl, item, zone, from, to, line, far }));
  });

const SECTIONED: ReadonlySet<string | undefined> = new Set([
  'slice',
  'weave',
  'fine-weave',
  'babylight',
  'panel',
  'block',
]);

const inSections = ({ technique }: FactsOf<'place'>): boolean => SECTIONED.has(technique?.word);

/** Whether two bowls were laid into foils of their own at a place: other sections of it, by technique or count. */
const inOtherSections = (visit: VisitReckoned, a: Spell, b: Spell): boolean => {
  const placed = (spell: Spell): FactsOf<'place'> | undefined =>
    placingsOf(visit.visit, spell.bowl.name).find(
      (placing) =>
        inSections(placing) &&
        placing.zones.some(({ zone }) => matchZones(zone, spell.zone, visit.salon.zones) !== undefined),
    );
  const [one, other] = [placed(a), placed(b)];
  if (one === undefined || other === undefined || one === other) return false;
  return one.technique?.word !== other.technique?.word || one.sections !== other.sections;
};

/** Minutes of a spell up to the far end of its own time: what is past that is found there already. */
export const withinTime = ({ from, to, far }: Spell): number => Math.min(to - from, far ?? to - from);

const lengthOf = (chain: readonly Spell[]): number => chain.reduce((sum, spell) => sum + withinTime(spell), 0);

/**
 * The spells one after another on one place that come to the most: each went on once the one before was off. What goes
 * on beside what is still on lies in other foils, or tops the same ones up, and adds nothing.
 */
const longestChain = (visit: VisitReckoned, spells: readonly Spell[]): readonly Spell[] => {
  const inOrder = spells.toSorted((a, b) => a.from - b.from);
  const best: (readonly Spell[])[] = [];
  for (const spell of inOrder) {
    const before = best.filter((chain) =>
      chain.every((one) => one.to <= spell.from && !inOtherSections(visit, one, spell)),
    );
    const longest = before.toSorted((a, b) => lengthOf(b) - lengthOf(a))[0] ?? [];
    best.push([...longest, spell]);
  }
  return best.toSorted((a, b) => lengthOf(b) - lengthOf(a))[0] ?? [];
};

/** All spells of lightener on one place of a visit, in order; the place with the most minutes first. Two or more each. */
export const spellsOnOnePlace = (
  visit: VisitReckoned,
  earlier: readonly VisitReckoned[],
): readonly (readonly Spell[])[] => {
  const spells = spellsOf(visit, earlier);
  if (new Set(spells.map(({ run }) => run)).size < 2) return [];
  const { zones } = visit.salon;
  return [...new Set(spells.map(({ zone }) => zone))]
    .map((zone) => {
      // A run is on a place once, whatever smaller places its line names besides.
      const here = new Map<Run, Spell>();
      for (const spell of spells) {
        const match = matchZones(zone, spell.zone, zones);
        if ((match === 'same' || match === 'within') && !here.has(spell.run)) here.set(spell.run, spell);
      }
      return longestChain(visit, [...here.values()]);
    })
    .filter((chain) => chain.length > 1)
    .toSorted((a, b) => lengthOf(b) - lengthOf(a));
};

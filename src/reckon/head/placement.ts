import type { Placing } from '../../records/schema/visit.ts';
import { exactOf, toNumber } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import type { FromTo } from '../../trade/head-areas.ts';
import { isLengthUnit, toMillimetres } from '../../trade/units.ts';
import { placeOf } from '../cite.ts';
import { shownBowl } from '../clock/lines.ts';
import type { Minute, VisitReckoned } from '../model.ts';
import { sectionsOf } from '../sections-of.ts';
import { type LightenedShare, lightenedShare } from './lightened-share.ts';
import type { BowlSections, Placed } from './placed.ts';
import { type HeadPlace, headPlace, type OwnZones, ownZones } from './places.ts';
import { ownZoneLines } from './services.ts';

export type { Placed } from './placed.ts';

/**
 * Where the bowls of a visit went: counts, sharing, spacing, order, and what was left out.
 *
 * Reads: one reckoned visit, with its client's own places. Gives: its placement. Runs again: when the visit changes.
 */

/** A count of sections under one name. */
export type SectionCount = { readonly name: string; readonly sections: number };

/** What went on at one time, in the order of the clock. */
export type OrderStep = {
  readonly at: Minute;
  readonly on: readonly { readonly bowl: string | undefined; readonly zone: string }[];
};

export type LeftOut = {
  readonly places: readonly HeadPlace[];
  readonly says: string | undefined;
  readonly place: Place;
};

export type Placement = {
  readonly placed: readonly Placed[];
  readonly byBowl: readonly SectionCount[];
  /** Zones that one line counts together stand as one name. */
  readonly byZone: readonly SectionCount[];
  readonly byTechnique: readonly SectionCount[];
  /** All counted sections. */
  readonly sections: number;
  readonly order: readonly OrderStep[];
  readonly left: readonly LeftOut[];
  /** Share of the head lightened; undefined when nothing that lightens was placed. */
  readonly lightened: LightenedShare | undefined;
};

/** Sections dealt out in turn: of 28 in the turn A B A, 19 are A and 9 are B. */
const dealt = (turn: readonly string[], count: number): Map<string, number> => {
  const dealtOut = new Map<string, number>();
  for (const [index, bowl] of turn.slice(0, count).entries())
    dealtOut.set(bowl, (dealtOut.get(bowl) ?? 0) + Math.ceil((count - index) / turn.length));
  return dealtOut;
};

const sharesOf = (
  bowls: readonly string[],
  turn: readonly string[],
  counted: number,
  sides: number,
): BowlSections[] => {
  const order = turn.length > 0 ? turn : bowls;
  if (turn.length === 0 && bowls.length !== 1) return [];
  // Each side begins the turn anew, as the hand does.
  return [...dealt(order, counted)].map(([bowl, sections]) => ({ bowl, sections: sections * sides }));
};

const millimetres = (gap: Placing['gap']): FromTo | undefined => {
  if (gap === undefined) return undefined;
  const { value, to = value, unit } = gap;
  // A bare figure is millimetres; the reader keeps no other unit.
  const inMm = (length: number): number =>
    isLengthUnit(unit) ? toNumber(toMillimetres(exactOf(length), unit)) : length;
  return { least: inMm(Math.min(value, to)), most: inMm(Math.max(value, to)) };
};

const ofLine = ({ visit }: VisitReckoned, own: OwnZones, fact: Placing): Placed => {
  const turn = (fact.turn ?? []).map(({ name }) => shownBowl(name));
  const named = fact.bowls.map(({ name }) => shownBowl(name));
  const bowls = [...new Set([...named, ...turn])];
  const { sections: counted, mirror } = fact;
  const sides = mirror ? 2 : 1;
  return {
    bowls,
    places: fact.zones.map(({ zone }) => headPlace(zone, own)),
    technique: fact.technique?.word,
    counted,
    sections: sectionsOf(fact),
    mirror,
    gap: millimetres(fact.gap),
    turn,
    byBowl: counted === undefined ? [] : sharesOf(bowls, turn, counted, sides),
    scalp: fact.scalp ?? (fact.clear === undefined ? undefined : 'off'),
    cover: fact.cover?.word,
    fact,
    place: placeOf(visit, fact, fact.bowls[0]?.at),
  };
};

/** Bowls without a `place` line, by the zones that the clock names. */
const ofClock = ({ clock, bowls }: VisitReckoned, own: OwnZones, placed: readonly Placed[]): Placed[] => {
  const known = new Set(placed.flatMap((one) => one.bowls));
  return bowls.flatMap(({ name }): Placed[] => {
    const runs = [...clock.runs, ...clock.unclocked].filter(({ bowl, zone }) => bowl === name && zone !== '');
    const [first] = runs;
    if (known.has(name) || first === undefined) return [];
    return [
      {
        bowls: [name],
        places: [...new Set(runs.map(({ zone }) => zone))].map((zone) => headPlace(zone, own)),
        technique: undefined,
        counted: undefined,
        sections: undefined,
        mirror: false,
        gap: undefined,
        turn: [],
        byBowl: [],
        scalp: undefined,
        cover: undefined,
        fact: undefined,
        place: first.onPlace,
      },
    ];
  });
};

const counts = (named: Iterable<readonly [name: string, sections: number]>): SectionCount[] => {
  const found = new Map<string, number>();
  for (const [name, sections] of named) found.set(name, (found.get(name) ?? 0) + sections);
  return [...found].map(([name, sections]) => ({ name, sections }));
};

const orderOf = ({ clock }: VisitReckoned): OrderStep[] => {
  const steps = new Map<Minute, OrderStep['on'][number][]>();
  for (const { firstOn, bowl, zone } of clock.runs) {
    const on = steps.get(firstOn) ?? [];
    on.push({ bowl, zone });
    steps.set(firstOn, on);
  }
  return [...steps].map(([at, on]) => ({ at, on })).sort((a, b) => a.at - b.at);
};

/** The name that sections of a line are counted under by place. */
const zonesName = ({ places }: Placed): string => places.map(({ zone }) => zone).join(', ') || 'no place named';

/** Where the bowls of a visit went. */
export const placementOf = (visit: VisitReckoned): Placement => {
  const own = ownZones(visit.salon, ownZoneLines(visit.client, visit.visit));
  const lines = visit.visit.entry.facts.flatMap((fact) => (fact.word === 'place' ? [ofLine(visit, own, fact)] : []));
  const placed = [...lines, ...ofClock(visit, own, lines)];
  const countedLines = placed.flatMap((one) =>
    one.sections === undefined ? [] : [{ ...one, sections: one.sections }],
  );
  const left = visit.visit.entry.facts.flatMap((fact): LeftOut[] =>
    fact.word === 'leave'
      ? [
          {
            places: fact.zones.map(({ zone }) => headPlace(zone, own)),
            says: fact.says?.text,
            place: placeOf(visit.visit, fact, fact.zones[0]?.at),
          },
        ]
      : [],
  );
  return {
    placed,
    byBowl: counts(placed.flatMap((one) => one.byBowl.map(({ bowl, sections }) => [bowl, sections] as const))),
    byZone: counts(countedLines.map((one) => [zonesName(one), one.sections])),
    byTechnique: counts(
      countedLines.flatMap(({ technique, sections }) =>
        technique === undefined ? [] : [[technique, sections] as const],
      ),
    ),
    sections: countedLines.reduce((total, { sections }) => total + sections, 0),
    order: orderOf(visit),
    left,
    lightened: lightenedShare(visit.bowls, placed),
  };
};

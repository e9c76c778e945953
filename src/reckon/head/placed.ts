import type { Placing } from '../../records/schema/visit.ts';
import type { Place } from '../../text/span.ts';
import type { FromTo } from '../../trade/head-areas.ts';
import type { HeadPlace } from './places.ts';

/** Sections of one bowl. */
export type BowlSections = { readonly bowl: string; readonly sections: number };

/** One `place` line, worked out; or a bowl that only the clock places. */
export type Placed = {
  /** In capitals, in the order of their turn. */
  readonly bowls: readonly string[];
  readonly places: readonly HeadPlace[];
  readonly technique: string | undefined;
  /** Sections on each side where they are mirrored, else in all; undefined when not counted. */
  readonly counted: number | undefined;
  /** Sections in all: both sides of a mirrored line. */
  readonly sections: number | undefined;
  readonly mirror: boolean;
  /** Between sections, in millimetres. */
  readonly gap: FromTo | undefined;
  /** The order in which bowls take turns; empty when they take none. */
  readonly turn: readonly string[];
  /** The sections in all by bowl; empty when they are not counted, or several bowls share them in no order noted. */
  readonly byBowl: readonly BowlSections[];
  readonly scalp: 'on' | 'off' | undefined;
  readonly cover: string | undefined;
  /** Undefined when the clock alone places the bowl. */
  readonly fact: Placing | undefined;
  readonly place: Place;
};

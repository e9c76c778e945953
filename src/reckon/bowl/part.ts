import type { ShelfItem } from '../../journal/shelf.ts';
import type { Component, Ratio } from '../../records/schema/values.ts';
import type { Exact } from '../../text/exact.ts';
import type { At, Ground, Place } from '../../text/span.ts';
import type { BowlProblem, Portion, Role } from '../model.ts';

type Fields = 'amount' | 'product' | 'second' | 'shade' | 'strength' | 'ratio' | 'blend' | 'out';

/**
 * A component as it is resolved: every field there, and the line it stands on. `inLine` when that line says the bowl's
 * total. (Records leave out what was not typed, and reading a missing field again and again is slow.)
 */
export type Typed = { readonly [key in Fields]: Component[key] | undefined } & {
  readonly component: Component;
  readonly at: At;
  readonly in: Ground;
  readonly line: number;
  readonly inLine: boolean;
};

/** A component of a line as it is resolved. */
export const typedPart = (component: Component, ground: Ground, line: number, inLine: boolean): Typed => {
  const { at, amount, product, second, shade, strength, ratio, blend, out } = component;
  return { component, at, amount, product, second, shade, strength, ratio, blend, out, in: ground, line, inLine };
};

/** A ratio as typed: parts of this developer to one part of all bases. */
export type RatioSaid = {
  readonly value: Exact;
  readonly place: Place;
  readonly typed: Pick<Ratio, 'colour' | 'developer'>;
  readonly about: boolean;
};

/** One developer of a blend, and its share of the blend. */
export type BlendShare = {
  readonly item: ShelfItem | undefined;
  readonly label: string;
  readonly strength: Exact;
  readonly share: Exact;
};

/** A part of a bowl with its names resolved, before its weight is worked out. */
export type Part = {
  readonly component: Component;
  readonly place: Place;
  readonly role: Role;
  readonly item: ShelfItem | undefined;
  readonly label: string;
  readonly shade: string | undefined;
  /** Per cent of peroxide; nought for what holds none, undefined when not known. */
  readonly strength: Exact | undefined;
  readonly about: boolean;
  /** The weight that the note gives, in grams. */
  readonly grams: Exact | undefined;
  /** How much of the bowl’s common part (`2p`). */
  readonly parts: Exact | undefined;
  readonly how: string | undefined;
  readonly ratio: RatioSaid | undefined;
  readonly blend: readonly BlendShare[] | undefined;
  /** The bowl it is taken out of, as typed but in capitals. */
  readonly out: string | undefined;
  /** Whether the bowl’s own line holds it, which says the total; a `plus` stands outside. */
  readonly inLine: boolean;
  /** Its weight comes from another bowl (`again`, `more`), not from this line. */
  readonly repeated: boolean;
  /** The earlier day whose bowl names the lot, where it is repeated from there. */
  readonly lotOf: string | undefined;
};

/** A portion while its bowl is worked out: what the scales said, where it comes from and its cost are set later. */
export type PortionDraft = { -readonly [key in keyof Portion]: Portion[key] };

export type Parted = { readonly parts: readonly Part[]; readonly problems: readonly BowlProblem[] };

/** A figure that the note gives beside the parts, in grams. */
export type Said = { readonly value: Exact; readonly place: Place; readonly about: boolean };

/** What a bowl's own line says beside its parts: the total that it sets (`90 g of …`), the total that it claims. */
export type BowlSaid = {
  readonly name: string;
  readonly place: Place;
  readonly total?: Said;
  readonly claim?: Said;
};

import type { ClientFile } from '../journal/journal.ts';
import type { SalonSettings } from '../journal/salon.ts';
import type { ShelfItem } from '../journal/shelf.ts';
import type { Stood } from '../journal/source.ts';
import type { Visit, VisitFact } from '../records/schema/entry.ts';
import type { Component, Seen } from '../records/schema/values.ts';
import type { Exact } from '../text/exact.ts';
import type { Place } from '../text/span.ts';

/**
 * What the reckoning gives to rules and pages. Weights are exact grams; `shown` is what the scales can show. Money is
 * exact minor units (pence) until it is summed and rounded once.
 */

/** What a portion is to its bowl: only base and developer stand in the ratio. */
export type Role = 'base' | 'developer' | 'additive' | 'water' | 'bowl' | 'unknown';

/** One weighed thing in a bowl. A blend of two developers is two portions of one component. */
export type Portion = {
  readonly component: Component;
  readonly place: Place;
  readonly role: Role;
  readonly item: ShelfItem | undefined;
  /** As a colourist says it: `clay`, `cream 7/43`, `dev-6`, `out of A`. */
  readonly label: string;
  readonly shade: string | undefined;
  readonly weight: Exact | undefined;
  readonly shown: Exact | undefined;
  /** Per cent of peroxide in the portion itself; nought for what holds none, undefined when not known. */
  readonly strength: Exact | undefined;
  readonly typed: boolean;
  readonly about: boolean;
  /** How a volume or a measure became grams, in words, where it did. */
  readonly how?: string;
  /** The bowl it is taken out of. */
  readonly from?: BowlReckoned;
  /** What the scales said, where a `weighed` line stands. */
  readonly weighed?: Exact;
  /** The earlier day whose bowl names the lot, where the bowl is made again from there. */
  readonly lotOf?: string;
  /** Exact minor units at the price in force on the day, for what was really weighed; undefined when no price is known. */
  readonly cost: Exact | undefined;
};

/** Why a bowl could not be worked out, or does not agree with itself. `data` holds the figures for the message. */
export type BowlProblem = {
  readonly kind:
    | 'unknown-name' // a product that is not on the shelf
    | 'no-shade' // a range without a shade
    | 'shade-of-product' // a shade on a product that has none
    | 'unknown-shade' // tones or a name that the range does not declare
    | 'no-developer' // a strength that no developer on the shelf has
    | 'several-developers' // a strength that several have
    | 'missing-weight' // too few facts
    | 'disagree' // two facts that cannot both hold
    | 'claim' // the typed total differs from the reckoned one
    | 'outside-blend' // a strength that the two developers cannot make
    | 'no-density' // a volume without density or policy
    | 'unknown-measure'
    | 'again-missing' // no such visit or bowl
    | 'again-circle'
    | 'again-undated' // `again A 80%` without a date
    | 'again-differs' // beside a `bowl` of that name, and they differ
    | 'no-such-bowl' // plus, weighed, more, left, out of … a bowl that is not mixed
    | 'bowl-twice'; // one name, two `bowl` lines
  readonly place: Place;
  readonly message: string;
  readonly todo?: string;
  readonly also?: readonly { readonly place: Place; readonly says: string }[];
  /** Near names, for a misspelt one. */
  readonly near?: readonly string[];
};

/** One bowl of a visit. `A2` is the second mix of bowl A (`more`). */
export type BowlReckoned = {
  /** As typed but in capitals: `A`, `T2`. */
  readonly name: string;
  readonly visit: Stood<Visit>;
  readonly place: Place;
  /** What the note means to be in it. */
  readonly portions: readonly Portion[];
  /** What went into it: each portion as the scales said where a `weighed` line stands, else as meant. */
  readonly held: readonly Portion[];
  readonly total: Exact | undefined;
  readonly shownTotal: Exact | undefined;
  /** What is in it with all that came out of other bowls, where something did; alike things together. */
  readonly poured?: readonly Portion[];
  /** Grams of base and of developer in what it held, additives apart unless they are in the ratio. */
  readonly base: Exact | undefined;
  readonly developer: Exact | undefined;
  /** Developer to one of base, as it went on the head. */
  readonly ratio: Exact | undefined;
  /** The place of the ratio or of the developer’s weight. */
  readonly ratioPlace: Place | undefined;
  /** Per cent of peroxide in what it held: ready for use. */
  readonly ready: Exact | undefined;
  /** Ratio and strength that the note means, where the scales, or a bowl it is taken out of, make them other ones. */
  readonly meant: { readonly ratio: Exact | undefined; readonly ready: Exact | undefined } | undefined;
  readonly about: boolean;
  /** What the scales said, where a `weighed` line stands: grams by portion label, and the total. */
  readonly weighed:
    | { readonly total: Exact; readonly place: Place; readonly parts: readonly { label: string; weight: Exact }[] }
    | undefined;
  /** Grams that this bowl really held: weighed where known, else as reckoned. */
  readonly mixed: Exact | undefined;
  /** What goes home is part of it. */
  readonly left:
    | { readonly weight: Exact; readonly fate: 'binned' | 'kept' | 'given' | undefined; readonly place: Place }
    | undefined;
  /** Taken out of it into other bowls. */
  readonly taken: Exact;
  /** Grams of this bowl and its further mixes together, where `more` made some: what is left belongs to all of them. */
  readonly mixedWithMore?: Exact;
  /** Mixed, less left, less taken. */
  readonly used: Exact | undefined;
  /** Exact minor units of everything in it (nothing counted twice); undefined when a price or weight is missing. */
  readonly cost: Exact | undefined;
  readonly again: { readonly visit: Stood<Visit>; readonly bowl: string; readonly share: Exact } | undefined;
  readonly problems: readonly BowlProblem[];
};

/** A time of day settled: minutes since midnight of the visit’s day; past midnight goes on from 1440. */
export type Minute = number;

export type ClockProblem = {
  readonly kind:
    | 'either-half-day'
    | 'outside-hours'
    | 'relative-without-on'
    | 'relative-to-several'
    | 'no-such-bowl'
    | 'bowl-unnamed'
    | 'off-before-on'
    | 'check-before-on'
    | 'no-off'
    | 'off-without-on'
    | 'sections-over'
    | 'said-minutes'
    | 'span-backwards';
  readonly place: Place;
  readonly message: string;
  readonly todo?: string;
  readonly also?: readonly { readonly place: Place; readonly says: string }[];
};

/** A look at the hair: when, and what was seen there. */
export type Looked = {
  readonly at: Minute | undefined;
  readonly seen: readonly Seen[];
  readonly place: Place;
  readonly about: boolean;
};

/** Heat put on a run: where its line stands, and what that says of it, words and remark. */
export type HeatOn = { readonly place: Place; readonly says: string };

/** A bowl put on a place, with a clock or without. */
export type PutOn = {
  /** As typed but in capitals; undefined when the line names none and several could be meant. */
  readonly bowl: string | undefined;
  /** '' when none was named. */
  readonly zone: string;
  /** `for 7min`: the time meant. */
  readonly meant: number | undefined;
  readonly checks: readonly Looked[];
  readonly onPlace: Place;
  readonly offPlace: Place | undefined;
  readonly about: boolean;
};

/** What the notes put on without a time of day: minutes alone, and no clock is made up for them. */
export type Unclocked = PutOn & {
  /** How long it was on, near end and far end; undefined where the notes give neither minutes nor a time. */
  readonly minutes: { readonly least: number; readonly most: number } | undefined;
  /** Pulled through for the last minutes of the bowl's own time. */
  readonly last: boolean;
};

/** One bowl on one zone (or on the whole head when no zone is named), from first on to off. */
/** Sections that came off while the rest stayed in. */
export type PartOff = {
  readonly minute: Minute;
  /** The last of them off, of a span; else the same minute. */
  readonly until: Minute;
  readonly sections: number;
  /** Sections placed there; undefined where they were not counted. */
  readonly placed: number | undefined;
  /** Of the run's sections the part that is off by then, from 0 to 1; undefined where that cannot be told. */
  readonly share: number | undefined;
  /** The `off` line's time. */
  readonly place: Place;
};

export type Run = PutOn & {
  readonly firstOn: Minute;
  readonly allOn: Minute;
  /** Whether the note gives a span: else all on is taken as first on. */
  readonly spanned: boolean;
  /** When it came off, its last section where they came off in order. */
  readonly off: Minute | undefined;
  /** Minutes from first on and from all on to off; of sections that came off in order, first to first and last to last. */
  readonly fromFirst: number | undefined;
  readonly fromAll: number | undefined;
  /** `off T 8min` beside a time on: how long it was on, from whichever minute its time counts. */
  readonly told: number | undefined;
  /**
   * Where the sections came off in the order they went on: when the first did, and the minutes of the shortest and the
   * longest. `untold`: which of them came off first is not known, so the longest was on for `most` at least, and the
   * shortest for `least` at most.
   */
  readonly sections:
    | { readonly firstOff: Minute; readonly least: number; readonly most: number; readonly untold?: true }
    | undefined;
  /** What came off before the rest did, in order of the clock, where anything did. */
  readonly partsOff?: readonly PartOff[];
  /** Minutes under heat. */
  readonly heat: number;
  /** The `heat` lines that were on it, and `dry` lines while it was on, where there are any. */
  readonly heats?: readonly HeatOn[];
};

export type ClockReckoned = {
  readonly runs: readonly Run[];
  /** What was put on for minutes without a clock, in order of the notes. */
  readonly unclocked: readonly Unclocked[];
  readonly looks: readonly Looked[];
  readonly problems: readonly ClockProblem[];
  /** First `on` to last `off`, minutes. */
  readonly span: number | undefined;
};

export type MoneyReckoned = {
  readonly currency: string | undefined;
  /** Minor units. */
  readonly items: readonly { readonly item: string; readonly amount: number; readonly place: Place }[];
  /** Items less discounts. */
  readonly charged: number;
  readonly discount: number;
  readonly claim: { readonly amount: number; readonly place: Place } | undefined;
  readonly paid: number;
  readonly depositTaken: number;
  readonly depositUsed: number;
  readonly depositReturned: number;
  /** To pay on the day: charged, and a deposit taken, less deposits used and returned. */
  readonly due: number;
  /** Products, minor units rounded once; undefined when a bowl has no cost. */
  readonly cost: number | undefined;
  readonly costMissing: readonly string[];
};

/** A product on one visit: grams mixed, used, left, and cost. */
export type ProductUse = {
  readonly product: string;
  readonly shade: string | undefined;
  readonly mixed: Exact;
  readonly used: Exact;
  readonly left: Exact;
  /** Of what has a price and a weight, exact minor units; undefined when none of it has both. */
  readonly cost: Exact | undefined;
  /** Some of it has no price, or no weight, and is not in `cost`. */
  readonly costMissing?: true;
  /** For goods sold by the piece the figures are pieces, not grams. */
  readonly pieces?: true;
};

/** One visit with everything worked out. */
/** A `reaction` line of a visit, with what was on. */
export type Reacted = {
  /** ISO date of the visit. */
  readonly date: string;
  readonly minute: Minute | undefined;
  /** The bowls it can have come of: those its line names, else all of the visit. */
  readonly bowls: readonly string[];
  /** Whether dye, and lightener, was in one of them; where no bowl is noted it may have been. */
  readonly dye: boolean;
  readonly lightener: boolean;
  readonly words: readonly string[];
  readonly says: string | undefined;
  readonly place: Place;
};

/** Hair that a bowl of a visit lightened. */
export type Lightening = {
  /** ISO date of the visit. */
  readonly when: string;
  /** None: all over. */
  readonly zones: readonly string[];
  readonly place: Place;
};

export type VisitReckoned = {
  readonly visit: Stood<Visit>;
  readonly client: ClientFile;
  readonly salon: SalonSettings;
  /** ISO date. */
  readonly date: string;
  /** Years old on the day; undefined without a full date of birth. A month or year alone gives the youngest it can be. */
  readonly age: number | undefined;
  readonly bowls: readonly BowlReckoned[];
  readonly clock: ClockReckoned;
  readonly money: MoneyReckoned;
  readonly uses: readonly ProductUse[];
  readonly daysSinceColour: number | undefined;
  readonly daysSinceRoots: number | undefined;
  /** Millimetres of new growth since the last root service, at the client’s own rate where measured. */
  readonly growth: {
    readonly expected: Exact | undefined;
    readonly rate: Exact;
    readonly own: boolean;
    readonly measured: Exact | undefined;
  };
  /** The reactions noted at it and at the visits before, oldest first. */
  readonly reacted: readonly Reacted[];
  /** What was lightened at it and at the visits before, newest first; of equal places the newest two days. */
  readonly lightenings: readonly Lightening[];
};

/** The facts of one word, in order. */
export type FactsOf<W extends VisitFact['word']> = Extract<VisitFact, { word: W }>;

import type { Shared } from '../journal/join.ts';
import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import type { BowlProblem, ClockProblem, VisitReckoned } from '../reckon/model.ts';
import type { SkinTestStatus } from '../reckon/testing/skin-test.ts';
import type { HandOn } from '../reckon/timing/hands.ts';
import type { VisitFact } from '../records/schema/entry.ts';
import type { Figures, Mend, SecondPlace, Severity, UnplacedFinding } from '../text/finding.ts';
import type { Sentence } from '../text/sentence.ts';
import type { Place } from '../text/span.ts';
import type { CautionTopic } from '../trade/cautions.ts';
import type { Kind } from '../trade/kinds.ts';
import type { ReasonWords } from './reason-words.ts';

/** What a rule is about, for the list that `explain` prints. Each family is a folder. */
export const FAMILIES = [
  'reading',
  'typing',
  'names',
  'mix',
  'strength',
  'time',
  'lift',
  'grey',
  'tone',
  'result',
  'overlap',
  'condition',
  'interval',
  'dose',
  'testing',
  'cautions',
  'age',
  'placement',
  'order',
  'shelf',
  'promise',
  'money',
] as const;

export type Family = (typeof FAMILIES)[number];

/** Where a rule's claim comes from. */
export type RuleSource =
  | { readonly kind: 'published'; readonly cites: string }
  | { readonly kind: 'common practice' }
  | { readonly kind: 'from memory' }
  | { readonly kind: 'shelf'; readonly cites: string }
  | { readonly kind: 'policy'; readonly cites: string }
  | { readonly kind: 'notation' };

/** What a rule found: where, and the wording made from its figures. */
export type Found = {
  readonly place: Place;
  /** Figures first, one sentence, 90 characters where it can be. */
  readonly message: Sentence;
  /** What was expected, and from where. */
  readonly expected?: Sentence;
  /** One thing to type or do, as a statement. */
  readonly todo?: Sentence;
  readonly label?: string;
  /** The figures in the message, as values: what reads the JSON reads no sentence. */
  readonly figures?: Figures;
  readonly also?: readonly SecondPlace<Place>[];
  readonly mend?: Mend<Place>;
  /** Where a rule's gravity depends on the case. */
  readonly severity?: Severity;
  /** Where another caution than the rule's own fits the case; `false` where none is true of it. */
  readonly caution?: CautionTopic | false;
};

/** What a rule finds nearly everywhere, made once. */
export const NONE: readonly Found[] = [];

/** What is found in some things, one by one. */
export const foundEach = <T>(all: readonly T[], findIn: (one: T) => Found | undefined): readonly Found[] => {
  let every: Found[] | undefined;
  for (const one of all) {
    const found = findIn(one);
    if (found === undefined) continue;
    if (every === undefined) every = [found];
    else every.push(found);
  }
  return every ?? NONE;
};

/**
 * Whether what a rule finds hurts now, and so stands before what the client is to be told first. A `stop` does: `always`,
 * where hair, skin or the notes are still as it says; on `that-day` alone, where it is about what a visit did and the
 * visit is over; `never`, where it is about figures or typing, which hurt nobody. `till-answered` stands there whatever its
 * gravity and its day, until a line of its own answers it.
 */
export const BEARINGS = ['till-answered', 'always', 'that-day', 'never'] as const;

export type Bearing = (typeof BEARINGS)[number];

type Base = {
  readonly name: string;
  readonly family: Family;
  readonly severity: Severity;
  /** Whether what it finds bears on later days than that of the visit. */
  readonly bears: Bearing;
  /** What fires it, in one sentence. */
  readonly what: string;
  /** One sentence of at most 140 characters: why it matters. */
  readonly why: string;
  readonly source: RuleSource;
  /** The caution shown with it, where someone could be hurt. */
  readonly caution?: CautionTopic;
  /** Words of reason that the remark of its own line may hold instead of a `because`: for `fix` and `mind`, never for a `stop`. */
  readonly accepts?: ReasonWords;
  /** A whole small journal that fires this rule and no other; `^^^` under the characters of the finding. */
  readonly bad: string;
  /** The same journal put right: nothing fires. */
  readonly good: string;
  /** The bytes of a bad example that plain text cannot hold, made from `bad` without its carets. */
  readonly badBytes?: (text: string) => Uint8Array;
};

/** Every client's visits worked out, by the client's name, oldest first. */
export type Reckoned = ReadonlyMap<string, readonly VisitReckoned[]>;

/** What lies beside a visit while rules look at it. */
export type Desk = {
  readonly journal: Journal;
  /** The day the check is made for, where one is given. */
  readonly on: string | undefined;
  /** The client's visits before this one, oldest first: the same list all along, which grows as one visit after another is done. */
  readonly earlier: readonly VisitReckoned[];
  /** All of the client's visits, oldest first. */
  readonly visits: readonly VisitReckoned[];
};

/** Whether what would be found in a visit is none. */
type Unless = (visit: VisitReckoned, desk: Desk) => boolean;

/** What the reckoning of bowls and clock may be unable to settle. */
export type ProblemKind = BowlProblem['kind'] | ClockProblem['kind'];

/**
 * What a visit has to have for a rule to find anything there: a line of one of some words, and one of some kinds in its
 * bowls. The engine asks no rule of a visit that has not.
 */
export type LooksAt = {
  readonly words?: readonly VisitFact['word'][];
  readonly kinds?: readonly Kind[];
};

/** What a rule finds in one visit. */
export type VisitCheck = (visit: VisitReckoned, desk: Desk) => Iterable<Found>;

/** What a rule finds in everything noted of one client. */
export type ClientCheck = (
  client: ClientFile,
  visits: readonly VisitReckoned[],
  journal: Journal,
  on: string | undefined,
) => Iterable<Found>;

/**
 * A rule: facts and examples, and what it looks at, which is what makes it run again. One that is `reading` is found
 * while the line is read; one over an `entry` sees its lines alone; one over a `visit` is given what came before it; one over a `problem` takes what the reckoning of
 * bowls and clock could not settle, by its kind, and one over a `skin test` how the test of what was put on stands; one over the `shelf` is given what all share, salons,
 * stylists, shelf and stock, and no client; one over `shelf and clients` finds the same thing there and in what is noted
 * of one client; one over a `day` sees what hands did on all heads of one date, in order of the clock; one over `findings`
 * sees what the others found in a client's notes.
 */
export type Rule =
  | (Base & { readonly over: 'reading' })
  | (Base & { readonly over: 'entry'; readonly check: (stood: Stood, lines: readonly string[]) => Iterable<Found> })
  | (Base & {
      readonly over: 'visit';
      /** Without it the rule is asked of every visit. */
      readonly looksAt?: LooksAt;
      readonly check: VisitCheck;
    })
  | (Base & {
      readonly over: 'problem';
      readonly kinds: readonly ProblemKind[];
      readonly unless?: Unless;
      /** What it makes of those of one visit, where that is not one finding each. */
      readonly found?: (all: readonly Found[], desk: Desk) => readonly Found[];
    })
  | (Base & {
      readonly over: 'skin test';
      readonly stands: readonly SkinTestStatus[];
      /** What to do about it, where the standing itself does not say. */
      readonly todo: string;
      readonly unless?: Unless;
    })
  | (Base & { readonly over: 'client'; readonly check: ClientCheck })
  | (Base & {
      readonly over: 'shelf and clients';
      readonly shared: (shared: Shared) => Iterable<Found>;
      readonly check: ClientCheck;
    })
  | (Base & {
      readonly over: 'findings';
      readonly check: (client: ClientFile, found: readonly UnplacedFinding[]) => Iterable<Found>;
    })
  | (Base & { readonly over: 'day'; readonly check: (hands: readonly HandOn[]) => Iterable<Found> })
  | (Base & { readonly over: 'shelf'; readonly check: (shared: Shared) => Iterable<Found> });

/** Names a rule's type where it is written. */
export const defineRule = <R extends Rule>(rule: R): R => rule;

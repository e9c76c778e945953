import type { ClientFile, Journal } from '../journal/journal.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { Mend, SecondPlace, Severity } from '../text/finding.ts';
import type { Place } from '../text/span.ts';

/** What a rule is about, for the list that `explain` prints. */
export type Family =
  | 'reading'
  | 'mix'
  | 'strength'
  | 'time'
  | 'lift'
  | 'tests'
  | 'cautions'
  | 'age'
  | 'order'
  | 'names'
  | 'money'
  | 'typing';

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
  readonly message: string;
  /** What was expected, and from where. */
  readonly expected?: string;
  /** One thing to type or do, as a statement. */
  readonly todo?: string;
  readonly label?: string;
  readonly also?: readonly SecondPlace[];
  readonly mend?: Mend;
  /** Where a rule's gravity depends on the case. */
  readonly severity?: Severity;
};

type Base = {
  readonly name: string;
  readonly family: Family;
  readonly severity: Severity;
  /** One sentence of at most 140 characters: why it matters. */
  readonly why: string;
  readonly source: RuleSource;
  /** The caution shown with it, a topic of trade/cautions.ts, where someone could be hurt. */
  readonly caution?: string;
  /** A whole small journal that fires this rule and no other; `^^^` under the characters of the finding. */
  readonly bad: string;
  /** The same journal put right: nothing fires. */
  readonly good: string;
};

/** A rule: facts and examples, and what it looks at. One that is `reading` is found while the line is read. */
export type Rule =
  | (Base & { readonly over: 'reading' })
  | (Base & { readonly over: 'visit'; readonly check: (visit: VisitReckoned, journal: Journal) => Iterable<Found> })
  | (Base & {
      readonly over: 'client';
      readonly check: (client: ClientFile, visits: readonly VisitReckoned[], journal: Journal) => Iterable<Found>;
    })
  | (Base & { readonly over: 'journal'; readonly check: (journal: Journal) => Iterable<Found> });

/** Names a rule's type where it is written. */
export const defineRule = <R extends Rule>(rule: R): R => rule;

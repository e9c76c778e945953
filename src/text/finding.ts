import type { Edit } from './edit.ts';
import type { Sentence } from './sentence.ts';
import type { FilePlace, Place } from './span.ts';

/**
 * How much a finding matters. `stop`: someone could be hurt, or a number is impossible. `fix`: the note contradicts
 * itself or lacks what it needs. `mind`: worth a thought.
 */
export type Severity = 'stop' | 'fix' | 'mind';

export const SEVERITIES: readonly Severity[] = ['stop', 'fix', 'mind'];

/** A change that would mend a finding. `certain` cannot change what the note means; `likely` is offered only. */
export type Mend<P = FilePlace> = {
  readonly title: string;
  readonly edits: readonly Edit<P>[];
  readonly sure: 'certain' | 'likely';
};

/**
 * The figures of a finding, by names that end in what they are counted in: `Ratio` (developer to one), `Percent`, `Grams`,
 * `Minutes`, `Money` (minor units).
 */
export type Figures = Readonly<Record<string, number>>;

/** Another place that a finding points to, and three or four words on what stands there. */
export type SecondPlace<P = FilePlace> = { readonly place: P; readonly says: string };

/**
 * One thing the compiler found in the notes. The same object serves the terminal, the pages, JSON and the editor.
 * `message` is one sentence with the figures in it; `expected` says what was expected and from where; `todo` says
 * what to type or do; `caution` stands only where someone could be hurt.
 */
export type Finding = Told<FilePlace, string>;

/** A finding as it is kept: true wherever its entries stand, and in no file yet. */
export type UnplacedFinding = Told<Place, Sentence>;

type Told<P, S> = {
  readonly rule: string;
  /** What stays the same of it while lines move and figures change: the rule, the entry, the line’s word and its bowls. */
  readonly key: string;
  readonly severity: Severity;
  readonly place: P;
  readonly message: S;
  readonly expected?: S;
  readonly todo?: S;
  readonly caution?: string;
  readonly label?: string;
  /** The figures in its sentence as values, where the rule gives them. */
  readonly figures?: Figures;
  readonly also?: readonly SecondPlace<P>[];
  readonly mend?: Mend<P>;
  /** The client whose notes this is about, where there is one. */
  readonly client?: string;
  /** The reason given by a `because` line on the same entry. */
  readonly reason?: string;
};

const rank = (severity: Severity): number => SEVERITIES.indexOf(severity);

/** Order of report: by file, line, place in the line, then the graver first, then by rule name. */
export const compareFindings = (a: Finding, b: Finding): number =>
  (a.place.file < b.place.file ? -1 : a.place.file > b.place.file ? 1 : 0) ||
  a.place.line - b.place.line ||
  a.place.at - b.place.at ||
  rank(a.severity) - rank(b.severity) ||
  (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0);

/** Whether two lists hold the very same findings, in the same order. */
export const sameFindings = (a: readonly Finding[], b: readonly Finding[]): boolean =>
  a.length === b.length && a.every((finding, index) => finding === b[index]);

import type { Source } from '../journal/source.ts';
import { type Files, inWords, rowOf, whereIs } from '../journal/where.ts';
import type { Finding, UnplacedFinding } from '../text/finding.ts';
import type { Sentence } from '../text/sentence.ts';
import type { Line } from '../text/span.ts';

/**
 * Findings in their files as they stand now, their sentences in full: for whoever prints.
 *
 * Reads: findings, and where entries stand. Gives: the same findings with lines of files. Runs again: when a line that
 * they name moved.
 */
export const placed = (files: Files, finding: UnplacedFinding): Finding => {
  const { place, message, expected, todo, also, mend, ...rest } = finding;
  return {
    ...rest,
    place: whereIs(files, place),
    message: inWords(files, message),
    ...(expected !== undefined && { expected: inWords(files, expected) }),
    ...(todo !== undefined && { todo: inWords(files, todo) }),
    ...(also !== undefined && { also: also.map((one) => ({ ...one, place: whereIs(files, one.place) })) }),
    ...(mend !== undefined && {
      mend: { ...mend, edits: mend.edits.map((edit) => ({ ...edit, place: whereIs(files, edit.place) })) },
    }),
  };
};

const cited = (said: Sentence | undefined): readonly Line[] => (typeof said === 'object' ? said.lines : []);

/** Every line that a finding names. */
const linesOf = ({ place, message, expected, todo, also = [], mend }: UnplacedFinding): readonly Line[] => [
  place,
  ...also.map((one) => one.place),
  ...(mend?.edits ?? []).map((edit) => edit.place),
  ...[message, expected, todo].flatMap(cited),
];

/** Some findings as they stand, with what they were placed by. */
export type Placed = {
  readonly findings: readonly Finding[];
  /** Finding by finding the lines it names, and where in their files they are. */
  readonly lines: readonly (readonly Line[])[];
  readonly rows: readonly (readonly number[])[];
  /** The files that they stand in, as they were. */
  readonly sources: ReadonlyMap<string, Source | undefined>;
};

const NOTHING: Placed = { findings: [], lines: [], rows: [], sources: new Map() };

const isCurrent = ({ sources }: Files, before: Placed): boolean => {
  for (const [path, source] of before.sources) if (sources.get(path) !== source) return false;
  return true;
};

/**
 * Places some findings. `before`: the very same ones as they were placed before; those of which no line moved are the
 * same objects again, and the list is the same one where that is so of all.
 */
export const placedAgain = (files: Files, found: readonly UnplacedFinding[], before: Placed | undefined): Placed => {
  if (found.length === 0) return NOTHING;
  if (before !== undefined && isCurrent(files, before)) return before;
  const lines = before?.lines ?? found.map(linesOf);
  const rows = lines.map((own) => own.map((line) => rowOf(files, line)));
  const sources = new Map(lines.flat().map(({ in: { file } }) => [file, files.sources.get(file)]));
  const isUnmoved = rows.map((own, index) => {
    const were = before?.rows[index];
    return were !== undefined && own.every((row, at) => row === were[at]);
  });
  if (before !== undefined && isUnmoved.every(Boolean)) return { ...before, sources };
  const findings = found.map((finding, index) =>
    isUnmoved[index] === true ? (before?.findings[index] as Finding) : placed(files, finding),
  );
  return { findings, lines, rows, sources };
};

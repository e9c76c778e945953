import type { Standing, Stood } from '../journal/source.ts';
import type { Files } from '../journal/where.ts';
import { standingOf } from '../journal/where.ts';
import type { Finding } from '../text/finding.ts';
import { codeSpan, escapeSaid } from './escape.ts';
import { quote, spaced } from './noted.ts';

/** Each finding once: an answered `stop` is handed over both among the findings and among the answered ones. */
export const eachOnce = (findings: readonly Finding[]): readonly Finding[] => [...new Set(findings)];

/** Whether a finding points into an entry. */
export const pointsInto = (files: Files, { place }: Finding, stood: Stood): boolean => {
  if (place.file !== stood.file) return false;
  const { start, end } = standingOf(files, stood);
  return place.line >= start && place.line < end;
};

/** Which of some entries a finding points into; asked of many findings. Entries have no line in common. */
export const entryAt = <S extends Stood>(files: Files, stoods: readonly S[]): ((finding: Finding) => S | undefined) => {
  const byFile = new Map<string, S[]>();
  for (const stood of stoods) {
    const same = byFile.get(stood.file);
    if (same === undefined) byFile.set(stood.file, [stood]);
    else same.push(stood);
  }
  const inOrder = new Map<string, readonly (Standing & { readonly stood: S })[]>();
  // Asked of files with a finding alone: a planned visit stands in none.
  const standingIn = (file: string): readonly (Standing & { readonly stood: S })[] => {
    let some = inOrder.get(file);
    if (some === undefined) {
      some = (byFile.get(file) ?? []).map((stood) => ({ ...standingOf(files, stood), stood }));
      some = some.toSorted((a, b) => a.start - b.start);
      inOrder.set(file, some);
    }
    return some;
  };
  return (finding) => {
    const { file, line } = finding.place;
    const some = standingIn(file);
    let [low, high] = [0, some.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((some[middle]?.end ?? 0) <= line) low = middle + 1;
      else high = middle;
    }
    const at = some[low];
    return at !== undefined && line >= at.start ? at.stood : undefined;
  };
};

/** Which findings point into an entry, in their order; asked of many entries. */
export const findingsByEntry = (files: Files, findings: readonly Finding[]): ((stood: Stood) => readonly Finding[]) => {
  const byFile = new Map<string, Map<number, Finding[]>>();
  for (const finding of findings) {
    const { file, line } = finding.place;
    const lines = byFile.get(file) ?? new Map<number, Finding[]>();
    byFile.set(file, lines);
    const same = lines.get(line);
    if (same === undefined) lines.set(line, [finding]);
    else same.push(finding);
  }
  const order = new Map(findings.map((finding, index) => [finding, index]));
  return (stood) => {
    const lines = byFile.get(stood.file);
    const found: Finding[] = [];
    if (lines === undefined) return found;
    const { start, end } = standingOf(files, stood);
    for (let at = start; at < end; at++) for (const one of lines.get(at) ?? []) found.push(one);
    return found.sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0));
  };
};

const label = ({ severity, reason }: Finding): string =>
  `**${severity}${reason === undefined ? '' : ', reason given'}**`;

const reasonText = ({ reason }: Finding): string | undefined =>
  reason === undefined ? undefined : `The note gives the reason: ${quote(reason)}.`;

/** A finding as one list item: how grave, the figures, what was expected, what to do, the caution, its rule. */
export const findingItem = (finding: Finding): string => {
  const { rule, message, expected, todo, caution, reason } = finding;
  return spaced([
    `- ${label(finding)}`,
    escapeSaid(message),
    reasonText(finding),
    expected && escapeSaid(expected),
    reason === undefined && todo !== undefined && escapeSaid(todo),
    caution && escapeSaid(caution),
    codeSpan(rule),
  ]);
};

/** A finding in short, for the alerts: the visit it stands in says the rest, and the cautions stand below. */
export const findingInShort = (finding: Finding, of: string | undefined): string =>
  spaced([
    `- ${label(finding)}`,
    of && `${of}:`,
    escapeSaid(finding.message),
    reasonText(finding),
    codeSpan(finding.rule),
  ]);

/** A finding on a visit that is not begun: how grave, the figures and what was expected; there is nothing to type yet. */
export const findingAhead = (finding: Finding): string =>
  spaced([
    `- ${label(finding)}`,
    escapeSaid(finding.message),
    finding.expected && escapeSaid(finding.expected),
    codeSpan(finding.rule),
  ]);

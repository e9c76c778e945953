import type { Stood } from '../journal/source.ts';
import type { Finding } from '../text/finding.ts';
import { codeSpan, escapeSaid } from './escape.ts';
import { quote, spaced } from './noted.ts';

/** Each finding once: an answered `stop` is handed over both among the findings and among the answered ones. */
export const eachOnce = (findings: readonly Finding[]): readonly Finding[] => [...new Set(findings)];

/** Whether a finding points into an entry. */
export const pointsInto = ({ place }: Finding, { file, line, end }: Stood): boolean =>
  place.file === file && place.line >= line && place.line < end;

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

import type { ClientFile, Journal } from '../journal/journal.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { type Finding, SEVERITIES } from '../text/finding.ts';
import { bowlLine, bowlsInOrder, bowlTerm } from './bowl-line.ts';
import { factsIn, notedOf, VISIT_PARTS, visitBlocks } from './card-visit.ts';
import { dayText } from './days.ts';
import { codeSpan, escapeText } from './escape.ts';
import type { Sheet } from './figures/sheet.ts';
import { findingsByEntry } from './finding-lines.ts';
import { EARLIER_HEADING } from './headings.ts';
import { newsByDate } from './news.ts';
import { commas, joined, stylistName } from './noted.ts';
import { VISIT_LABELS, visitPhrase } from './visit-lines.ts';

/**
 * The visits of a long history: the newest stand on the card in full, those before them in a line each, a fold a year;
 * in full they stand on a page a year.
 */

/** Visits that stand on a card in full; of a client with more, the newest. */
export const MOST_IN_FULL = 30;

/** Visits, oldest first, that a card without `last` does not hold in full. */
export const earlierOf = (reckoned: readonly VisitReckoned[]): readonly VisitReckoned[] =>
  reckoned.slice(0, Math.max(0, reckoned.length - MOST_IN_FULL));

const yearOf = ({ date }: VisitReckoned): string => date.slice(0, 4) || 'undated';

/** The years of a client's earlier visits, oldest first, each with its visits, oldest first. */
export const earlierYears = (
  reckoned: readonly VisitReckoned[],
): ReadonlyMap<string, readonly [VisitReckoned, ...VisitReckoned[]]> => {
  const years = new Map<string, [VisitReckoned, ...VisitReckoned[]]>();
  for (const visit of earlierOf(reckoned)) {
    const year = yearOf(visit);
    const some = years.get(year);
    if (some === undefined) years.set(year, [visit]);
    else some.push(visit);
  }
  return years;
};

const countText = (findings: readonly Finding[]): string =>
  commas(
    SEVERITIES.map((severity) => {
      const count = findings.filter((one) => one.severity === severity && one.reason === undefined).length;
      return count > 0 && `${count} ${severity}`;
    }),
  );

/** A visit in a line: what went wrong first, then what was done. */
const visitLine = (journal: Journal, visit: VisitReckoned, findings: readonly Finding[]): string => {
  const noted = notedOf({ journal, visit });
  const by = visit.visit.entry.by;
  const said = (words: Parameters<typeof factsIn>[1]): string[] =>
    factsIn(visit, words).map((fact) => joined([VISIT_LABELS[fact.word].toLowerCase(), visitPhrase(noted, fact)], ' '));
  const bowls = bowlsInOrder(visit).map((bowl) => `${bowlTerm(bowl)} ${bowlLine(bowl)}`);
  const what = joined(
    [
      countText(findings),
      ...said(VISIT_PARTS.alarms),
      ...said(['aim', 'redo']),
      ...bowls,
      ...said(['result', 'unread']),
    ],
    '; ',
  );
  const day = dayText(visit.date);
  return joined([`- **${day}**`, by && `by ${stylistName(journal, by)}`, what], ' ');
};

const counted = (count: number): string => `${count} ${count === 1 ? 'visit' : 'visits'}`;

/**
 * Earlier visits as blocks of Markdown, a line a visit and a heading a year, newest first. `linkOf` gives the address of
 * a year's page where there are such pages; else it is said what to type for all in full.
 */
export const earlierBlocks = (
  journal: Journal,
  client: ClientFile,
  reckoned: readonly VisitReckoned[],
  findings: readonly Finding[],
  linkOf: ((year: string) => string) | undefined,
): string[] => {
  const years = [...earlierYears(reckoned)].reverse();
  if (years.length === 0) return [];
  const ofEntry = findingsByEntry(journal, findings);
  const count = counted(earlierOf(reckoned).length);
  const whole =
    linkOf === undefined
      ? `in full: ${codeSpan(`bowlbook card ${client.name} --last ${reckoned.length}`)}`
      : 'in full on the page of their year';
  return [
    `## ${EARLIER_HEADING}`,
    `${count} before those above, in a line each; ${whole}.`,
    ...years.flatMap(([year, visits]) => [
      `### ${year}`,
      ...(linkOf === undefined ? [] : [`[${counted(visits.length)} of ${year} in full](${linkOf(year)})`]),
      visits
        .toReversed()
        .map((visit) => visitLine(journal, visit, ofEntry(visit.visit)))
        .join('\n'),
    ]),
  ];
};

/** The page of a year of a client's earlier visits as Markdown, newest first; undefined for a year without any. */
export const yearMarkdown = (
  journal: Journal,
  client: ClientFile,
  reckoned: readonly VisitReckoned[],
  findings: readonly Finding[],
  { year, sheet }: { readonly year: string; readonly sheet: Sheet },
): string | undefined => {
  const visits = earlierYears(reckoned).get(year);
  if (visits === undefined) return undefined;
  const news = newsByDate(reckoned);
  const ofEntry = findingsByEntry(journal, findings);
  const from = reckoned.indexOf(visits[0]);
  const parts = visits
    .map((visit, index) => ({ visit, earlier: reckoned.slice(0, from + index) }))
    .reverse()
    .flatMap(({ visit, earlier }) =>
      visitBlocks({
        journal,
        visit,
        news: news.get(visit.date) ?? [],
        findings: ofEntry(visit.visit),
        money: false,
        earlier,
        sheet,
      }),
    );
  return `${[
    `# ${escapeText(client.full)}`,
    `${counted(visits.length)} of ${year}. What to know before touching the hair stands on the card.`,
    `## Visits of ${year}`,
    ...parts,
  ].join('\n\n')}\n`;
};

import type { Journal } from '../journal/journal.ts';
import { liftOf } from '../reckon/lift/series.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { knownCost } from '../reckon/money/charges.ts';
import { listed } from '../reckon/say.ts';
import type { VisitFact } from '../records/schema/entry.ts';
import type { Name } from '../records/schema/values.ts';
import type { Finding } from '../text/finding.ts';
import { bowlsInOrder } from './bowl-line.ts';
import { bowlTable } from './bowls-table.ts';
import { clockBlocks } from './clock-table.ts';
import { dayText } from './days.ts';
import { dueText } from './due.ts';
import { escapeText } from './escape.ts';
import { liftFigure } from './figures/lift-panels.ts';
import { placementFigure } from './figures/placement-figure.ts';
import type { Sheet } from './figures/sheet.ts';
import { swatchFigure } from './figures/swatches.ts';
import { timeline } from './figures/timeline.ts';
import { findingItem } from './finding-lines.ts';
import { liftItems } from './lift-lines.ts';
import { minorText } from './money-words.ts';
import { type News, newsItem } from './news.ts';
import { bowlName, commas, endOf, joined, type Noted, quote, stylistName } from './noted.ts';
import { placementItems } from './placement-lines.ts';
import { timeText } from './say-numbers.ts';
import { shelfTimeItems } from './shelf-times.ts';
import { VISIT_LABELS, visitItem, visitPhrase } from './visit-lines.ts';

type Word = VisitFact['word'];

/** The words of a visit by the part of the card that shows them; `bowl` to `more` and the clock have tables besides. */
export const VISIT_PARTS = {
  alarms: ['reaction', 'stopped', 'declined', 'caution'],
  before: ['redo', 'about', 'asked', 'aim', 'want', 'start', 'regrowth', 'test', 'zone'],
  mixes: ['bowl', 'plus', 'weighed', 'again', 'more'],
  places: ['place', 'leave'],
  clock: ['zero', 'on', 'check', 'off'],
  steps: ['heat', 'wash', 'rinse', 'dry', 'cut'],
  after: ['left', 'home', 'result', 'call', 'photo', 'care', 'note', 'fit'],
  money: ['charge', 'deposit', 'paid', 'split'],
  next: ['next', 'hold', 'because', 'unread'],
} as const satisfies Readonly<Record<string, readonly Word[]>>;

export type VisitView = {
  readonly journal: Journal;
  readonly visit: VisitReckoned;
  /** What later visits say about this one. */
  readonly news: readonly News[];
  /** Findings that point into this visit. */
  readonly findings: readonly Finding[];
  readonly money: boolean;
  /** The client's visits before it, oldest first. */
  readonly earlier: readonly VisitReckoned[];
  /** Takes the figures of a page that has some. */
  readonly sheet: Sheet;
};

export const notedOf = ({ journal, visit }: Pick<VisitView, 'journal' | 'visit'>): Noted => ({
  journal,
  salon: visit.salon,
  stood: visit.visit,
});

export const factsIn = (visit: VisitReckoned, words: readonly Word[]): VisitFact[] =>
  words.flatMap((word) => visit.visit.entry.facts.filter((fact) => fact.word === word));

const items = (view: VisitView, words: readonly Word[]): string[] =>
  factsIn(view.visit, words).map((fact) => visitItem(notedOf(view), fact));

/** Several short lines as one item: `Steps: rinse 15:20–15:24; wash 15:24, clarify`. */
const oneItem = (view: VisitView, label: string, words: readonly Word[]): string[] => {
  const facts = factsIn(view.visit, words).sort((a, b) => a.line - b.line);
  if (facts.length === 0) return [];
  const said = facts.map((fact) =>
    `${VISIT_LABELS[fact.word].toLowerCase()} ${visitPhrase(notedOf(view), fact)}`.trim(),
  );
  return [`- **${label}** ${said.join('; ')}`];
};

/** Whether the bowl’s table says what its line says. */
const isInTable = ({ bowls }: VisitReckoned, bowl: Name): boolean => {
  const found = bowls.find(({ name }) => name === bowl.name.toUpperCase());
  return found !== undefined && found.portions.length > 0 && found.shownTotal !== undefined;
};

/** A line of a mix as a list item: only its end where a table says the rest, nothing where that is empty. */
const mixItems = (noted: Noted, visit: VisitReckoned, fact: VisitFact): string[] => {
  if ((fact.word !== 'bowl' && fact.word !== 'plus') || !isInTable(visit, fact.bowl)) return [visitItem(noted, fact)];
  const end = endOf(noted.journal, fact);
  return end === '' ? [] : [`- **${VISIT_LABELS[fact.word]}** ${bowlName(fact.bowl)}${end}`];
};

/** The mixes of a visit: a table a bowl, then what the tables do not hold. */
export const mixBlocks = (view: VisitView): string[] => {
  const noted = notedOf(view);
  const tables = bowlsInOrder(view.visit).map((bowl) => bowlTable(noted, bowl, view.money));
  const rest = factsIn(view.visit, VISIT_PARTS.mixes).flatMap((fact) => mixItems(noted, view.visit, fact));
  return [...tables, ...asBlock(rest)];
};

const asBlock = (lines: readonly string[]): string[] => (lines.length === 0 ? [] : [lines.join('\n')]);

const headingOf = ({ journal, visit }: VisitView): string => {
  const { entry } = visit.visit;
  const time = entry.time && timeText(entry.time, visit.salon.hours);
  const by = entry.by && stylistName(journal, entry.by);
  const at = journal.salons.size > 1 && visit.salon.full ? escapeText(visit.salon.full) : undefined;
  return `### ${joined([commas([dayText(visit.date), time]), by, at], ' · ')}`;
};

/** `2.16 GBP, and more for neon-teal, …`: what is known of the cost, and of what it is not all. */
const costText = (visit: VisitReckoned): string => {
  const { cost, costMissing, currency } = visit.money;
  if (cost !== undefined) return minorText(cost, currency);
  const known = knownCost(visit);
  const unknown = listed(costMissing.map(escapeText));
  return known === 0
    ? 'not known'
    : `${minorText(known, currency)}, and more for ${unknown}, where a price or a weight is missing`;
};

const moneyItem = (view: VisitView): string[] => {
  const cost = view.money && costText(view.visit);
  return [...oneItem(view, 'Money', VISIT_PARTS.money), ...(cost === false ? [] : [`- **Products used up** ${cost}`])];
};

const nextItems = (view: VisitView): string[] => {
  const due = dueText(view.visit);
  return [...items(view, VISIT_PARTS.next), ...(due === undefined ? [] : [`- **Due** ${due}`])];
};

const findingItems = (findings: readonly Finding[], stops: boolean): string[] =>
  findings.filter(({ severity }) => (severity === 'stop') === stops).map(findingItem);

/** The lift and the colours: drawn on a page with figures, where each figure holds the same words; else in words. */
const courseBlocks = ({ visit, sheet }: VisitView): string[] => {
  const drawn = sheet([(id) => liftFigure(id, liftOf(visit)), (id) => swatchFigure(id, visit)]);
  return drawn.length > 0 ? drawn : asBlock(liftItems(visit));
};

/** One visit as blocks of Markdown under a heading of its own. What went wrong stands first. */
export const visitBlocks = (view: VisitView): string[] => {
  const { visit, journal, news, findings } = view;
  const { says } = visit.visit.entry;
  return [
    headingOf(view),
    ...asBlock([...items(view, VISIT_PARTS.alarms), ...findingItems(findings, true)]),
    ...asBlock([
      ...(says === undefined ? [] : [`- **Remark** ${quote(says.text)}`]),
      ...items(view, VISIT_PARTS.before),
    ]),
    ...mixBlocks(view),
    ...asBlock([...items(view, VISIT_PARTS.places), ...placementItems(visit)]),
    ...view.sheet([(id) => placementFigure(id, visit)]),
    ...clockBlocks(notedOf(view), visit),
    ...asBlock(shelfTimeItems(visit, view.earlier)),
    ...view.sheet([(id) => timeline(id, visit, view.earlier)]),
    ...courseBlocks(view),
    ...asBlock([
      ...oneItem(view, 'Steps', VISIT_PARTS.steps),
      ...items(view, VISIT_PARTS.after),
      ...news.map((one) => newsItem(journal, one)),
      ...moneyItem(view),
      ...nextItems(view),
    ]),
    ...asBlock(findingItems(findings, false)),
  ];
};

import type { ClientFile, Journal } from '../journal/journal.ts';
import { awaitedOn } from '../reckon/ahead/awaited.ts';
import { plannedIn } from '../reckon/ahead/due-window.ts';
import { type Plan, plansFor, planVisit } from '../reckon/ahead/plan.ts';
import { type AskedVisit, askedVisit } from '../reckon/ahead/service-asked.ts';
import { ageOf } from '../reckon/client/state.ts';
import type { SalonMix } from '../reckon/forecast/forecast.ts';
import { type LiftSeries, liftOf } from '../reckon/lift/series.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { clockText } from '../text/dates.ts';
import type { Finding } from '../text/finding.ts';
import { alertBlocks } from './alerts.ts';
import { bowlLine, bowlsInOrder } from './bowl-line.ts';
import { factsIn, mixBlocks, notedOf, type VisitView } from './card-visit.ts';
import { cautionBlocks } from './caution-block.ts';
import { clientItem } from './client-lines.ts';
import { remarkItems } from './clock-remarks.ts';
import { dayText, timeBetween } from './days.ts';
import { escapeText } from './escape.ts';
import { placementFigure } from './figures/placement-figure.ts';
import { noFigures, type Sheet } from './figures/sheet.ts';
import { clientLines, type HeadView, listOf, notedIn, salonOfHead } from './head-view.ts';
import { WORKED_HEADING } from './headings.ts';
import { growthItem, lastColourOf, outcome, wishItems } from './last-colour.ts';
import { liftItems } from './lift-lines.ts';
import { bowlName, commas, joined, stylistName } from './noted.ts';
import { aheadBlocks, aheadOf } from './prep-ahead.ts';
import { planBlocks, workedItems } from './prep-bowls.ts';
import { fillInBlocks, ownClockBlocks, paceItems } from './prep-checks.ts';
import { compareBlocks, compareItems, ruledOutItems } from './prep-compare.ts';
import { promiseBlocks } from './prep-promises.ts';
import { timeText } from './say-numbers.ts';
import { standingTable } from './skin-tests.ts';
import { visitItem } from './visit-lines.ts';

/** The sheet beside the trolley: what to know, what to mix, where it goes and what to look at on one day. */

export type PrepOptions = {
  /** The day of the visit, `YYYY-MM-DD`. */
  readonly on: string;
  /** What the salon's bowls before the day teach of how much to mix. */
  readonly mix?: SalonMix;
  /** What the rules find in the day's visit before it is begun, as it is noted, or else as it is planned. */
  readonly ahead?: readonly Finding[];
  /** Takes the figures of a page that has some. */
  readonly sheet?: Sheet;
};

/** A visit noted for the day itself, if one stands. */
const notedFor = ({ visits, on }: HeadView): VisitReckoned | undefined => visits.findLast(({ date }) => date === on);

const titleBlocks = (view: HeadView, today: VisitReckoned | undefined): string[] => {
  const { client, on, journal } = view;
  const entry = today?.visit.entry;
  const salon = today?.salon ?? salonOfHead(view);
  const age = ageOf(client, on);
  const awaited = awaitedOn(view.visits, on);
  const asked = awaited?.first === on && awaited.time !== undefined && clockText(awaited.time);
  const when = commas([dayText(on), entry?.time ? timeText(entry.time, salon.hours) : asked]);
  const facts = [
    `To prepare for ${when}`,
    entry?.by && stylistName(journal, entry.by),
    salon.full && escapeText(salon.full),
    client.full === client.name ? undefined : escapeText(client.name),
    age !== undefined && `${age} years old`,
  ];
  return [`# ${escapeText(client.full)}`, joined(facts, ' · ')];
};

const viewOf = (view: HeadView, visit: VisitReckoned, earlier: readonly VisitReckoned[]): VisitView => ({
  journal: view.journal,
  visit,
  news: [],
  findings: [],
  money: false,
  earlier,
  sheet: view.sheet ?? noFigures,
});

/** What is noted for the day already: wishes, bowls, places. */
const todayBlocks = (view: HeadView, today: VisitReckoned | undefined): string[] => {
  if (today === undefined) return [];
  const noted = notedOf({ journal: view.journal, visit: today });
  const lines = (words: Parameters<typeof factsIn>[1]): string[] =>
    factsIn(today, words).map((fact) => visitItem(noted, fact));
  const blocks = [
    ...listOf(lines(['redo', 'about', 'aim', 'want', 'start', 'regrowth', 'test', 'note', 'declined'])),
    ...mixBlocks(viewOf(view, today, [])),
    ...listOf(lines(['place', 'leave'])),
  ];
  return blocks.length === 0 ? [] : ['## Noted for the day', ...blocks];
};

const whenItem = (view: HeadView, visit: VisitReckoned): string => {
  const by = visit.visit.entry.by && stylistName(view.journal, visit.visit.entry.by);
  return `- **When** ${dayText(visit.date)}; ${timeBetween(visit.date, view.on)} before ${view.on}${by === undefined ? '' : `, by ${by}`}`;
};

/** What one earlier visit was: what was found and aimed at, where its bowls went, what came of it. */
const beforeBlocks = (view: HeadView, { visit }: Plan, salonLift: readonly LiftSeries[]): string[] => {
  const one = viewOf(view, visit, []);
  const noted = notedOf(one);
  return [
    ...listOf([
      whenItem(view, visit),
      ...wishItems(one),
      ...factsIn(visit, ['place', 'leave']).map((fact) => visitItem(noted, fact)),
      ...liftItems(visit),
      ...paceItems(visit, salonLift, view.on),
      ...remarkItems(one),
      ...outcome(view, one),
    ]),
    ...one.sheet([(id) => placementFigure(id, visit)]),
  ];
};

/** The last colour in short, where the day is planned by one before it. */
const sinceBlocks = (view: HeadView, plans: readonly Plan[]): string[] => {
  const last = lastColourOf(view);
  if (last === undefined || plans.some(({ visit }) => visit === last)) return [];
  const one = viewOf(view, last, []);
  return [
    '## Last colour',
    ...listOf([
      whenItem(view, last),
      ...factsIn(last, ['aim', 'place']).map((fact) => visitItem(notedOf(one), fact)),
      ...bowlsInOrder(last).map((bowl) => `- **Mixed** ${bowlName(bowl)}, ${bowlLine(bowl)}`),
      ...remarkItems(one),
      ...outcome(view, one),
    ]),
  ];
};

/** Names that bowls of two visits on the sheet have. */
const namedTwice = (plans: readonly Plan[]): ReadonlySet<string> => {
  const names = plans.flatMap(({ bowls }) => bowls.map(({ bowl }) => bowl.name));
  return new Set(names.filter((name, index) => names.indexOf(name) !== index));
};

const headingFor = (view: HeadView, asked: AskedVisit | undefined): string => {
  if (asked === undefined || asked.visit === lastColourOf(view)) return '## Bowls to mix, as last time';
  return `## Bowls to mix, ${asked.services.map(escapeText).join(', ')} as on ${asked.visit.date}`;
};

/** The bowls to mix by the visits before the day, what those visits were, and how the grams came about. */
const plannedBlocks = (
  view: HeadView,
  plans: readonly Plan[],
  asked: AskedVisit | undefined,
  salonLift: readonly LiftSeries[],
): string[] => {
  const shown = { twice: namedTwice(plans), others: asked?.others ?? new Set<string>() };
  const [first, ...more] = plans;
  if (first === undefined) return ['## Bowls to mix', 'The notes show no colour before this day.'];
  return [
    headingFor(view, asked),
    ...listOf(growthItem(view)),
    ...planBlocks(first, shown),
    asked === undefined || asked.visit === lastColourOf(view) ? '## Last time' : `## That visit, ${first.visit.date}`,
    ...beforeBlocks(view, first, salonLift),
    ...more.flatMap((plan) => [
      `## At the roots last, ${plan.visit.date}`,
      ...beforeBlocks(view, plan, salonLift),
      // Two lists with grams to mix would be mixed together by a tired hand.
      ...listOf(compareItems(plan)),
    ]),
    ...sinceBlocks(view, plans),
  ];
};

const workedBlocks = (plans: readonly Plan[], asked: AskedVisit | undefined): string[] => {
  const shown = { twice: namedTwice(plans), others: asked?.others ?? new Set<string>() };
  const items = plans.flatMap((plan) => workedItems(plan, shown));
  return items.length === 0 ? [] : [`## ${WORKED_HEADING}`, ...listOf(items)];
};

/** The bowls of earlier visits on a day with bowls of its own, and what those visits were. */
const comparedBlocks = (
  view: HeadView,
  plans: readonly Plan[],
  ruledOut: readonly string[],
  salonLift: readonly LiftSeries[],
): string[] =>
  plans.length === 0
    ? []
    : [
        ...compareBlocks(plans, [...growthItem(view), ...ruledOut]),
        ...plans.flatMap((plan, index) => [
          index === 0 ? '## Last time' : `## At the roots last, ${plan.visit.date}`,
          ...beforeBlocks(view, plan, salonLift),
        ]),
      ];

const HAIR = ['natural', 'grey', 'hair', 'pattern', 'zone', 'history', 'avoid'] as const;

const hairBlocks = (view: HeadView): string[] => {
  const lines = clientLines(view, HAIR).map(({ stood, fact }) => clientItem(notedIn(view, stood), fact));
  return listOf(lines);
};

/** The lift of every visit in a journal, for the pace of a head beside the salon's. */
export const salonLiftOf = (all: ReadonlyMap<string, readonly VisitReckoned[]>): LiftSeries[] =>
  [...all.values()].flatMap((visits) => visits.flatMap(liftOf));

/**
 * One client's sheet for a day as Markdown. `reckoned` holds her visits, oldest first; `findings` those on her;
 * `salonLift` the lift of all visits of the journal.
 */
export const prepMarkdown = (
  journal: Journal,
  client: ClientFile,
  reckoned: readonly VisitReckoned[],
  findings: readonly Finding[],
  salonLift: readonly LiftSeries[],
  { on, mix, ahead = [], sheet = noFigures }: PrepOptions,
): string => {
  const visits = reckoned.filter(({ date }) => date <= on);
  const before = visits.filter(({ date }) => date < on);
  const asked = askedVisit(plannedIn(before), before);
  const plans = asked === undefined ? plansFor(before, on, mix) : [planVisit(asked.visit, before, on, mix)];
  const planned = plans.map(({ visit }) => visit);
  const view: HeadView = { journal, client, visits, findings, on, sheet, planned };
  const past: HeadView = { ...view, visits: before };
  const today = notedFor(view);
  const own = today !== undefined && today.bowls.length > 0;
  const ruledOut = ruledOutItems(view, today, plans);
  const compares = own || ruledOut.length > 0;
  // Where earlier bowls are only compared none is planned, so there is nothing to judge but what is noted.
  const found = compares && !own ? [] : aheadOf(view, ahead);
  const stopsAhead = own ? [] : found.filter(({ severity }) => severity === 'stop');
  const earlierOf = (visit: VisitReckoned): readonly VisitReckoned[] => before.slice(0, before.indexOf(visit));
  const others = asked?.others ?? new Set<string>();
  const last = lastColourOf(past);
  const shownBelow = new Set(compares || last === undefined ? planned : [...planned, last]);
  const blocks = [
    ...titleBlocks(view, today),
    ...alertBlocks({ ...view, stopsAhead }),
    ...aheadBlocks(found, !own),
    ...promiseBlocks(view, before, shownBelow),
    ...todayBlocks(view, today),
    ...(compares ? comparedBlocks(past, plans, ruledOut, salonLift) : plannedBlocks(past, plans, asked, salonLift)),
    '## Tests and hair',
    ...standingTable(view),
    ...hairBlocks(view),
    ...(own
      ? ownClockBlocks(today, before)
      : compares
        ? []
        : fillInBlocks(planned.map((visit) => ({ visit, earlier: earlierOf(visit), others })))),
    ...cautionBlocks({ ...view, findings: [...findings, ...found] }),
    ...(compares ? [] : workedBlocks(plans, asked)),
  ];
  return `${blocks.join('\n\n')}\n`;
};

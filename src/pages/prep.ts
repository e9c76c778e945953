import type { ClientFile, Journal } from '../journal/journal.ts';
import { awaitedOn } from '../reckon/awaited.ts';
import type { SalonMix } from '../reckon/forecast.ts';
import { type LiftSeries, liftOf } from '../reckon/lift/series.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { type Plan, plansFor } from '../reckon/plan.ts';
import { ageOf } from '../reckon/state.ts';
import { clockText } from '../text/dates.ts';
import type { Finding } from '../text/finding.ts';
import { alertBlocks } from './alerts.ts';
import { factsIn, mixBlocks, notedOf, type VisitView } from './card-visit.ts';
import { cautionBlocks } from './caution-block.ts';
import { clientItem } from './client-lines.ts';
import { dayText, timeBetween } from './days.ts';
import { escapeText } from './escape.ts';
import { placementFigure } from './figures/placement-figure.ts';
import { noFigures, type Sheet } from './figures/sheet.ts';
import { clientLines, type HeadView, listOf, notedIn, salonOfHead } from './head-view.ts';
import { growthItem, outcome } from './last-colour.ts';
import { liftItems } from './lift-lines.ts';
import { commas, joined, stylistName } from './noted.ts';
import { planBlocks } from './prep-bowls.ts';
import { fillInBlocks, paceItems } from './prep-checks.ts';
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

/** What one earlier visit was: what was found and aimed at, where its bowls went, what came of it. */
const beforeBlocks = (view: HeadView, { visit }: Plan, salonLift: readonly LiftSeries[]): string[] => {
  const one = viewOf(view, visit, []);
  const noted = notedOf(one);
  const by = visit.visit.entry.by && stylistName(view.journal, visit.visit.entry.by);
  const when = `- **When** ${dayText(visit.date)}; ${timeBetween(visit.date, view.on)} before ${view.on}${by === undefined ? '' : `, by ${by}`}`;
  return [
    ...listOf([
      when,
      ...factsIn(visit, ['aim', 'want', 'start', 'place', 'leave']).map((fact) => visitItem(noted, fact)),
      ...liftItems(visit),
      ...paceItems(visit, salonLift, view.on),
      ...outcome(view, one),
    ]),
    ...one.sheet([(id) => placementFigure(id, visit)]),
  ];
};

const plannedBlocks = (view: HeadView, plans: readonly Plan[], salonLift: readonly LiftSeries[]): string[] => {
  if (plans.length === 0) return ['## Bowls to mix', 'The notes show no colour before this day.'];
  return plans.flatMap((plan, index) => {
    const title = index === 0 ? 'Bowls to mix, as last time' : `At the roots last, ${plan.visit.date}`;
    return [
      `## ${title}`,
      ...(index === 0 ? listOf(growthItem(view)) : []),
      ...(index === 0
        ? [...planBlocks(plan), '## Last time', ...beforeBlocks(view, plan, salonLift)]
        : [...beforeBlocks(view, plan, salonLift), ...planBlocks(plan)]),
    ];
  });
};

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
  { on, mix, sheet = noFigures }: PrepOptions,
): string => {
  const visits = reckoned.filter(({ date }) => date <= on);
  const view: HeadView = { journal, client, visits, findings, on, sheet };
  const before = visits.filter(({ date }) => date < on);
  const past: HeadView = { ...view, visits: before };
  const today = notedFor(view);
  const plans = plansFor(before, on, mix);
  const dated = plans.map(({ visit }) => ({ visit, earlier: before.slice(0, before.indexOf(visit)) }));
  const blocks = [
    ...titleBlocks(view, today),
    ...alertBlocks(view),
    ...promiseBlocks(view, before, new Set(plans.map(({ visit }) => visit))),
    ...todayBlocks(view, today),
    ...plannedBlocks(past, plans, salonLift),
    '## Tests and hair',
    ...standingTable(view),
    ...hairBlocks(view),
    ...fillInBlocks(dated),
    ...cautionBlocks(view),
  ];
  return `${blocks.join('\n\n')}\n`;
};

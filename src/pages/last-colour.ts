import { ownGrowth } from '../reckon/history.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { figure } from '../reckon/say.ts';
import { putsOnColour, reachesRoots } from '../reckon/services.ts';
import { daysBetween } from '../text/dates.ts';
import { regrowth } from '../trade/growth.ts';
import { factsIn, mixBlocks, notedOf, type VisitView } from './card-visit.ts';
import { dayText, timeBetween } from './days.ts';
import { dueText, nextOf } from './due.ts';
import { placementFigure } from './figures/placement-figure.ts';
import { noFigures } from './figures/sheet.ts';
import { type HeadView, listOf, salonOfHead } from './head-view.ts';
import { newsByDate, newsItem } from './news.ts';
import { endOf, stylistName } from './noted.ts';
import { nextText, visitItem, visitPhrase } from './visit-lines.ts';

/** The last colour: when, what was mixed and where it went, what came of it, what to change, how far it has grown out. */

/** New growth expected on the day, from the last visit that did the roots, at the client's own rate where measured. */
const growthItem = (view: HeadView): string[] => {
  const roots = view.visits.findLast((visit) => visit.date < view.on && reachesRoots(visit));
  if (roots === undefined) return [];
  const own = ownGrowth(view.visits.filter(({ date }) => date < view.on));
  const rate = own ?? salonOfHead(view).growth;
  const days = daysBetween(roots.date, view.on);
  const expected = figure(regrowth(days, rate), 0);
  const whose = own === undefined ? 'the salon’s figure' : 'measured on this head';
  return [
    `- **New growth** about ${expected} mm expected on ${view.on}: ${days} days since the roots on ${roots.date}, at ${figure(rate)} mm a day, ${whose}`,
  ];
};

const whereItems = (view: VisitView): string[] => {
  const noted = notedOf(view);
  const placed = factsIn(view.visit, ['place', 'leave']).map((fact) => visitItem(noted, fact));
  if (placed.length > 0) return placed;
  return view.visit.clock.runs
    .filter(({ zone }) => zone !== '')
    .map(({ bowl, zone }) => `- **Went on** ${bowl === undefined ? zone : `${bowl} · ${zone}`}`);
};

const lastItems = (view: HeadView, { visit }: VisitView): string[] => {
  const by = visit.visit.entry.by && stylistName(view.journal, visit.visit.entry.by);
  const since = timeBetween(visit.date, view.on);
  const when = visit.date === view.on ? dayText(visit.date) : `${dayText(visit.date)}; ${since} before ${view.on}`;
  return [`- **When** ${when}${by === undefined ? '' : `, by ${by}`}`, ...growthItem(view)];
};

const outcome = (view: HeadView, one: VisitView): string[] => {
  const noted = notedOf(one);
  const facts = factsIn(one.visit, ['result', 'reaction', 'stopped', 'call']);
  const news = newsByDate(view.visits).get(one.visit.date) ?? [];
  return [...facts.map((fact) => visitItem(noted, fact)), ...news.map((each) => newsItem(view.journal, each))];
};

/** The last visit with a `next` line, which may be later than the last colour. */
const lastPlan = (visits: readonly VisitReckoned[]): VisitReckoned | undefined =>
  visits.findLast((visit) => nextOf(visit) !== undefined);

const planBlocks = (view: HeadView): string[] => {
  const visit = lastPlan(view.visits);
  const next = visit && nextOf(visit);
  if (visit === undefined || next === undefined) return [];
  const noted = notedOf({ journal: view.journal, visit });
  const due = dueText(visit);
  return [
    '## Next time',
    listOf([
      `- **Noted** on ${visit.date}: ${nextText(noted, next)}${endOf(view.journal, next)}`,
      ...(due === undefined ? [] : [`- **Due** ${due}`]),
      ...factsIn(visit, ['care']).map((fact) => `- **Aftercare given** ${visitPhrase(noted, fact)}`),
    ]).join('\n'),
  ];
};

/** The last visit up to the day that coloured or lightened. */
export const lastColourOf = ({ visits }: HeadView): VisitReckoned | undefined => visits.findLast(putsOnColour);

/** The last colour and the plan made then, as blocks of Markdown with their headings. */
export const lastColourBlocks = (view: HeadView, money = false): string[] => {
  const visit = lastColourOf(view);
  if (visit === undefined) return ['## Last colour', 'The notes show none.', ...planBlocks(view)];
  const { sheet = noFigures } = view;
  const one: VisitView = { journal: view.journal, visit, news: [], findings: [], money, earlier: [], sheet };
  return [
    '## Last colour',
    ...listOf(lastItems(view, one)),
    ...mixBlocks(one),
    ...listOf([...whereItems(one), ...outcome(view, one)]),
    ...sheet([(id) => placementFigure(id, visit)]),
    ...planBlocks(view),
  ];
};

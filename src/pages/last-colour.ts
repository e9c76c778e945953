import { plannedIn } from '../reckon/ahead/due-window.ts';
import { askedBowls } from '../reckon/ahead/plan.ts';
import { isAllNew } from '../reckon/client/cut-off.ts';
import { ownGrowth } from '../reckon/client/history.ts';
import { putsOnColour, reachesRoots } from '../reckon/head/services.ts';
import type { Run, Unclocked, VisitReckoned } from '../reckon/model.ts';
import { figure, grams, perCent } from '../reckon/say.ts';
import { clockText, daysBetween } from '../text/dates.ts';
import { exactOf, ZERO } from '../text/exact.ts';
import { regrowth } from '../trade/growth.ts';
import { bowlLine, bowlsInOrder } from './bowl-line.ts';
import { factsIn, mixBlocks, notedOf, type VisitView } from './card-visit.ts';
import { remarkItems } from './clock-remarks.ts';
import { dayText, timeBetween } from './days.ts';
import { dueItems } from './due.ts';
import { escapeText } from './escape.ts';
import { placementFigure } from './figures/placement-figure.ts';
import { noFigures } from './figures/sheet.ts';
import { type HeadView, listOf, salonOfHead } from './head-view.ts';
import { liftItems } from './lift-lines.ts';
import { newsByDate, newsItem } from './news.ts';
import { bowlName, commas, joined, stylistName } from './noted.ts';
import { hedged, timeText } from './say-numbers.ts';
import { nextTexts, visitItem, visitPhrase } from './visit-lines.ts';

/** The last colour: when, what was mixed and where it went, what came of it, what to change, how far it has grown out. */

/** New growth expected on the day, from the last visit that did the roots, at the client's own rate where measured. */
export const growthItem = (view: HeadView): string[] => {
  const roots = view.visits.findLast((visit) => visit.date < view.on && reachesRoots(visit));
  if (roots === undefined) return [];
  const own = ownGrowth(view.visits.filter(({ date }) => date < view.on));
  const rate = own ?? salonOfHead(view).growth;
  const days = daysBetween(roots.date, view.on);
  if (isAllNew(view.client, days, rate))
    return [
      `- **New growth** all of the hair: what was done at the roots on ${roots.date}, ${days} days before ${view.on}, has grown past its length and is cut off`,
    ];
  const expected = figure(regrowth(days, rate), 0);
  const whose = own === undefined ? 'the salon’s figure' : 'measured on this head';
  return [
    `- **New growth** about ${expected} mm expected on ${view.on}: ${days} ${days === 1 ? 'day' : 'days'} since the roots on ${roots.date}, at ${figure(rate)} mm a day, ${whose}`,
  ];
};

const minutesText = ({ firstOn, off, told, fromFirst, fromAll, spanned, heat, about }: Run): string =>
  commas([
    hedged(
      about,
      off === undefined
        ? `${clockText(firstOn)}, ${told === undefined ? 'off not noted' : `${told} min as noted`}`
        : `${clockText(firstOn)}–${clockText(off)}`,
    ),
    fromFirst !== undefined && `${fromFirst} min${spanned ? ' from first on' : ''}`,
    spanned && fromAll !== undefined && `${fromAll} from all on`,
    heat > 0 && `${heat} under heat`,
  ]);

const runItems = ({ visit: { clock } }: VisitView): string[] =>
  [...clock.runs, ...clock.unclocked].map((run) => {
    const what = joined([run.bowl && escapeText(run.bowl), run.zone !== '' && escapeText(run.zone)], ' · ');
    return `- **Went on** ${commas([what, 'firstOn' in run ? minutesText(run) : minutesAlone(run)])}`;
  });

const minutesAlone = ({ minutes, last, about }: Unclocked): string => {
  if (minutes === undefined) return 'minutes not noted';
  const { least, most } = minutes;
  const said = hedged(about, `${least === most ? least : `${least}–${most}`} min`);
  return last ? `the last ${said} of its bowl` : said;
};

/** Where each bowl was placed, when it was on, how long, how it lifted, and what was said meanwhile. */
const whereItems = (view: VisitView): string[] => {
  const noted = notedOf(view);
  const { visit } = view;
  const placed = factsIn(visit, ['place', 'leave']).map((fact) => visitItem(noted, fact));
  const runs = runItems(view);
  return [...placed, ...runs, ...liftItems(visit), ...remarkItems(view)];
};

/** What was wanted and found at a visit, before anything went on. */
export const wishItems = (view: VisitView): string[] =>
  factsIn(view.visit, ['aim', 'want', 'start', 'regrowth']).map((fact) => visitItem(notedOf(view), fact));

const lastItems = (view: HeadView, one: VisitView): string[] => {
  const { visit } = one;
  const by = visit.visit.entry.by && stylistName(view.journal, visit.visit.entry.by);
  const since = timeBetween(visit.date, view.on);
  const when = visit.date === view.on ? dayText(visit.date) : `${dayText(visit.date)}; ${since} before ${view.on}`;
  return [`- **When** ${when}${by === undefined ? '' : `, by ${by}`}`, ...growthItem(view), ...wishItems(one)];
};

/** What came of a visit: its result and what later visits say of it. */
export const outcome = (view: HeadView, one: VisitView): string[] => {
  const noted = notedOf(one);
  const facts = factsIn(one.visit, ['result', 'reaction', 'stopped', 'call']);
  const news = newsByDate(view.visits).get(one.visit.date) ?? [];
  return [...facts.map((fact) => visitItem(noted, fact)), ...news.map((each) => newsItem(view.journal, each))];
};

/** The bowls of a visit at the share that its `next` asks for, in grams as the scales show them. */
const workedOut = (visit: VisitReckoned, { visits, on }: HeadView): string[] =>
  askedBowls(visit, visits, on).flatMap(({ bowl, asked, total, portions }) => {
    if (asked === undefined || total === undefined) return [];
    const parts = portions.map(({ portion, mix }) => `${grams(mix ?? ZERO)} ${escapeText(portion.label)}`);
    const whole = hedged(bowl.about, grams(total));
    return [
      `- **Worked out** ${escapeText(bowl.name)} at ${perCent(exactOf(100 + asked))}: ${parts.join(' + ')} = ${whole}`,
    ];
  });

/** What the notes plan for the next visit, and when she is awaited. */
const planBlocks = (view: HeadView): string[] => {
  const { visits, ahead = [], journal, on, open = [] } = view;
  const visit = plannedIn(visits);
  const here = open.length > 0;
  const due = dueItems(visits, ahead, { on, planned: visit, seen: here });
  const heading = here ? '## Asked for today' : '## Next time';
  if (visit === undefined) return due.length === 0 ? [] : [heading, ...due];
  const noted = notedOf({ journal, visit });
  return [
    heading,
    listOf([
      `- **Noted** on ${visit.date}: ${nextTexts(noted, visit)}`,
      ...workedOut(visit, view),
      ...due,
      ...factsIn(visit, ['care']).map((fact) => `- **Aftercare given** ${visitPhrase(noted, fact)}`),
    ]).join('\n'),
  ];
};

/** A visit that is under way on the day: what was found, mixed, put on and seen so far. */
const openBlocks = (view: HeadView, visit: VisitReckoned): string[] => {
  const { journal, on, sheet = noFigures } = view;
  const one: VisitView = { journal, visit, news: [], findings: [], money: false, earlier: [], sheet };
  const { time, by } = visit.visit.entry;
  const at = time && timeText(time, visit.salon.hours);
  const whose = by && `by ${stylistName(journal, by)}`;
  return [
    '## Today, open',
    ...listOf([
      `- **When** ${commas([dayText(on), at, whose])}`,
      ...factsIn(visit, ['about', 'redo']).map((fact) => visitItem(notedOf(one), fact)),
      ...wishItems(one),
      ...bowlsInOrder(visit).map((bowl) => `- **Mixed** ${bowlName(bowl)}, ${bowlLine(bowl)}`),
      ...runItems(one),
      ...liftItems(visit),
      ...remarkItems(one),
      ...factsIn(visit, ['note']).map((fact) => visitItem(notedOf(one), fact)),
    ]),
  ];
};

/** The last visit up to the day that coloured or lightened, and is over. */
export const lastColourOf = ({ visits }: HeadView): VisitReckoned | undefined => visits.findLast(putsOnColour);

/** The last colour, the plan made then and what is under way, as blocks of Markdown with their headings. */
export const lastColourBlocks = (view: HeadView, money = false): string[] => {
  const visit = lastColourOf(view);
  const open = (view.open ?? []).flatMap((one) => openBlocks(view, one));
  if (visit === undefined) return ['## Last colour', 'The notes show none.', ...planBlocks(view), ...open];
  const { sheet = noFigures } = view;
  const one: VisitView = { journal: view.journal, visit, news: [], findings: [], money, earlier: [], sheet };
  return [
    '## Last colour',
    ...listOf(lastItems(view, one)),
    ...mixBlocks(one),
    ...listOf([...whereItems(one), ...outcome(view, one)]),
    ...sheet([(id) => placementFigure(id, visit)]),
    ...planBlocks(view),
    ...open,
  ];
};

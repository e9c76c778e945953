import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import { ageOf } from '../reckon/client/state.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { Finding } from '../text/finding.ts';
import { alertBlocks } from './alerts.ts';
import { visitBlocks } from './card-visit.ts';
import { cautionBlocks } from './caution-block.ts';
import { clientPhrase } from './client-lines.ts';
import { dayText } from './days.ts';
import { earlierBlocks, MOST_IN_FULL } from './earlier-visits.ts';
import { escapeText } from './escape.ts';
import { noFigures, type Sheet } from './figures/sheet.ts';
import { eachOnce, entryAt, findingsByEntry } from './finding-lines.ts';
import { clientLines, type HeadView, notedIn, salonOfHead } from './head-view.ts';
import { VISITS_HEADING } from './headings.ts';
import { lastColourBlocks } from './last-colour.ts';
import { newsByDate } from './news.ts';
import { joined } from './noted.ts';
import { findingBlocks, onFileBlocks } from './on-file.ts';
import { earlierTestBlocks, testBlocks } from './skin-tests.ts';
import { isUnderWay } from './visit-open.ts';

export type CardOptions = {
  /** The day the card is for, `YYYY-MM-DD`: tests, holds, growth and due dates are reckoned to it. */
  readonly on: string;
  /** What products cost stands on the card; it does not unless asked for. */
  readonly money?: boolean;
  /**
   * How many visits stand on it, the newest; nought leaves the whole section out. Without it all of them do, those of a
   * long history before the newest in a line each.
   */
  readonly last?: number;
  /** The address of the page that holds a year's earlier visits in full, where there are such pages. */
  readonly yearPage?: (year: string) => string;
  /** Takes the figures of a page that has some. */
  readonly sheet?: Sheet;
};

/** The name, the day, the salon and the age: what a card is headed with. */
const titleBlocks = (view: HeadView): string[] => {
  const { client, on } = view;
  const age = ageOf(client, on);
  const born = clientLines(view, ['born']).map(({ stood, fact }) => `born ${clientPhrase(notedIn(view, stood), fact)}`);
  const salon = salonOfHead(view).full;
  const facts = [
    `Card for ${dayText(on)}`,
    salon && escapeText(salon),
    client.full === client.name ? undefined : escapeText(client.name),
    ...born,
    age !== undefined && `${age} years old`,
  ];
  return [`# ${escapeText(client.full)}`, joined(facts, ' · ')];
};

const visitsBlocks = (
  journal: Journal,
  reckoned: readonly VisitReckoned[],
  findings: readonly Finding[],
  { money, sheet, last }: { readonly money: boolean; readonly sheet: Sheet; readonly last: number | undefined },
): string[] => {
  if (last === 0) return [];
  if (reckoned.length === 0) return [`## ${VISITS_HEADING}`, 'None noted yet.'];
  const news = newsByDate(reckoned);
  const ofEntry = findingsByEntry(journal, findings);
  const more = last === undefined ? 0 : reckoned.length - last;
  const left = more > 0 ? [`${more} earlier ${more === 1 ? 'visit is' : 'visits are'} left out here.`] : [];
  const blocks = reckoned
    .toReversed()
    .slice(0, last ?? MOST_IN_FULL)
    .flatMap((visit, back) =>
      visitBlocks({
        journal,
        visit,
        news: news.get(visit.date) ?? [],
        findings: ofEntry(visit.visit),
        money,
        earlier: reckoned.slice(0, reckoned.length - 1 - back),
        sheet,
      }),
    );
  return [`## ${VISITS_HEADING}`, ...blocks, ...left];
};

/**
 * A client's card as Markdown: what to know before touching the hair first, then the visits, newest first. `reckoned`
 * holds her visits, oldest first; `findings` may be those of the whole journal, answered ones among them.
 */
export const cardMarkdown = (
  journal: Journal,
  client: ClientFile,
  reckoned: readonly VisitReckoned[],
  findings: readonly Finding[],
  { on, money = false, last, sheet = noFigures, yearPage }: CardOptions,
): string => {
  const isHers = entryAt<Stood>(journal, [...client.entries, ...client.visits]);
  const own = eachOnce(findings).filter((finding) => finding.client === client.name || isHers(finding) !== undefined);
  const view: HeadView = {
    journal,
    client,
    visits: reckoned.filter(({ date }) => date <= on),
    ahead: reckoned.filter(({ date }) => date > on),
    findings: own,
    on,
    sheet,
  };
  const open = view.visits.filter((visit) => isUnderWay(visit, on));
  const blocks = [
    ...titleBlocks(view),
    ...alertBlocks(view),
    ...testBlocks(view),
    ...onFileBlocks(view),
    ...lastColourBlocks({ ...view, visits: view.visits.filter((visit) => !open.includes(visit)), open }, money),
    ...findingBlocks(view),
    ...cautionBlocks(view),
    ...(last === 0 ? [] : earlierTestBlocks(view)),
    ...visitsBlocks(journal, reckoned, own, { money, sheet, last }),
    ...(last === undefined ? earlierBlocks(journal, client, reckoned, own, yearPage) : []),
  ];
  return `${blocks.join('\n\n')}\n`;
};

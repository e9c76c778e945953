import type { ClientFile, Journal } from '../journal/journal.ts';
import { entryLines } from '../journal/where.ts';
import { noFigures, type Sheet } from '../pages/figures/sheet.ts';
import { pointsInto } from '../pages/finding-lines.ts';
import { withLeftOut } from '../pages/left-out.ts';
import { prepMarkdown, salonLiftOf } from '../pages/prep.ts';
import { clientsOn, comingMarkdown, nobodyMarkdown } from '../pages/prep-day.ts';
import { needsBefore, salonMix } from '../reckon/forecast/forecast.ts';
import { putsOnColour } from '../reckon/head/services.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { asksPlan } from '../rules/asks.ts';
import { isDate } from '../text/dates.ts';
import type { Finding } from '../text/finding.ts';
import { ended, failAt, openReckoned } from './failed-clients.ts';
import { findClient } from './find-client.ts';
import { foundIn, isUnbegun } from './findings-ahead.ts';
import { nextVisit } from './next-visit.ts';
import { deliver, isPage } from './output.ts';
import { refusal } from './refusal.ts';
import { shownClients } from './shown.ts';
import { dayOf } from './today.ts';

export type PrepOptions = { readonly html?: true; readonly output?: string; readonly on?: string };

/** The day that the word names, or undefined when it names a client. Throws a refusal for a day and another day. */
const dayNamed = (word: string, on: string | undefined): string | undefined => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(word)) return undefined;
  if (!isDate(word)) throw refusal(`\`${word}\` is not a date of the calendar.`, 'Write it as in `prep 2026-09-04`.');
  if (on !== undefined && dayOf(on) !== word)
    throw refusal(`\`${word}\` and \`--on ${on}\` are two days.`, 'Leave `--on` out, or name a client before it.');
  return word;
};

/** The lines under the header of a visit, as typed. */
const bodyOf = (journal: Journal, { visit }: VisitReckoned): readonly string[] => entryLines(journal, visit).slice(1);

/** `bowlbook prep`: the sheet beside the trolley, for one client or for all who come on a day. */
export const prep = async (word: string, paths: readonly string[], options: PrepOptions): Promise<number> => {
  const day = dayNamed(word, options.on);
  const on = day ?? dayOf(options.on);
  const { journal, unreadable, shown, all, judged } = openReckoned(paths, on);
  const named = shownClients(journal, shown);
  const sheets = day === undefined ? [findClient(journal, word)] : clientsOn(all, on);
  const foundOf = new Map(sheets.map(({ name }) => [name, judged.about(name)]));
  const faults = judged.faults();
  if (day === undefined) for (const { name } of sheets) failAt(name, faults);
  const failed = new Set(faults.map(({ client }) => client));
  const coming = new Map([...all].filter(([name]) => named.has(name) && !failed.has(name)));
  const clients = day === undefined ? sheets : clientsOn(coming, on);
  const lift = salonLiftOf(all);
  const mix = salonMix(needsBefore(all, on));
  const aheadOf = (client: ClientFile): readonly Finding[] => {
    const visits = all.get(client.name) ?? [];
    const today = visits.findLast(({ date }) => date === on);
    const before = visits.filter(({ date }) => date < on);
    const last = before.at(-1)?.visit;
    if (today !== undefined && !isUnbegun(today)) return [];
    if (today !== undefined && today.bowls.length > 0)
      return (foundOf.get(client.name) ?? []).filter(
        (one) => asksPlan(one.rule) && one.reason === undefined && pointsInto(journal, one, today.visit),
      );
    if (last === undefined || !before.some(putsOnColour)) return [];
    const typed = today === undefined ? [] : bodyOf(journal, today);
    return foundIn(journal, client, nextVisit(journal, last, before, on, mix), typed).findings;
  };
  const sheetOf = (client: ClientFile, sheet: Sheet): string =>
    prepMarkdown(journal, client, all.get(client.name) ?? [], foundOf.get(client.name) ?? [], lift, {
      on,
      mix,
      sheet,
      ahead: aheadOf(client),
    });
  const first = day === undefined ? [] : [comingMarkdown(coming, on)];
  const markdown = (sheet: Sheet): string =>
    withLeftOut(
      clients.length === 0
        ? nobodyMarkdown(coming, on)
        : [...first, ...clients.map((client) => sheetOf(client, sheet))].join('\n'),
      faults,
    );
  const [only] = clients;
  const title = clients.length === 1 && only !== undefined ? `${only.full}, ${on}` : `To prepare for ${on}`;
  if (!isPage(options)) deliver(markdown(noFigures), options.output);
  else {
    const { prepHtml } = await import('../pages/prep-html.ts');
    deliver(prepHtml(title, markdown), options.output);
  }
  return ended({ faults, unreadable });
};

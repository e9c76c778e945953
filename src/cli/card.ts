import { cardMarkdown } from '../pages/card.ts';
import { judge } from '../rules/judging.ts';
import { ended, failAt } from './failed-clients.ts';
import { findClient } from './find-client.ts';
import { openJournal } from './open-journal.ts';
import { deliver, deliverJson, isPage } from './output.ts';
import { refusal } from './refusal.ts';
import { dayOf } from './today.ts';

export type CardOptions = {
  readonly html?: true;
  readonly json?: true;
  readonly money?: true;
  readonly last?: string;
  readonly summary?: true;
  readonly output?: string;
  readonly on?: string;
};

/** How many visits stand on the card; undefined for all. Throws a refusal for no number of visits. */
const visitsShown = ({ last, summary }: CardOptions): number | undefined => {
  if (summary) return 0;
  if (last === undefined) return undefined;
  if (!/^\d+$/.test(last) || Number(last) === 0)
    throw refusal(`\`--last ${last}\` is no number of visits.`, 'Write it as in `--last 3`, or `--summary` for none.');
  return Number(last);
};

/** `bowlbook card`: one client's card, as Markdown, as a page or as JSON. */
export const card = async (name: string, paths: readonly string[], options: CardOptions): Promise<number> => {
  const on = dayOf(options.on);
  const last = visitsShown(options);
  const { journal, unreadable } = openJournal(paths);
  const client = findClient(journal, name);
  // Hers alone, and the days of others that she shares: what goes wrong in another's notes costs her no card.
  const judged = judge(journal, on);
  const reckoned = judged.reckonedOf(client.name);
  failAt(client.name, judged.faults());
  if (options.json) {
    const { visitJson } = await import('./visit-json.ts');
    const value = {
      client: client.name,
      full: client.full,
      visits: reckoned.map((visit) => visitJson(journal, visit)),
    };
    deliverJson(value, options.output);
    return ended({ faults: [], unreadable });
  }
  const own = judged.about(client.name);
  failAt(client.name, judged.faults());
  const given = { on, ...(options.money && { money: true }), ...(last !== undefined && { last }) };
  if (!isPage(options)) deliver(cardMarkdown(journal, client, reckoned, own, given), options.output);
  else {
    const { cardHtml } = await import('../pages/card-html.ts');
    deliver(cardHtml(journal, client, reckoned, own, given), options.output);
  }
  // Of others nothing stands on her card but what bears on all who were there on a day.
  return ended({ faults: judged.faults(), unreadable });
};

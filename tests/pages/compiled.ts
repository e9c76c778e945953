import MarkdownIt from 'markdown-it';
import type { ClientFile, Journal } from '../../src/journal/journal.ts';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { type CardOptions, cardMarkdown } from '../../src/pages/card.ts';
import { cardHtml } from '../../src/pages/card-html.ts';
import { reckonClient } from '../../src/reckon/visit.ts';
import { judge } from '../../src/rules/judging.ts';
import type { Finding } from '../../src/text/finding.ts';

/** Journals and cards for the tests of the pages. */

export const journalOf = (text: string): Journal => joinSources([readSource('t.bowl', Buffer.from(text))]);

export { demoJournal } from '../journal/demo.ts';

export const clientOf = (journal: Journal, name: string): ClientFile => {
  const client = journal.clients.get(name);
  if (client === undefined) throw new Error(`no client ${name}`);
  return client;
};

export const allFindings = (journal: Journal): Finding[] => {
  const { findings, answered } = judge(journal).all();
  return [...findings, ...answered];
};

export const cardOf = (
  journal: Journal,
  name: string,
  options: CardOptions = { on: '2026-11-25' },
  findings: readonly Finding[] = allFindings(journal),
): string => {
  const client = clientOf(journal, name);
  return cardMarkdown(journal, client, reckonClient(journal, client), findings, options);
};

/** The card as a whole page with its figures. */
export const cardPageOf = (
  journal: Journal,
  name: string,
  findings: readonly Finding[] = allFindings(journal),
): string => {
  const client = clientOf(journal, name);
  return cardHtml(journal, client, reckonClient(journal, client), findings, { on: '2026-11-25' });
};

const MARKDOWN = new MarkdownIt({ html: false });
const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };

/** What a reader of the rendered Markdown reads. */
export const readText = (markdown: string): string =>
  MARKDOWN.render(markdown)
    .replace(/<[^>]*>/g, '')
    .replace(/&(amp|lt|gt|quot);/g, (_, name: string) => ENTITIES[name] ?? '');

/** A shelf and a salon that small journals of the tests share. */
export const SHELF = `salon harbour "Harbour Row"
  money GBP
  hours 9:00-19:00
  policy skin-test 48h every 26w
  policy ml as g
stylist io "Io" at harbour
product clay "Peregrine clay" lightener
  mix 1:1.5-1:2
  uses dev-6
  pack 500 g 24.00
  measure scoop 10 g
product dev-6 "Cream developer" developer 6%
  pack 1 l 7.50
product bond "Tern bond" additive
range cream "Larkfield cream" permanent
  mix 1:1.5
  pack 60 g 6.80
product clarify "Clear wash" treatment
product withybed "Withybed pieces" goods
`;

import type { ClientFile, Journal } from '../journal/journal.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { Finding } from '../text/finding.ts';
import { type CardOptions, cardMarkdown } from './card.ts';
import { yearMarkdown } from './earlier-visits.ts';
import { figureSheet } from './figures/sheet.ts';
import { pageHtml } from './html.ts';
import type { Rendered } from './html-blocks.ts';

/**
 * A client's card as a whole page: the same words as in Markdown, and the figures drawn. Takes what `cardMarkdown` does,
 * and `rendered`, the parts of the card as they were rendered the last time.
 */
export const cardHtml = (
  journal: Journal,
  client: ClientFile,
  reckoned: readonly VisitReckoned[],
  findings: readonly Finding[],
  { rendered, ...options }: Omit<CardOptions, 'sheet'> & { readonly rendered?: Rendered },
): string => {
  const { sheet, figures } = figureSheet();
  const markdown = cardMarkdown(journal, client, reckoned, findings, { ...options, sheet });
  return pageHtml({ title: client.full, markdown, figures, ...(rendered && { rendered }) });
};

/** The page of a year of a long history: its visits in full, but for the newest, which the card holds; undefined without any. */
export const yearHtml = (
  journal: Journal,
  client: ClientFile,
  reckoned: readonly VisitReckoned[],
  findings: readonly Finding[],
  year: string,
): string | undefined => {
  const { sheet, figures } = figureSheet();
  const markdown = yearMarkdown(journal, client, reckoned, findings, { year, sheet });
  return markdown && pageHtml({ title: `${client.full}, ${year}`, markdown, figures });
};

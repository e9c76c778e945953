import { figureSheet, type Sheet } from './figures/sheet.ts';
import { pageHtml } from './html.ts';

/** Sheets for the trolley as one page, each client's on a sheet of A4: the same words as in Markdown, and the figures. */
export const prepHtml = (title: string, markdown: (sheet: Sheet) => string): string => {
  const { sheet, figures } = figureSheet();
  const words = markdown(sheet);
  return pageHtml({ title, markdown: words, figures });
};

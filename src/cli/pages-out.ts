import { figureSheet, noFigures, type Sheet } from '../pages/figures/sheet.ts';
import { deliver, isPage } from './output.ts';
import { plainJson } from './plain-json.ts';

/** The forms in which a report is put out. */
export type FormOptions = {
  readonly html?: true;
  readonly json?: true;
  readonly csv?: true;
  readonly output?: string;
};

/** One report in each of its forms, made only when it is asked for. */
export type Report = {
  readonly title: string;
  /** `sheet` takes the figures of a report that has some; they are drawn on the page alone. */
  readonly markdown: (sheet: Sheet) => string;
  /** Plain data with exact numbers in it. */
  readonly json: () => unknown;
  /** Not there for a report that has no CSV. */
  readonly csv?: () => Promise<string>;
};

/** Puts a report out in the form asked for: Markdown unless another is named. */
export const deliverReport = async (report: Report, options: FormOptions): Promise<void> => {
  const { json, csv, output } = options;
  if (json) deliver(JSON.stringify(plainJson(report.json()), undefined, 2), output);
  else if (csv && report.csv) deliver(await report.csv(), output);
  else if (isPage(options)) {
    const { pageHtml } = await import('../pages/html.ts');
    const { sheet, figures } = figureSheet();
    const markdown = report.markdown(sheet);
    deliver(pageHtml({ title: report.title, markdown, figures }), output);
  } else deliver(report.markdown(noFigures), output);
};

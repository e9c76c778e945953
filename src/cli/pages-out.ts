import { figureSheet, noFigures, type Sheet } from '../pages/figures/sheet.ts';
import { withLeftOut } from '../pages/left-out.ts';
import type { ClientFault } from '../reckon/client-fault.ts';
import { failedJson } from './failed-clients.ts';
import { deliver, deliverJson, isPage } from './output.ts';
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
  readonly json: () => object;
  /** Not there for a report that has no CSV. */
  readonly csv?: () => Promise<string>;
  /** Clients whom the report has to do without; it names them in every form but CSV, which has no place for it. */
  readonly faults: readonly ClientFault[];
};

/** Puts a report out in the form asked for: Markdown unless another is named. */
export const deliverReport = async (report: Report, options: FormOptions): Promise<void> => {
  const { json, csv, output } = options;
  const { faults } = report;
  if (json) deliverJson(plainJson({ ...report.json(), ...failedJson(faults) }), output);
  else if (csv && report.csv) deliver(await report.csv(), output);
  else if (isPage(options)) {
    const { pageHtml } = await import('../pages/html.ts');
    const { sheet, figures } = figureSheet();
    const markdown = withLeftOut(report.markdown(sheet), faults);
    deliver(pageHtml({ title: report.title, markdown, figures }), output);
  } else deliver(withLeftOut(report.markdown(noFigures), faults), output);
};

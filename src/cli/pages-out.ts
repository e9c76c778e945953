import { deliver } from './output.ts';
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
  readonly markdown: () => string;
  /** Plain data with exact numbers in it. */
  readonly json: () => unknown;
  readonly csv: () => Promise<string>;
};

/** Puts a report out in the form asked for: Markdown unless another is named. */
export const deliverReport = async (report: Report, { html, json, csv, output }: FormOptions): Promise<void> => {
  if (json) deliver(JSON.stringify(plainJson(report.json()), undefined, 2), output);
  else if (csv) deliver(await report.csv(), output);
  else if (html) {
    const { pageHtml } = await import('../pages/html.ts');
    deliver(pageHtml({ title: report.title, markdown: report.markdown() }), output);
  } else deliver(report.markdown(), output);
};

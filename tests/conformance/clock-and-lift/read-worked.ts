/** A row of a worked table: cells by the title of their column. */
export type WorkedRow = Readonly<Record<string, string>>;

/** A note with what was worked out from it by hand. */
export type Worked = {
  readonly title: string;
  readonly note: string;
  readonly clock: readonly WorkedRow[];
  readonly lift: readonly WorkedRow[];
  readonly minutes: readonly WorkedRow[];
};

const cellsOf = (line: string): string[] =>
  line
    .split('|')
    .slice(1, -1)
    .map((cell) => cell.trim());

/** The tables of a page, each as its rows. */
export const tablesOf = (text: string): WorkedRow[][] =>
  [...text.matchAll(/(?:^\|.*\|\n)+/gm)].map(([table]) => {
    const [titles = [], , ...rows] = table.trimEnd().split('\n').map(cellsOf);
    return rows.map((cells) => Object.fromEntries(titles.map((title, index) => [title, cells[index] ?? ''])));
  });

/** Reads a page of the set: a title, one fenced note, and the tables of the clock, the lift and the minutes. */
export const readWorked = (page: string): Worked => {
  const [, title] = /^# (.*)$/m.exec(page) ?? [];
  const [, note] = /^```bowl\n(.*?)^```$/ms.exec(page) ?? [];
  const [clock, lift, minutes, more] = tablesOf(page);
  if (title === undefined || note === undefined || !clock || !lift || !minutes || more)
    throw new Error('a page has a title, one note and three tables');
  return { title, note, clock, lift, minutes };
};

/** A figure of a table; undefined for a dash. */
export const figureIn = (row: WorkedRow, title: string): number | undefined => {
  const cell = row[title];
  if (cell === '–') return undefined;
  const figure = Number(cell);
  if (cell === undefined || cell === '' || Number.isNaN(figure)) throw new Error(`no figure under ${title}: ${cell}`);
  return figure;
};

/** A zone of a table: a dash stands for the whole of a bowl. */
export const zoneIn = (row: WorkedRow): string => (row.zone === '–' ? '' : (row.zone ?? ''));

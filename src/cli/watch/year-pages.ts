import { isDeepStrictEqual } from 'node:util';
import type { ClientFile, Journal } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import { earlierYears } from '../../pages/earlier-visits.ts';
import { findingsByEntry } from '../../pages/finding-lines.ts';
import { newsByDate } from '../../pages/news.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import type { Finding } from '../../text/finding.ts';
import { yearFile } from './card-file.ts';

/** A client as she is worked out. */
type Worked = {
  readonly journal: Journal;
  readonly client: ClientFile;
  readonly reckoned: readonly VisitReckoned[];
  readonly findings: readonly Finding[];
  /** Whether anything changed that all clients share: whatever a page shows may be other then. */
  readonly isSharedOther: boolean;
};

/** The pages of years of long histories: which there are, and which a change may have changed. */
export type Years = {
  /** Takes a client anew, or away; gives the pages to draw and those that are no more. */
  readonly take: (
    name: string,
    worked: Worked | undefined,
  ) => { readonly draw: readonly string[]; readonly gone: readonly string[] };
  /** Whose page a file is, and of which year; undefined for none. */
  readonly at: (file: string) => { readonly client: string; readonly year: string } | undefined;
  /** Says that a page was drawn as it was taken last. */
  readonly drawn: (file: string) => void;
  readonly files: () => Iterable<string>;
};

/** All that a year's page is made of. */
type From = {
  readonly entries: readonly Stood[];
  /** Her visits; those of the page are from `from` up to `to`, and what was before says how one is read. */
  readonly visits: readonly Stood[];
  readonly from: number;
  readonly to: number;
  readonly findings: readonly Finding[];
  /** What later visits say of those of the page. */
  readonly news: readonly unknown[];
  /** Her bowls hang on nobody else's. */
  readonly alone: boolean;
};

type YearPage = { readonly client: string; readonly year: string; now: From; drawn: From | undefined };

const sameUpTo = (to: number, a: readonly unknown[], b: readonly unknown[]): boolean => {
  for (let index = 0; index < to; index++) if (a[index] !== b[index]) return false;
  return true;
};

const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && sameUpTo(a.length, a, b);

const isSame = (a: From, b: From): boolean =>
  a.alone &&
  b.alone &&
  a.from === b.from &&
  a.to === b.to &&
  sameList(a.entries, b.entries) &&
  sameUpTo(a.to, a.visits, b.visits) &&
  sameList(a.news, b.news) &&
  isDeepStrictEqual(a.findings, b.findings);

/** Whether no bowl of a client is another client's made again. */
const isAlone = ({ name, visits }: ClientFile): boolean =>
  visits.every(({ entry }) =>
    entry.facts.every((fact) => fact.word !== 'again' || (fact.from.client?.name ?? name) === name),
  );

/** No pages yet. */
export const createYears = (): Years => {
  const pages = new Map<string, YearPage>();
  const ofClient = new Map<string, readonly string[]>();

  const take: Years['take'] = (name, worked) => {
    const draw: string[] = [];
    const now: string[] = [];
    const years = worked === undefined ? [] : [...earlierYears(worked.reckoned)];
    if (worked !== undefined && years.length > 0) {
      const { journal, client, reckoned, findings, isSharedOther } = worked;
      const alone = isAlone(client);
      const news = newsByDate(reckoned);
      const stoods = reckoned.map(({ visit }) => visit);
      const ofEntry = findingsByEntry(journal, findings);
      let from = 0;
      for (const [year, visits] of years) {
        const to = from + visits.length;
        const page: From = {
          entries: client.entries,
          visits: stoods,
          from,
          to,
          findings: visits.flatMap(({ visit }) => [...ofEntry(visit)]),
          news: [...new Set(visits.map(({ date }) => date))].flatMap((date) =>
            (news.get(date) ?? []).flatMap(({ fact, saidOn }) => [fact, saidOn]),
          ),
          alone,
        };
        from = to;
        const file = yearFile(name, year);
        const known = pages.get(file);
        if (known === undefined) pages.set(file, { client: name, year, now: page, drawn: undefined });
        else known.now = page;
        now.push(file);
        if (isSharedOther || known?.drawn === undefined || !isSame(known.drawn, page)) draw.push(file);
      }
    }
    const stay = new Set(now);
    const gone = (ofClient.get(name) ?? []).filter((file) => !stay.has(file));
    for (const file of gone) pages.delete(file);
    if (now.length === 0) ofClient.delete(name);
    else ofClient.set(name, now);
    return { draw, gone };
  };

  return {
    take,
    at: (file) => pages.get(file),
    drawn: (file) => {
      const page = pages.get(file);
      if (page !== undefined) page.drawn = page.now;
    },
    files: () => pages.keys(),
  };
};

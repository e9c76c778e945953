import { basename, relative } from 'node:path';
import { type Asked, isSharedOther, oneForAll, watched, wokenBy } from '../../journal/asked.ts';
import type { ClientFile } from '../../journal/journal.ts';
import { cardHtml, yearHtml } from '../../pages/card-html.ts';
import { type ClientRow, clientRows } from '../../pages/clients-page.ts';
import { type FindingsKept, findingsMarkdown, type Links } from '../../pages/findings-page.ts';
import { pageHtml } from '../../pages/html.ts';
import type { Rendered } from '../../pages/html-blocks.ts';
import { indexMarkdown } from '../../pages/index-page.ts';
import { withLeftOut } from '../../pages/left-out.ts';
import { type ClientFault, withinClient } from '../../reckon/client-fault.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { reported } from '../../rules/reported.ts';
import type { Settled } from '../../rules/session.ts';
import { type Finding, sameFindings } from '../../text/finding.ts';
import { cardFile, yearFile } from './card-file.ts';
import { createYears } from './year-pages.ts';

export const INDEX = 'index.html';
export const FINDINGS = 'findings.html';

/** Draws the pages of a journal; what a change did not touch is not drawn again. */
export type Drawing = {
  /** Takes a new state, and gives the cards and pages of years that it may change, and those that are no more. */
  readonly take: (
    settled: Settled,
    on: string,
  ) => { readonly draw: readonly string[]; readonly gone: readonly string[] };
  /** A page by its name; undefined for one that is no more. */
  readonly page: (name: string) => string | undefined;
  /** How many alerts the card of a client begins with. */
  readonly alerts: (client: string) => number;
  /** Clients at whose notes the program failed, and who are left out of the pages that list all. */
  readonly leftOut: () => readonly ClientFault[];
  /** The files of all cards, and of the pages of years. */
  readonly files: () => ReadonlySet<string>;
};

/** Cards of which the parts are kept: those that hands are at, on a busy day. */
const MOST_CARDS = 20;

const linksFrom = (root: string, up: string): Links => ({
  cardOf: (client) => up + encodeURI(cardFile(client)),
  fileOf: (file) => relative(root, file).replaceAll('\\', '/') || file,
});

/** The way from a card back to the pages that list all, and from a year's page to the card; not printed. */
const wayBack = (card?: string): string =>
  `<nav aria-label="Pages"><ul>${card === undefined ? '' : `<li><a href="${card}">Card</a></li>`}<li><a href="../index.html">All clients</a></li><li><a href="../findings.html">Findings</a></li></ul></nav>\n`;
const WAY_TO_INDEX = '<nav aria-label="Pages"><ul><li><a href="index.html">All clients</a></li></ul></nav>\n';

const withWay = (html: string, way: string): string => html.replace('<body>\n<header>\n', (open) => open + way);

const isOpen = ({ reason, severity }: Finding): boolean => reason === undefined || severity === 'stop';

/** Findings by the client they are about; those about none are left out. */
const byClient = (findings: readonly Finding[]): Map<string, Finding[]> => {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    if (finding.client === undefined) continue;
    const group = groups.get(finding.client);
    if (group === undefined) groups.set(finding.client, [finding]);
    else group.push(finding);
  }
  return groups;
};

/** Every finding about a client in order of report, explained ones after the others. */
const inOrder = (findings: Finding[]): readonly Finding[] => {
  const { findings: open, answered } = reported(findings);
  return [...new Set([...open, ...answered])];
};

/** Whether two lists of findings say the same, wherever they stand. */
const sameWords = (a: readonly Finding[], b: readonly Finding[]): boolean =>
  a.length === b.length &&
  a.every((one, index) => {
    const other = b[index];
    return one.message === other?.message && one.expected === other.expected && one.todo === other.todo;
  });

const minuteOf = ({ visit }: VisitReckoned): number => visit.entry.time?.minutes ?? -1;

/** The visits of a day, the earliest first. */
export const visitsOn = ({ journal, reckonedOf }: Settled, on: string): VisitReckoned[] =>
  [...journal.clients.keys()]
    .flatMap((name) => {
      const visits = reckonedOf(name);
      return (visits.at(-1)?.date ?? '') < on ? [] : visits.filter(({ date }) => date === on);
    })
    .sort((a, b) => minuteOf(a) - minuteOf(b));

/** A drawing with nothing in it yet, of the notes at `root`. */
export const startDrawing = (root: string): Drawing => {
  let state: { readonly settled: Settled; readonly on: string } | undefined;
  const rows = new Map<string, ClientRow>();
  /** Clients who could be worked out, and at whose row of the list the program failed. */
  const unlisted = new Map<string, ClientFault>();
  const files = new Map<string, string>();
  const years = createYears();
  /** What is found about each client, and the list of it that is in her own notes alone. */
  const found = new Map<string, { readonly own: readonly Finding[]; readonly findings: readonly Finding[] }>();
  /** What her row in the list of clients was drawn by, then what her card was, of others and of what all share. */
  const asked = new Map<string, readonly Asked[]>();
  /** The same of the pages of her years, by file. */
  const askedOfYear = new Map<string, Asked>();
  const askedOnce = oneForAll();
  let elsewhere: ReadonlyMap<string, readonly Finding[]> = new Map();

  const now = (): { readonly settled: Settled; readonly on: string } => {
    if (state === undefined) throw new Error('nothing was taken to draw');
    return state;
  };

  const takeFound = (name: string): readonly Finding[] => {
    const own = now().settled.foundOf(name);
    const findings = inOrder([...(elsewhere.get(name) ?? []), ...own]);
    if (findings.length === 0) found.delete(name);
    else found.set(name, { own, findings });
    return findings;
  };

  const take: Drawing['take'] = (settled, on) => {
    state = { settled, on };
    const { journal, touched, redone, reckonedOf, foundOf, faultOf } = settled;
    const before = elsewhere;
    elsewhere = byClient(settled.elsewhere());
    // What all share can be found wrong at a client whose own notes did not change, such as a name given twice.
    const told = [...new Set([...before.keys(), ...elsewhere.keys()])].filter(
      (name) => !sameFindings(before.get(name) ?? [], elsewhere.get(name) ?? []),
    );
    const isWoken = wokenBy(touched.changed);
    const woken = [
      ...[...asked].flatMap(([name, by]) => (by.some(isWoken) ? [name] : [])),
      ...[...askedOfYear].flatMap(([file, by]) => {
        const of = isWoken(by) ? years.at(file) : undefined;
        return of === undefined ? [] : [of.client];
      }),
    ];
    const draw: string[] = [];
    const gone: string[] = [];
    for (const name of new Set([...redone, ...told, ...woken])) {
      const client = journal.clients.get(name);
      const file = cardFile(name);
      const findings = takeFound(name);
      // A client who is worked out anew is listed anew: one of whom nothing is known would look like one without visits.
      rows.delete(name);
      unlisted.delete(name);
      if (client === undefined) {
        asked.delete(name);
        if (files.delete(file)) gone.push(file);
        gone.push(...years.take(name, undefined).gone);
        continue;
      }
      const own = watched(journal);
      const reckoned = reckonedOf(name);
      const listed = withinClient(client, () =>
        clientRows(
          { ...own.journal, clients: new Map([[name, client]]) },
          new Map([[name, reckoned]]),
          findings.filter(isOpen),
          on,
        ),
      );
      if ('fault' in listed) unlisted.set(name, listed);
      else if (faultOf(name) === undefined) for (const row of listed) rows.set(name, row);
      asked.set(name, [askedOnce(own.asked())]);
      files.set(file, name);
      draw.push(file);
      // After a fault nothing is known of her visits, and the pages stand.
      if (settled.faultOf(name) !== undefined) continue;
      const pages = years.take(name, {
        journal,
        client,
        reckoned,
        findings,
        isSharedOther: isSharedOther(touched.changed),
      });
      draw.push(...pages.draw);
      gone.push(...pages.gone);
      for (const file of pages.gone) askedOfYear.delete(file);
    }
    // Findings of clients who are as they were stand on other lines, where lines were typed above them.
    const isTaken = new Set(draw);
    for (const [name, before] of found) {
      const client = journal.clients.get(name);
      if (client === undefined || isTaken.has(cardFile(name)) || foundOf(name) === before.own) continue;
      const findings = takeFound(name);
      if (sameWords(findings, before.findings)) continue;
      draw.push(cardFile(name));
      if (settled.faultOf(name) !== undefined) continue;
      const worked = { journal, client, reckoned: reckonedOf(name), findings, isSharedOther: false };
      draw.push(...years.take(name, worked).draw);
    }
    return { draw, gone };
  };

  const leftOut = (): readonly ClientFault[] => [...now().settled.faults(), ...unlisted.values()];

  const clientNow = (name: string): ClientFile => {
    const { settled } = now();
    const client = settled.journal.clients.get(name);
    if (client === undefined) throw new Error(`no client ${name}`);
    const fault = settled.faultOf(name) ?? unlisted.get(name)?.fault;
    // Her page stands as it was: one drawn without her visits would look sound.
    if (fault !== undefined) throw fault;
    return client;
  };

  /** The parts of the cards drawn last, the newest of them at the end: a hand types at one client for a while. */
  const cards = new Map<string, Rendered>();
  const renderedOf = (name: string): Rendered => {
    const rendered = cards.get(name) ?? new Map();
    cards.delete(name);
    cards.set(name, rendered);
    for (const oldest of cards.keys()) {
      if (cards.size <= MOST_CARDS) break;
      cards.delete(oldest);
    }
    return rendered;
  };

  const card = (name: string): string => {
    const { settled, on } = now();
    const client = clientNow(name);
    const yearPage = (year: string): string => encodeURI(basename(yearFile(name, year)));
    const own = watched(settled.journal);
    const findings = found.get(name)?.findings ?? [];
    const rendered = renderedOf(name);
    const html = cardHtml(own.journal, client, settled.reckonedOf(name), findings, { on, yearPage, rendered });
    asked.set(name, [...(asked.get(name) ?? []).slice(0, 1), askedOnce(own.asked())]);
    return withWay(html, wayBack());
  };

  const yearPage = (file: string): string | undefined => {
    const of = years.at(file);
    if (of === undefined) return undefined;
    const { settled } = now();
    const client = clientNow(of.client);
    const findings = found.get(of.client)?.findings ?? [];
    const own = watched(settled.journal);
    const html = yearHtml(own.journal, client, settled.reckonedOf(of.client), findings, of.year);
    years.drawn(file);
    askedOfYear.set(file, askedOnce(own.asked()));
    return html && withWay(html, wayBack(encodeURI(basename(cardFile(of.client)))));
  };

  // Of the long pages, what did not change is neither written nor rendered again.
  const rendered = { index: new Map(), findings: new Map() };
  const keptFindings: FindingsKept = new Map();

  const index = (): string => {
    const { settled, on } = now();
    const list = [...settled.journal.clients.keys()].flatMap((name) => {
      const row = rows.get(name);
      return row === undefined ? [] : [{ row, findings: found.get(name)?.findings ?? [] }];
    });
    const links = { ...linksFrom(root, ''), findingsAt: FINDINGS };
    const page = indexMarkdown(settled.journal, list, visitsOn(settled, on), settled.all().findings, links, on);
    const markdown = withLeftOut(page, leftOut());
    return pageHtml({ title: settled.journal.salon.full ?? 'Journal', markdown, rendered: rendered.index });
  };

  const findings = (): string => {
    const { settled, on } = now();
    const page = findingsMarkdown(settled.journal, settled.all().findings, linksFrom(root, ''), on, keptFindings);
    const markdown = withLeftOut(page, settled.faults());
    return withWay(pageHtml({ title: 'Findings', markdown, rendered: rendered.findings }), WAY_TO_INDEX);
  };

  const page = (name: string): string | undefined => {
    if (name === INDEX) return index();
    if (name === FINDINGS) return findings();
    const client = files.get(name);
    return client === undefined ? yearPage(name) : card(client);
  };

  return {
    take,
    page,
    alerts: (client) => rows.get(client)?.alerts ?? 0,
    leftOut,
    files: () => new Set([...files.keys(), ...years.files()]),
  };
};

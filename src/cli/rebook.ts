import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { ENDING } from '../journal/find.ts';
import type { ClientFile, Journal } from '../journal/journal.ts';
import { readSource, type Source } from '../journal/source.ts';
import { whereIs } from '../journal/where.ts';
import { awaitedAfter } from '../reckon/ahead/awaited.ts';
import { needsBefore, salonMix } from '../reckon/forecast/forecast.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { addLines } from './add-lines.ts';
import { paintFor } from './colour.ts';
import { ended, failAt, openReckoned } from './failed-clients.ts';
import { findClient } from './find-client.ts';
import { cautionsOnce, findingText, placeText } from './finding-text.ts';
import { foundIn } from './findings-ahead.ts';
import { nextVisit } from './next-visit.ts';
import { isNotes, reasonOf } from './open-journal.ts';
import { print, printLine, remark, remarkLines } from './print.ts';
import { type Stub, stubLines } from './rebook-stub.ts';
import { refusal } from './refusal.ts';
import { dayOf } from './today.ts';
import { writeNotes } from './write/notes.ts';
import { groundsOf, refuseNoFile } from './write/place.ts';

export type RebookOptions = { readonly on?: string; readonly append?: string };

const sourceOf = (journal: Journal, path: string): Source => {
  const known = journal.sources.get(path);
  if (known !== undefined) return known;
  for (const source of journal.sources.values()) if (resolve(source.path) === resolve(path)) return source;
  try {
    return readSource(path, readFileSync(path));
  } catch (error) {
    // A file that is not there yet begins empty.
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return readSource(path, Buffer.alloc(0));
    throw refusal(`\`${path}\` cannot be read: ${reasonOf(error)}.`);
  }
};

type Last = { readonly date: string; readonly last: ClientFile['visits'][number] };

const dateFor = (
  journal: Journal,
  client: ClientFile,
  visits: readonly VisitReckoned[],
  on: string | undefined,
): Last => {
  const last = client.visits.at(-1);
  if (last === undefined)
    throw refusal(
      `${client.full} has no visit to go by.`,
      `Write the first one by hand: \`visit ${dayOf(on)} ${client.name}\`.`,
    );
  const lastDate = last.entry.date?.date ?? '';
  const date = on === undefined ? awaitedAfter(visits, lastDate)?.first : dayOf(on);
  if (date === undefined)
    throw refusal(
      `The last visit of ${client.full}, ${lastDate}, has no \`next\` with a date or a length.`,
      'Give the day, as in `--on 2026-10-30`.',
    );
  if (date <= lastDate)
    throw refusal(
      `${client.full} has a visit on ${lastDate} already, at ${placeText(whereIs(journal, { in: last, line: 0, at: 0 }))}.`,
      'Give a later day with `--on`.',
    );
  return { date, last };
};

/** What the rules would find in the visit, on standard error: the notes alone go to standard output. */
const remarkAhead = (journal: Journal, client: ClientFile, next: Stub): void => {
  const { findings, path, linesOf } = foundIn(journal, client, next);
  const paint = paintFor('stderr');
  const once = cautionsOnce();
  for (const finding of findings) {
    const named = finding.place.file === path ? `visit of ${next.on}` : undefined;
    remarkLines(`\n${findingText(once(finding), linesOf, paint, named)}`);
  }
};

/** `bowlbook rebook`: prints the lines of the next visit, or adds them to a file. */
export const rebook = (name: string, paths: readonly string[], options: RebookOptions): number => {
  const { journal, unreadable, all, faults } = openReckoned(paths);
  const client = findClient(journal, name);
  failAt(client.name, faults);
  const visits = all.get(client.name) ?? [];
  const { date, last } = dateFor(journal, client, visits, options.on);
  const next = nextVisit(journal, last, visits, date, salonMix(needsBefore(all, date)));
  const stub = stubLines(next);
  if (options.append === undefined) {
    print(stub.join('\n'));
    remarkAhead(journal, client, next);
    return ended({ faults, unreadable });
  }
  const into = options.append === 'auto' ? last.file : options.append;
  if (!isNotes(into))
    throw refusal(
      `\`${into}\` is no file of notes: its name does not end in \`${ENDING}\`, so nothing is added.`,
      'Name one that does, or `auto` for the file of the last visit.',
    );
  refuseNoFile(into);
  const source = sourceOf(journal, into);
  const end = source.lines.every((text) => text === '') ? -1 : source.lines.length - 1;
  const apart = end >= 0 && source.lines[end]?.trim() !== '' ? [''] : [];
  const added = addLines(source, end, [...apart, ...stub]);
  writeNotes(added.path, added.bytes, added.was, groundsOf(paths));
  printLine(`${added.path}:${added.line + apart.length + 1}  ${stub[0]}`);
  for (const { message, line } of added.notices) remark(`${added.path}:${line + 1}  ${message}`);
  remarkAhead(journal, client, next);
  return ended({ faults, unreadable });
};

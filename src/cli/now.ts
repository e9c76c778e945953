import { existsSync } from 'node:fs';
import { type Journal, joinSources } from '../journal/journal.ts';
import { readSource, type Stood } from '../journal/source.ts';
import { entryLines, standingOf } from '../journal/where.ts';
import { isBlank, readLine } from '../notation/read-line.ts';
import { isHeader } from '../notation/words.ts';
import type { ClientFault } from '../reckon/client-fault.ts';
import { type Notice, READING_RULES } from '../records/notice.ts';
import { judge } from '../rules/judging.ts';
import type { Finding } from '../text/finding.ts';
import { fromOf, spanOf, toOf } from '../text/span.ts';
import { type Added, addLines } from './add-lines.ts';
import { paintFor } from './colour.ts';
import { ended } from './failed-clients.ts';
import { findingText, type LinesOf, linesIn } from './finding-text.ts';
import { openJournal } from './open-journal.ts';
import { openVisit, visitText } from './open-visit.ts';
import { printLine, remarkLines } from './print.ts';
import { changedIn, changedMeanwhile, refusal } from './refusal.ts';
import { stamp } from './stamp.ts';
import { dayOf, minuteOf } from './today.ts';
import { holdNotes } from './write/notes.ts';
import { groundsOf } from './write/place.ts';

export type NowOptions = { readonly at?: string; readonly on?: string; readonly client?: string };

/** The last line of an entry that says something, counted from the file's first. */
export const lastLine = (journal: Journal, stood: Stood): number => {
  const last = entryLines(journal, stood).findLastIndex((text) => !isBlank(text));
  return standingOf(journal, stood).start + Math.max(last, 0);
};

/** The indentation of the lines under the header; two spaces while there are none. */
export const indentation = (journal: Journal, stood: Stood): string => {
  const body = entryLines(journal, stood)
    .slice(1)
    .findLast((text) => !isBlank(text));
  return body === undefined ? '  ' : body.slice(0, body.length - body.trimStart().length);
};

const lineOf = (typed: string, minute: number): string => {
  if (/[\r\n]/.test(typed)) throw refusal('The text has more than one line.', 'Give one line at a time.');
  const { word } = readLine(typed.trim());
  if (word === '')
    throw refusal(
      `\`${typed}\` begins with no word of the notation.`,
      'Write it as in `bowlbook now "check A hairline gold"`.',
    );
  if (isHeader(word))
    throw refusal(
      `\`${word}\` opens an entry, and this command adds a line to one.`,
      'Type the entry into a file of notes.',
    );
  return stamp(typed, minute);
};

/** What the rules find on the line that is to be written, such as a stage that is misspelt. */
const foundOn = (
  journal: Journal,
  added: Added,
  client: string,
  day: string,
): { readonly findings: readonly Finding[]; readonly linesOf: LinesOf; readonly faults: readonly ClientFault[] } => {
  const whole = joinSources([
    ...[...journal.sources.values()].filter(({ path }) => path !== added.path),
    readSource(added.path, added.bytes),
  ]);
  const judged = judge(whole, day);
  const onLine = judged
    .about(client)
    .filter(
      ({ place, reason, severity }) =>
        place.file === added.path && place.line === added.line && (reason === undefined || severity === 'stop'),
    );
  return { findings: onLine, linesOf: linesIn(whole.sources), faults: judged.faults() };
};

/** A line that can be added: the file with it in, whose visit it is in, and what the rules say of it. */
type Planned = {
  readonly line: string;
  readonly added: Added;
  /** The visit as its colourist knows it, and where it stands. */
  readonly at: string;
  readonly found: ReturnType<typeof foundOn>;
};

/** What is wrong with the typing of a line, shown without the indentation that it would have in the file. */
const wrongTyping = (line: string, { rule, message, todo, label, at }: Notice, indent: number): string => {
  const from = Math.max(0, fromOf(at) - indent);
  const place = { file: '', line: 0, at: spanOf(from, Math.max(from, toOf(at) - indent)) };
  const finding = {
    rule,
    severity: READING_RULES[rule].severity,
    place,
    message,
    ...(todo && { todo }),
    ...(label && { label }),
  };
  return findingText(finding, () => [line], paintFor('stderr'));
};

/**
 * Reads the notes and makes the line ready for its visit; gives what is wrong with its typing where it does not read. The
 * clock is read after the notes, so a line that is added to them is no earlier than any that stands there by the clock.
 */
const planned = (typed: string, paths: readonly string[], options: NowOptions): Planned | string => {
  if (!/\s/.test(typed.trim()) && paths.some((path) => !existsSync(path)))
    throw refusal(
      `\`${typed} ${paths.join(' ')}\` is read as a line and paths.`,
      `Put the whole line in quotes: \`bowlbook now "${typed} ${paths.join(' ')}"\`.`,
    );
  const { journal, shown } = openJournal(paths);
  const minute = minuteOf(options.at);
  const line = lineOf(typed, minute);
  const day = dayOf(options.on);
  const open = openVisit(journal, { day, minute, word: readLine(line).word }, options.client, shown);
  const { visit } = open;
  const source = journal.sources.get(visit.file);
  if (source === undefined) throw refusal(`\`${visit.file}\` is not among the notes that were read.`);
  const indent = indentation(journal, visit);
  const added = addLines(source, lastLine(journal, visit), [indent + line]);
  const [notice] = added.notices;
  if (notice !== undefined) return wrongTyping(line, notice, indent.length);
  if (added.entries.length !== source.entries.length) throw refusal(`\`${line}\` is not a line of a visit.`);
  return { line, added, at: visitText(journal, open), found: foundOn(journal, added, open.client.name, day) };
};

/** How often the notes are read anew when something else changes them while they are read. */
const TRIES = 5;

/** Plans; gives the file that something else went on changing while the notes were read, where one was. */
const tried = (plan: () => Planned | string, tries: number): Planned | string | { readonly changed: string } => {
  for (let left = tries; ; left--) {
    try {
      return plan();
    } catch (error) {
      const changed = changedIn(error);
      if (changed === undefined) throw error;
      if (left <= 1) return { changed };
    }
  }
};

/**
 * Plans, and writes while no other run changes the file; where one did since the notes were read, it is planned anew
 * first. Gives what was written, or what is wrong with the line.
 */
const written = (grounds: readonly string[], plan: () => Planned | string): Planned | string => {
  let made = tried(plan, 1);
  for (;;) {
    if (typeof made === 'string') return made;
    const before = made;
    const path = 'changed' in before ? before.changed : before.added.path;
    let isWritten = false;
    made = holdNotes(path, grounds, ({ isAs, write }) => {
      const now = 'added' in before && isAs(before.added.was) ? before : tried(plan, TRIES);
      if (typeof now === 'string') return now;
      if ('changed' in now) throw changedMeanwhile(now.changed, 'nothing is added');
      // The visit that is open may be one of another file by now, which is not held.
      isWritten = now.added.path === path;
      if (isWritten) write(now.added.bytes, now.added.was);
      return now;
    });
    if (isWritten && typeof made !== 'string' && 'added' in made) return made;
  }
};

/**
 * `bowlbook now`: stamps the time on a line and adds it to the visit that is open today. A line that does not read
 * cleanly is shown with what is wrong, and nothing is written: exit code 1. One that reads is written, and what the rules
 * say of it is shown. All is looked at before anything is written.
 */
export const now = (typed: string, paths: readonly string[], options: NowOptions): number => {
  lineOf(typed, minuteOf(options.at));
  if (!/\s/.test(typed.trim()) && paths.some((path) => !existsSync(path)))
    throw refusal(
      `\`${typed} ${paths.join(' ')}\` is read as a line and paths.`,
      `Put the whole line in quotes: \`bowlbook now "${typed} ${paths.join(' ')}"\`.`,
    );
  const plan = (): Planned | string => planned(typed, paths, options);
  const done = written(groundsOf(paths), plan);
  if (typeof done === 'string') {
    remarkLines(`${done}\n\nNothing is written.`);
    return 1;
  }
  const { added, line, at, found } = done;
  printLine(`${added.path}:${added.line + 1}  ${line}  (${at})`);
  const paint = paintFor('stderr');
  for (const finding of found.findings) remarkLines(`\n${findingText(finding, found.linesOf, paint)}`);
  return ended({ faults: found.faults, unreadable: [] });
};

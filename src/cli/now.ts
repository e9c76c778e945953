import { existsSync } from 'node:fs';
import { type Journal, joinSources } from '../journal/journal.ts';
import { readSource, type Stood } from '../journal/source.ts';
import { isBlank, readLine } from '../notation/read-line.ts';
import { isHeader } from '../notation/words.ts';
import { reckonAll } from '../reckon/visit.ts';
import { READING_RULES } from '../records/notice.ts';
import { findAll } from '../rules/run.ts';
import type { Finding } from '../text/finding.ts';
import { fromOf, spanOf, toOf } from '../text/span.ts';
import { type Added, addLines } from './add-lines.ts';
import { paintFor } from './colour.ts';
import { findingText, type LinesOf, linesIn } from './finding-text.ts';
import { openJournal } from './open-journal.ts';
import { openVisit, visitText } from './open-visit.ts';
import { printTyped, remark } from './print.ts';
import { refusal } from './refusal.ts';
import { stamp } from './stamp.ts';
import { dayOf, minuteOf } from './today.ts';
import { writeWhole } from './write.ts';

export type NowOptions = { readonly at?: string; readonly on?: string; readonly client?: string };

/** The last line of an entry that says something, counted from the file's first. */
export const lastLine = (lines: readonly string[], { line, end }: Stood): number => {
  const last = lines.slice(line, end).findLastIndex((text) => !isBlank(text));
  return line + Math.max(last, 0);
};

/** The indentation of the lines under the header; two spaces while there are none. */
export const indentation = (lines: readonly string[], { line, end }: Stood): string => {
  const body = lines.slice(line + 1, end).findLast((text) => !isBlank(text));
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

/** What the rules find on the line just written, such as a stage that is misspelt. */
const foundOn = (
  journal: Journal,
  added: Added,
  client: string,
  day: string,
): { readonly findings: readonly Finding[]; readonly linesOf: LinesOf } => {
  const whole = joinSources([
    ...[...journal.sources.values()].filter(({ path }) => path !== added.path),
    readSource(added.path, added.bytes),
  ]);
  const findings = findAll(whole, reckonAll(whole), day).findings.filter(
    ({ place, client: of }) =>
      place.file === added.path && place.line === added.line && (of === undefined || of === client),
  );
  return { findings, linesOf: linesIn(whole.sources) };
};

/**
 * `bowlbook now`: stamps the time on a line and adds it to the visit that is open today. A line that does not read
 * cleanly is shown with what is wrong, and nothing is written: exit code 1. One that reads is written, and what the rules
 * say of it is shown.
 */
export const now = (typed: string, paths: readonly string[], options: NowOptions): number => {
  const minute = minuteOf(options.at);
  const line = lineOf(typed, minute);
  if (!/\s/.test(typed.trim()) && paths.some((path) => !existsSync(path)))
    throw refusal(
      `\`${typed} ${paths.join(' ')}\` is read as a line and paths.`,
      `Put the whole line in quotes: \`bowlbook now "${typed} ${paths.join(' ')}"\`.`,
    );
  const { journal, shown } = openJournal(paths);
  const day = dayOf(options.on);
  const open = openVisit(journal, { day, minute, word: readLine(line).word }, options.client, shown);
  const { visit } = open;
  const source = journal.sources.get(visit.file);
  if (source === undefined) throw refusal(`\`${visit.file}\` is not among the notes that were read.`);
  const added = addLines(source, lastLine(source.lines, visit), [indentation(source.lines, visit) + line]);
  const [notice] = added.notices;
  const indent = indentation(source.lines, visit).length;
  if (notice !== undefined || added.entries.length !== source.entries.length) {
    if (notice === undefined) throw refusal(`\`${line}\` is not a line of a visit.`);
    const { rule, message, todo, label, at } = notice;
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
    remark(`${findingText(finding, () => [line], paintFor(process.stderr))}\n\nNothing is written.`);
    return 1;
  }
  writeWhole(added.path, added.bytes, added.was);
  printTyped(`${added.path}:${added.line + 1}  ${line}  (${visitText(open)})`);
  const paint = paintFor(process.stderr);
  const found = foundOn(journal, added, open.client.name, day);
  for (const finding of found.findings) remark(`\n${findingText(finding, found.linesOf, paint)}`);
  return 0;
};

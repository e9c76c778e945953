import { isDeepStrictEqual } from 'node:util';
import { readSource, rereadSource, type Source, type Standing } from '../../src/journal/source.ts';
import { cutEntries } from '../../src/notation/cut.ts';
import { neatenText } from '../../src/notation/neaten.ts';
import { isBlank, readFresh, readLine } from '../../src/notation/read-line.ts';
import { withoutSpace } from '../../src/notation/space.ts';
import type { Notice } from '../../src/records/notice.ts';
import { readEntry } from '../../src/records/read-entry.ts';
import { linesOf } from '../../src/text/decode.ts';
import { type At, fromOf, toOf } from '../../src/text/span.ts';

/** What reading promises of any notes whatever. Each of these throws an error that says which promise is broken. */

export const promise = (kept: boolean, what: () => string): void => {
  if (!kept) throw new Error(what());
};

const shown = (value: unknown): string => JSON.stringify(value)?.slice(0, 300) ?? 'undefined';

export const equal = (a: unknown, b: unknown, what: string): void =>
  promise(isDeepStrictEqual(a, b), () => `${what}: ${shown(a)} is not ${shown(b)}`);

/** A run of characters lies in its line. */
export const liesIn = (at: At, text: string | undefined, what: string): void => {
  const [from, to] = [fromOf(at), toOf(at)];
  promise(
    text !== undefined && Number.isInteger(at) && from >= 0 && from <= to && to <= text.length,
    () => `${what}: characters ${from} to ${to} are not in ${shown(text)}`,
  );
};

/** Every place inside a record lies in the record's line, and every figure is one. */
const valuesHold = (value: unknown, text: string | undefined, what: string): void => {
  if (typeof value === 'number') promise(Number.isFinite(value), () => `${what}: the record holds ${value}`);
  if (value === null || typeof value !== 'object') return;
  if (Array.isArray(value)) {
    for (const item of value) valuesHold(item, text, what);
    return;
  }
  for (const key of Object.keys(value)) {
    const inner = (value as Record<string, unknown>)[key];
    if (key === 'at' && typeof inner === 'number') liesIn(inner, text, what);
    else if (inner !== undefined) valuesHold(inner, text, what);
  }
};

const noticeHolds = (notice: Notice, lines: readonly string[]): void => {
  const text = lines[notice.line];
  liesIn(notice.at, text, `the finding ${notice.rule}`);
  promise(
    toOf(notice.at) > fromOf(notice.at) || lines.every((line) => line === ''),
    () => `the finding ${notice.rule} is at no character`,
  );
  promise(notice.message !== '', () => `the finding ${notice.rule} says nothing`);
  if (notice.put !== undefined) liesIn(notice.put.at ?? notice.at, text, `the mend of ${notice.rule}`);
};

type Read = { readonly start: number; readonly end: number } & ReturnType<typeof readEntry>;

/** Every line is a header, a fact, blank or a comment, and belongs to one entry; places lie in their lines. */
const entriesHold = (lines: readonly string[], entries: readonly Read[]): void => {
  const kept = new Uint8Array(lines.length);
  let before = 0;
  for (const { start: line, end, entry, notices } of entries) {
    promise(line >= before && end <= lines.length, () => `the entry at line ${line + 1} overlaps another`);
    before = end;
    if (entry.kind !== 'orphan' || entry.header !== undefined) kept[line] = 1;
    const { facts, ...head } = entry;
    valuesHold(head, lines[line], `the header at line ${line + 1}`);
    for (const fact of facts) {
      const at = line + fact.line;
      promise(at < end, () => `a fact of line ${at + 1} is past the entry's end`);
      kept[at] = 1;
      valuesHold(fact, lines[at], `the record of line ${at + 1}`);
      if (fact.word === 'unread')
        promise(fact.typed === lines[at]?.trim(), () => `line ${at + 1} is kept as ${shown(fact.typed)}`);
    }
    const own = lines.slice(line, end);
    for (const notice of notices) noticeHolds(notice, own);
  }
  for (const [index, text] of lines.entries())
    promise(kept[index] === 1 || isBlank(text), () => `line ${index + 1} is lost: ${shown(text)}`);
};

/** Neatening changes white space alone, and a second time nothing. */
const neatens = (text: string): string => {
  const neaten = neatenText(text);
  promise(withoutSpace(neaten) === withoutSpace(text), () => 'neatening changes more than white space');
  promise(neatenText(neaten) === neaten, () => 'neatening twice is not neatening once');
  return neaten;
};

/** One line under a header. `closely` neatens it too, and reads it past the table. */
export const lineHolds = (head: string, line: string, closely: boolean): void => {
  const lines = [head, line];
  const entries = cutEntries(lines).map((cut) => ({
    start: cut.start,
    end: cut.end,
    ...readEntry(lines.slice(cut.start, cut.end), cut),
  }));
  entriesHold(lines, entries);
  if (!closely) return;
  neatens(`${head}\n${line}`);
  equal(readLine(line), readFresh(line), 'the table of lines gives another tree');
};

const recordsOf = ({ entries }: Source): unknown[] =>
  entries.map(({ entry }) => JSON.parse(JSON.stringify(entry, (key, value) => (PLACES.has(key) ? undefined : value))));

/** Places move when white space does, and what was not read keeps its white space. */
const PLACES: ReadonlySet<string> = new Set(['at', 'line', 'typed', 'rest', 'header']);

/** A file of any bytes. */
export const fileHolds = (bytes: Uint8Array): void => {
  const source = readSource('notes.bowl', bytes);
  entriesHold(
    source.lines,
    source.entries.map((stood, index) => ({ ...stood, ...(source.standing[index] as Standing) })),
  );
  for (const notice of source.notices) noticeHolds(notice, source.lines);
  if (source.encoding !== 'utf-8') return;
  const text = Buffer.from(bytes).toString('utf8');
  equal(source.lines, linesOf(text.replace(/^\ufeff/, '')), 'the lines are not those of the file');
  const neatened = readSource('notes.bowl', Buffer.from(neatens(text)));
  equal(recordsOf(neatened), recordsOf(source), 'neatening changes a record');
};

/** Every record of a file with the lines that its own stand on now; which object it is and how it counts is left out. */
const asItStands = ({ entries, standing, ...source }: Source): object => ({
  ...source,
  entries: entries.map((stood, index) => {
    const { start, end, rows } = standing[index] as Standing;
    const text = JSON.stringify(stood, (key, value: unknown) =>
      key === 'line' && typeof value === 'number' ? start + (rows?.[value] ?? value) : value,
    );
    return { start, end, text };
  }),
});

/** A file that is changed: what is read again is what would be read anew. */
export const rereadHolds = (before: Uint8Array, now: Uint8Array): void => {
  const again = rereadSource(readSource('notes.bowl', before), now);
  equal(asItStands(again), asItStands(readSource('notes.bowl', now)), 'reading again is not reading anew');
};

import { addLines } from '../add-lines.ts';
import { indentation, lastLine } from '../now.ts';
import { isRefusal } from '../refusal.ts';
import { stamp } from '../stamp.ts';
import { holdNotes } from '../write/notes.ts';
import { visitsOn } from './draw.ts';
import type { State } from './keep-current.ts';
import { stampsFor } from './stamps.ts';

/** What came of a press: whether a line was added, what the page says of it, and the line and its place for the terminal. */
export type Stamped =
  | { readonly isNoted: true; readonly line: string; readonly file: string; readonly at: number }
  | { readonly isNoted: false; readonly why: string };

const not = (why: string): Stamped => ({ isNoted: false, why });

/** The client and the line that a press asks for; undefined for anything else. */
const askedIn = (body: string): { readonly client: string; readonly line: string } | undefined => {
  try {
    const { client, line } = (JSON.parse(body) ?? {}) as Record<string, unknown>;
    return typeof client === 'string' && typeof line === 'string' ? { client, line } : undefined;
  } catch {
    return undefined;
  }
};

/**
 * Adds a line to a visit of the day, with the time put in. It is one of those offered for that visit as it stands now, and
 * no other; what `minute` says is the only thing new in it. The file is replaced whole, and not at all when it has changed
 * since it was read.
 */
export const stampHere = ({ settled, on, root }: State, body: string, minute: number): Stamped => {
  const asked = askedIn(body);
  if (asked === undefined) return not('That is no line of a visit.');
  const visits = visitsOn(settled, on).filter(
    (one) => one.client.name === asked.client && stampsFor(one).some(({ line }) => line === asked.line),
  );
  const [visit] = visits;
  if (visit === undefined) return not('The notes have changed, and that is no longer offered.');
  if (visits.length > 1) return not('Two visits of the day can be meant; type the line into the file.');
  const stood = visit.visit;
  const source = settled.journal.sources.get(stood.file);
  if (source === undefined) return not('The notes have changed, and that is no longer offered.');
  const line = stamp(asked.line, minute);
  try {
    const added = addLines(source, lastLine(settled.journal, stood), [indentation(settled.journal, stood) + line]);
    if (added.notices.length > 0 || added.entries.length !== source.entries.length)
      return not(`\`${line}\` does not read cleanly there.`);
    holdNotes(added.path, [root], ({ write }) => write(added.bytes, added.was));
    return { isNoted: true, line, file: added.path, at: added.line + 1 };
  } catch (error) {
    if (isRefusal(error)) return not(error.message);
    throw error;
  }
};

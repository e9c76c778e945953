import { relative } from 'node:path';
import type { Journal } from '../../journal/journal.ts';
import type { Finding } from '../../text/finding.ts';
import { withoutControls } from '../../text/width.ts';
import type { Paint } from '../colour.ts';
import { placeText } from '../finding-text.ts';
import { clientCount, counted } from '../summary.ts';
import { differenceText } from './gained-and-lost.ts';
import type { Change } from './keep-current.ts';

/** Files named in the line of one change; further ones are counted. */
const MOST_FILES = 3;

/** Findings shown under the line of one change; further ones are counted. */
const MOST_FOUND = 5;

/** Blocks of the bar that shows how far the first build is. */
const BAR = 24;

const filesText = ({ files, on, settled }: Change, root: string): string => {
  if (files.length === 0) return `The day is now ${on}`;
  const { sources } = settled.journal;
  const named = files.slice(0, MOST_FILES).map((file) => {
    const name = withoutControls(relative(root, file) || file);
    return sources.has(file) ? name : `${name} (gone)`;
  });
  const more = files.length - MOST_FILES;
  return named.join(', ') + (more > 0 ? ` and ${counted(more, 'more file', 'more files')}` : '');
};

const foundText = (finding: Finding, paint: Paint): string => {
  const { place, severity, rule, message, todo } = finding;
  const mend = todo === undefined ? '' : `\n    ${withoutControls(todo)}`;
  return `  ${placeText(place)} ${paint[severity](severity)} ${rule}  ${withoutControls(message)}${mend}`;
};

/**
 * A change as the terminal shows it: the time, what changed, the pages written, how long it took, findings gained and
 * lost; under it the findings gained. `at`: the time of day as text.
 */
export const changeText = (change: Change, { root, at, paint }: { root: string; at: string; paint: Paint }): string => {
  const { pages, took, found } = change;
  const { gained } = found;
  const more = gained.length - MOST_FOUND;
  const head = [
    `${paint.quiet(at)} ${filesText(change, root)}: ${counted(pages.length, 'page')} in ${Math.round(took)} ms`,
    differenceText(found),
  ].join('; ');
  return [
    head,
    ...gained.slice(0, MOST_FOUND).map((finding) => foundText(finding, paint)),
    ...(more > 0 ? [`  and ${more} more`] : []),
  ].join('\n');
};

/** The bar of the first build: `drawing pages [######------] 120 of 400`. */
export const barText = (done: number, of: number): string => {
  const full = of === 0 ? BAR : Math.floor((BAR * done) / of);
  return `drawing pages [${'#'.repeat(full)}${'-'.repeat(BAR - full)}] ${done} of ${of}`;
};

/** What is said once all pages stand: what is watched and how, and where the pages are. */
export const startText = (
  journal: Journal,
  { files, pages, root, index, how }: { files: number; pages: number; root: string; index: string; how: string },
): string =>
  [
    `${counted(files, 'file')} of notes in ${withoutControls(root)}, ${counted(clientCount(journal), 'client')}; ${counted(pages, 'page')} written. Open ${withoutControls(index)}`,
    how,
  ].join('\n');

/** The addresses for a device at the chair, and what sharing them comes to. */
export const shareText = (addresses: readonly string[]): string =>
  [
    `Shared on the network, for a phone or tablet at the chair: ${addresses.join(' or ')}`,
    'The code in the address works once. Anyone on that network with the code sees clients’ notes, and can note times.',
    'Nothing is encrypted on its way, so whoever can listen on the network can read it too. Ctrl-C ends it.',
  ].join('\n');

/** Told when a device opened the pages: from where, and the addresses for the next one. */
export const openedText = (from: string, addresses: readonly string[]): string =>
  `A device at ${from} has opened the shared pages, and that code is spent. For another one: ${addresses.join(' or ')}`;

/** Told when a device has tried so many wrong codes that it has to wait. */
export const guessedText = (from: string): string =>
  `A device at ${from} tries codes that are wrong; it has to wait a minute before each further one.`;

/** Told when a line was noted from a device: the line, and where it stands. */
export const notedText = ({
  line,
  file,
  row,
  from,
}: {
  line: string;
  file: string;
  row: number;
  from: string;
}): string => `Noted from ${from}: ${withoutControls(line)} (${withoutControls(file)}:${row})`;

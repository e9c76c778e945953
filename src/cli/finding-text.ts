import { isAbsolute, relative } from 'node:path';
import type { Source } from '../journal/source.ts';
import type { Finding } from '../text/finding.ts';
import { frameOf } from '../text/frame.ts';
import { type FilePlace, fromOf } from '../text/span.ts';
import { displayWidth, withoutControls } from '../text/width.ts';
import type { Paint } from './colour.ts';

/** The lines of a file, by its path. */
export type LinesOf = (file: string) => readonly string[];

/** The lines of the journal's files as read. */
export const linesIn =
  (sources: ReadonlyMap<string, Source>): LinesOf =>
  (file) =>
    sources.get(file)?.lines ?? [];

/** Columns in which the sentences under a finding are set. */
const MEASURE = 96;

/** Breaks a sentence into lines at its spaces, the further ones under the first. */
const wrapped = (text: string, indent: string): string => {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && displayWidth(`${indent}${line} ${word}`) > MEASURE) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, indent + line].join('\n');
};

/**
 * `path:line:column` of a place, the column counted from 1 in UTF-16 units, as editors count characters. `named` is the
 * path as shown; an empty one leaves `line:column`.
 */
export const placeText = ({ file, line, at }: FilePlace, named = file): string =>
  `${named === '' ? '' : `${withoutControls(named)}:`}${line + 1}:${fromOf(at) + 1}`;

/** A path as it is reached from the current folder. */
const fromHere = (file: string): string => (isAbsolute(file) ? relative('', file) : file);

/** Findings that can stand between a caution and a word that it stands above, before nobody looks back so far. */
const NEAR = 3;

/**
 * For the findings of one report, in order: each with its caution in full, or with a word that it stands above where the
 * last caution told is the very same one, of the same client and only a few findings back.
 */
export const cautionsOnce = (): ((finding: Finding) => Finding) => {
  let told: { readonly caution: string; readonly client: string | undefined } | undefined;
  let since = 0;
  return (finding) => {
    const { caution, client } = finding;
    since += 1;
    if (caution === undefined) return finding;
    if (told?.caution === caution && told.client === client && since <= NEAR)
      return { ...finding, caution: 'as above.' };
    told = { caution, client };
    since = 0;
    return finding;
  };
};

const framed = (
  place: FilePlace,
  label: string,
  linesOf: LinesOf,
  gutter: number,
  mark: (text: string) => string,
): string => {
  const line = linesOf(place.file)[place.line] ?? '';
  const { before, marked, after, indent, carets } = frameOf(line, place.at);
  const number = String(place.line + 1).padStart(gutter);
  const under = `${' '.repeat(gutter + 2 + indent)}${mark(`${'^'.repeat(carets)} ${label}`.trimEnd())}`;
  const shown = `${number}  ${before}${mark(marked)}${after}`.trimEnd();
  return `${shown}\n${under}`;
};

/**
 * A finding as the terminal shows it: place, severity, rule and message on the first line, then what was expected, what
 * to do and the caution, then the line as typed with carets, and the same for its second places. `source` names the
 * text when it is no file.
 */
export const findingText = (finding: Omit<Finding, 'key'>, linesOf: LinesOf, paint: Paint, source?: string): string => {
  const { rule, severity, place, message, expected, todo, caution, label = '', also = [], reason } = finding;
  const mark = paint[severity];
  const head = `${paint.strong(placeText(place, source))} ${mark(severity)} ${rule}  ${paint.strong(withoutControls(message))}`;
  const given = reason === undefined ? undefined : `Reason given: ${reason}`;
  const careful = caution === undefined ? undefined : `Caution: ${caution}`;
  const said = [expected, todo, careful, given].flatMap((text) =>
    text === undefined ? [] : [wrapped(withoutControls(text), '  ')],
  );
  const gutter = Math.max(6, ...[place, ...also.map((one) => one.place)].map(({ line }) => String(line + 1).length));
  const frames = [framed(place, withoutControls(label), linesOf, gutter, mark)];
  for (const { place: second, says } of also) {
    const away =
      second.file === place.file
        ? []
        : [paint.quiet(`${' '.repeat(gutter)}  in ${placeText(second, fromHere(second.file))}`)];
    frames.push(...away, framed(second, withoutControls(says), linesOf, gutter, paint.quiet));
  }
  return [head, ...said, ...frames].join('\n');
};

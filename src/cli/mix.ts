import { joinSources } from '../journal/journal.ts';
import { readSource, type Source } from '../journal/source.ts';
import { readLine } from '../notation/read-line.ts';
import { isBowlName } from '../notation/words.ts';
import { reckonAll } from '../reckon/visit.ts';
import { ruleNamed } from '../rules/explain.ts';
import type { Family } from '../rules/rule.ts';
import { counts, findAll } from '../rules/run.ts';
import type { Finding } from '../text/finding.ts';
import { fromOf, type Place, spanOf, toOf } from '../text/span.ts';
import { bowlJson } from './bowl-json.ts';
import { paintFor } from './colour.ts';
import { findingJson } from './finding-json.ts';
import { findingText, linesIn } from './finding-text.ts';
import { mixText } from './mix-text.ts';
import { openJournal } from './open-journal.ts';
import { print, printJson, remark } from './print.ts';
import { refusal } from './refusal.ts';
import { dayOf } from './today.ts';

export type MixOptions = { readonly shelf?: string; readonly on?: string; readonly json?: true };

/** What a bowl alone can be judged by; a visit of its own has no clock, no tests and no client. */
const FAMILIES: ReadonlySet<Family> = new Set(['reading', 'names', 'mix', 'strength']);

/** A path that no file has: the bowl as typed. */
const TYPED = '';

/** What has to stand before the typed text to make it a bowl's line. */
const prefixOf = (typed: string): string => {
  const { word } = readLine(typed);
  if (word === 'bowl') return '';
  return isBowlName(word) ? 'bowl ' : 'bowl A ';
};

const shifted = (place: Place, by: number): Place =>
  place.file === TYPED
    ? { file: TYPED, line: 0, at: spanOf(Math.max(0, fromOf(place.at) - by), Math.max(0, toOf(place.at) - by)) }
    : place;

/** A finding of the made visit, its places counted within what was typed. */
const asTyped = (finding: Finding, by: number): Finding => {
  const { client: _client, mend, ...rest } = finding;
  return {
    ...rest,
    place: shifted(finding.place, by),
    ...(finding.also && { also: finding.also.map(({ place, says }) => ({ place: shifted(place, by), says })) }),
    ...(mend && { mend: { ...mend, edits: mend.edits.map(({ place, put }) => ({ place: shifted(place, by), put })) } }),
  };
};

/**
 * `bowlbook mix`: solves one bowl, on the shelf that `--shelf` names or on none. The text is compiled as a visit of the
 * day, so the rules that judge a bowl judge it as they would in the notes. Exit code 1 when a `stop` or `fix` is found.
 */
export const mix = (words: readonly string[], options: MixOptions): number => {
  const typed = words.join(' ').trim();
  if (/[\r\n]/.test(typed)) throw refusal('The text has more than one line.', 'Give one bowl at a time.');
  if (typed === '')
    throw refusal('The bowl is empty.', 'Write what goes in it, as in `bowlbook mix "40 clay + 20vol 1:2"`.');
  const prefix = prefixOf(typed);
  const header = ['client mixed "Mixed"', `visit ${dayOf(options.on)} mixed`];
  const lines = [...header, prefix + typed];
  const made = readSource(TYPED, Buffer.from(lines.join('\n'), 'utf8'));
  const shelf: Iterable<Source> =
    options.shelf === undefined ? [] : openJournal([options.shelf]).journal.sources.values();
  const journal = joinSources([...shelf, made]);
  const reckoned = reckonAll(journal);
  const bowl = reckoned.get('mixed')?.[0]?.bowls[0];
  const findings = findAll(journal, reckoned)
    .findings.filter(({ rule, place }) => {
      const family = ruleNamed(rule)?.family;
      return place.file === TYPED && place.line === header.length && family !== undefined && FAMILIES.has(family);
    })
    .map((finding) => asTyped(finding, prefix.length));
  if (options.json)
    printJson({ bowl: bowl === undefined ? null : bowlJson(bowl), findings: findings.map(findingJson) });
  else {
    if (bowl !== undefined && bowl.portions.length > 0) print(mixText(bowl));
    const known = linesIn(journal.sources);
    const linesOf = (file: string): readonly string[] => (file === TYPED ? [typed] : known(file));
    for (const finding of findings) remark(`\n${findingText(finding, linesOf, paintFor(process.stderr))}`);
  }
  return findings.some(counts) ? 1 : 0;
};

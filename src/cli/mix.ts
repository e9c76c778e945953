import { readdirSync } from 'node:fs';
import { ENDING } from '../journal/find.ts';
import { type Journal, joinSources } from '../journal/journal.ts';
import { readSource, type Source } from '../journal/source.ts';
import { readLine } from '../notation/read-line.ts';
import { isBowlName } from '../notation/words.ts';
import { judge } from '../rules/judging.ts';
import { counts } from '../rules/reported.ts';
import type { Family } from '../rules/rule.ts';
import { ruleNamed } from '../rules/rule-text.ts';
import { exactOf } from '../text/exact.ts';
import type { Finding } from '../text/finding.ts';
import { type FilePlace, fromOf, spanOf, toOf } from '../text/span.ts';
import { withoutControls } from '../text/width.ts';
import { bowlJson } from './bowl-json.ts';
import { paintFor } from './colour.ts';
import { failAt } from './failed-clients.ts';
import { journalOf } from './find-journal.ts';
import { findingJson } from './finding-json.ts';
import { findingText, linesIn } from './finding-text.ts';
import { mixText } from './mix-text.ts';
import { openJournal } from './open-journal.ts';
import { deliverJson } from './output.ts';
import { print, remarkLines } from './print.ts';
import { refusal } from './refusal.ts';
import { counted } from './summary.ts';
import { dayOf } from './today.ts';

export type MixOptions = {
  /** A path; `false` for `--no-shelf`. */
  readonly shelf?: string | false;
  readonly scale?: string;
  readonly on?: string;
  readonly json?: true;
};

/** Entries that a shelf is made of; clients and visits of the same files have no say in a bowl typed alone. */
const SHELF_ENTRIES: ReadonlySet<string> = new Set(['product', 'range', 'salon', 'stylist', 'stock']);

/**
 * The path of the shelf that a bowl is worked out on: the one named, else the current folder where notes stand in it, or
 * the journal it is a part of.
 */
const shelfPath = (given: string | false | undefined): string | undefined => {
  if (given !== undefined) return given === false ? undefined : given;
  return readdirSync('.').some((name) => name.endsWith(ENDING)) ? '.' : journalOf('.')?.folder;
};

const shelfSources = (path: string): Source[] =>
  [...openJournal([path]).journal.sources.values()].map((source) => {
    const isOfShelf = (index: number): boolean => SHELF_ENTRIES.has(source.entries[index]?.entry.kind ?? '');
    return {
      ...source,
      entries: source.entries.filter((_, index) => isOfShelf(index)),
      standing: source.standing.filter((_, index) => isOfShelf(index)),
    };
  });

/** A journal whose scales show steps of the grams given with `--scale`. */
const onScales = (journal: Journal, typed: string | undefined): Journal => {
  if (typed === undefined) return journal;
  const grams = Number(typed.replace(/ ?g$/, ''));
  if (!(grams > 0 && grams <= 100))
    throw refusal(`\`--scale ${typed}\` is no step of scales in grams.`, 'Write it as in `--scale 0.1`.');
  const scale = exactOf(grams);
  return {
    ...journal,
    salon: { ...journal.salon, scale },
    salons: new Map([...journal.salons].map(([name, salon]) => [name, { ...salon, scale }])),
  };
};

/** Which shelf the bowl was worked out on. */
const shelfText = (path: string | undefined, { shelf }: Journal): string[] => {
  if (path === undefined) return [];
  const where = path === '.' ? 'this folder' : `\`${withoutControls(path)}\``;
  const what = shelf.size === 0 ? 'nothing on it' : counted(shelf.size, 'product');
  return [`By the shelf of ${where}: ${what}${path === '.' ? ' (`--no-shelf` leaves it out)' : ''}.`];
};

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

const shifted = (place: FilePlace, by: number): FilePlace =>
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
 * `bowlbook mix`: solves one bowl, on the shelf that `--shelf` names, else that of the current folder where it holds
 * notes, else on none. The text is compiled as a visit of the
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
  const path = shelfPath(options.shelf);
  const journal = onScales(joinSources([...(path === undefined ? [] : shelfSources(path)), made]), options.scale);
  const judged = judge(journal);
  const bowl = judged.reckonedOf('mixed')[0]?.bowls[0];
  const { findings: all } = judged.all();
  // Of the shelf's files there is no client, so a fault is the bowl's own.
  failAt('mixed', judged.faults());
  const findings = all
    .filter(({ rule, place }) => {
      const family = ruleNamed(rule)?.family;
      return place.file === TYPED && place.line === header.length && family !== undefined && FAMILIES.has(family);
    })
    .map((finding) => asTyped(finding, prefix.length));
  if (options.json)
    deliverJson({
      shelf: path ?? null,
      bowl: bowl === undefined ? null : bowlJson(bowl),
      findings: findings.map(findingJson),
    });
  else {
    if (bowl !== undefined && bowl.portions.length > 0)
      print([mixText(bowl, journal.salon), ...shelfText(path, journal).flatMap((text) => ['', text])].join('\n'));
    const known = linesIn(journal.sources);
    const linesOf = (file: string): readonly string[] => (file === TYPED ? [typed] : known(file));
    for (const finding of findings) remarkLines(`\n${findingText(finding, linesOf, paintFor('stderr'))}`);
  }
  return findings.some(counts) ? 1 : 0;
};

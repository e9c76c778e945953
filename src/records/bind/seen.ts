import type { Item } from '../../notation/line-tree.ts';
import { isBowlName, SOFT_WORDS } from '../../notation/words.ts';
import { fitted, joined } from '../../text/fitted.ts';
import { joinSpans, spanOf } from '../../text/span.ts';
import { isStage } from '../../trade/stages.ts';
import { TONE_WORDS } from '../../trade/tone.ts';
import { ALONG, GROUPS, isZone, ZONES } from '../../trade/zones.ts';
import type { Name, Seen, Stage, Zone } from '../schema/values.ts';
import {
  atOf,
  type Cursor,
  enter,
  finish,
  nameAt,
  peek,
  peekWord,
  take,
  takeJoiner,
  wordAt,
  wordOf,
} from './cursor.ts';
import { takeDepth } from './depths.ts';
import { amountOf } from './figures.ts';

const TONES: ReadonlySet<string> = new Set(TONE_WORDS);
/** Words that say how colour or hair turned out: never the name of a place. */
const PLAIN_WORDS: ReadonlySet<string> = new Set([
  'grey',
  'even',
  'uneven',
  'patchy',
  'covered',
  'coverage',
  'shiny',
  'dull',
  'dry',
  'soft',
  'bright',
  'dark',
  'light',
  'lighter',
  'darker',
  'faded',
  'good',
  'fine',
  'clear',
  'nothing',
  'taking',
  'nearly',
  'ok',
  'too',
  'still',
  'slow',
  'as',
  'no',
  'very',
  'deep',
  'pale',
  'slightly',
  'almost',
  'mostly',
  'and',
  'level',
  'lvl',
  'base',
  'depth',
  'tone',
  'nat',
]);

const PLACES: readonly string[] = [...ZONES, ...ALONG, ...GROUPS];

/** Every form of the places' names; a name as it stands goes before the other forms of another. */
const FORMS: ReadonlyMap<string, string> = new Map([
  ...PLACES.map((zone): [string, string] => [zone.replace(/s$/, ''), zone]),
  ...PLACES.map((zone): [string, string] => [`${zone}s`, zone]),
  ...PLACES.map((zone): [string, string] => [zone, zone]),
]);

/** The place a word names, in the plural where the notation has it so; undefined for any other word. */
export const zoneWord = (word: string): string | undefined => FORMS.get(word);

/** The next word as a place, or the next two (`half head`, `t section`), and how many words it takes. */
const nextZone = (cursor: Cursor): { zone: string; words: number } | undefined => {
  const word = peekWord(cursor);
  if (word === undefined) return undefined;
  const next = peekWord(cursor, 1);
  const joined = next === undefined ? undefined : `${word}-${next}`;
  if (joined !== undefined && isZone(joined)) return { zone: joined, words: 2 };
  const zone = zoneWord(word);
  return zone === undefined ? undefined : { zone, words: 1 };
};

/** Whether a place begins here. */
export const zoneAhead = (cursor: Cursor): boolean => nextZone(cursor) !== undefined;

/** Takes a place made of known words: `back left`, `ends top`. */
export const takeKnownZone = (cursor: Cursor): Zone | undefined => {
  let zone: string | undefined;
  let first: Item | undefined;
  let last: Item | undefined;
  for (let next = nextZone(cursor); next !== undefined; next = nextZone(cursor)) {
    first ??= peek(cursor);
    last = peek(cursor, next.words - 1);
    cursor.next += next.words;
    zone = zone === undefined ? next.zone : `${zone} ${next.zone}`;
  }
  return zone === undefined || first === undefined || last === undefined
    ? undefined
    : { zone, at: spanOf(first.from, last.to) };
};

/** Takes bowls: `A`, `A B`, `A+B`, `A and B`. */
export const takeBowls = (cursor: Cursor): Name[] => {
  const bowls: Name[] = [];
  const before = peekWord(cursor);
  // `on 14:35 bowl A roots`
  if ((before === 'bowl' || before === 'bowls') && isBowlName(peekWord(cursor, 1) ?? '')) cursor.next++;
  for (;;) {
    if (!bowlAhead(cursor)) return fitted(bowls);
    const item = take(cursor);
    if (item !== undefined) bowls.push(nameAt(cursor, item));
    const start = cursor.next;
    if (takeJoiner(cursor) && !bowlAhead(cursor)) cursor.next = start;
  }
};

/** Words that make `a` before them an article: `a bit red`. */
const AFTER_ARTICLE: ReadonlySet<string> = new Set(['bit', 'little', 'touch', 'lot', 'few', 'slight']);

/** Whether a bowl's name stands next; `t section` is a place, and the `a` of `a bit red` says nothing. */
export const bowlAhead = (cursor: Cursor): boolean => {
  const word = peekWord(cursor);
  if (word === undefined || !isBowlName(word) || zoneAhead(cursor)) return false;
  return word !== 'a' || !AFTER_ARTICLE.has(peekWord(cursor, 1) ?? '');
};

/** Takes places parted by commas, with names of the head's own among them, up to the first item that is neither. */
export const takeZones = (cursor: Cursor): Zone[] => {
  const zones: Zone[] = [];
  for (;;) {
    const known = takeKnownZone(cursor);
    if (known !== undefined) zones.push(known);
    else {
      const word = peekWord(cursor);
      const item = peek(cursor);
      if (word === undefined || item === undefined || isBowlName(word) || SOFT_WORDS.has(word)) return fitted(zones);
      take(cursor);
      zones.push({ zone: word, at: atOf(item) });
    }
    const start = cursor.next;
    if (!takeJoiner(cursor)) return fitted(zones);
    // A bowl after the comma is no place: leave the comma to whoever takes bowls.
    if (bowlAhead(cursor)) {
      cursor.next = start;
      return fitted(zones);
    }
  }
};

/** The stage of lift that stands next, in one word or in two (`pale yellow`, `red orange`). */
const stageAhead = (cursor: Cursor): string | undefined => {
  const word = peekWord(cursor);
  const joined = `${word}-${peekWord(cursor, 1)}`;
  if (isStage(joined)) return joined;
  return word !== undefined && isStage(word) ? word : undefined;
};

const takeStage = (cursor: Cursor): Stage | undefined => {
  const item = peek(cursor);
  const word = stageAhead(cursor);
  if (item === undefined || word === undefined) return undefined;
  take(cursor);
  if (word.includes('-') && wordOf(cursor, item) !== word) {
    const next = take(cursor) ?? item;
    return { stage: word, ...(next.about && { about: true as const }), at: joinSpans(atOf(item), atOf(next)) };
  }
  const about = item.about ? { about: true as const } : {};
  const far = peekWord(cursor, 1);
  const farItem = peek(cursor, 1);
  if (peekWord(cursor) === 'to' && far !== undefined && isStage(far) && farItem !== undefined) {
    take(cursor);
    take(cursor);
    const either = item.about || farItem.about ? { about: true as const } : {};
    return { stage: word, to: far, ...either, at: joinSpans(atOf(item), atOf(farItem)) };
  }
  return { stage: word, ...about, at: atOf(item) };
};

type SeenDraft = { -readonly [key in keyof Seen]: Seen[key] };
export type SeenOptions = { readonly stages: boolean; readonly percentIsGrey?: boolean };

/** Whether the group's first word can only be a name of the head's own: an unknown word before something seen. */
const isOwnZone = (cursor: Cursor, stages: boolean): boolean => {
  const word = peekWord(cursor);
  if (word === undefined || PLAIN_WORDS.has(word) || TONES.has(word) || stageAhead(cursor) !== undefined) return false;
  const next = peek(cursor, 1);
  if (next?.kind === 'number' || next?.kind === 'slashed') return true;
  const after = peekWord(cursor, 1);
  return after !== undefined && (TONES.has(after) || (stages && isStage(after)));
};

const runAt = ({ items }: Cursor, first: number, end: number): number =>
  atOf({ from: items[first]?.from ?? 0, to: items[end - 1]?.to ?? 0 });

/** Whether what is left says something of places that it begins with (`lengths 8` after `roots 6`). */
const beginsAnother = (cursor: Cursor, seen: SeenDraft): boolean => {
  if (seen.zones.length === 0 || isBare(seen)) return false;
  const start = cursor.next;
  const joined = takeJoiner(cursor);
  const another = takeKnownZone(cursor) !== undefined && peek(cursor) !== undefined;
  cursor.next = another && joined ? start + 1 : start;
  return another;
};

/** Binds places, and what is seen at them, as far as they go. What is neither is reported. */
const bindOne = (cursor: Cursor, options: SeenOptions): Seen => {
  const start = cursor.next;
  const seen: SeenDraft = { zones: [], words: [], at: 0 };
  let greySaid = false;
  while (peek(cursor) !== undefined && !beginsAnother(cursor, seen)) {
    // `roots and lengths 6`
    if (seen.zones.length > 0 && isBare(seen) && takeJoiner(cursor)) continue;
    const zone = takeKnownZone(cursor);
    if (zone !== undefined) {
      seen.zones.push(zone);
      continue;
    }
    const item = peek(cursor);
    if (item === undefined) break;
    if (item.kind === 'word') {
      if (cursor.next === start && isOwnZone(cursor, options.stages)) {
        take(cursor);
        seen.zones.push({ zone: wordOf(cursor, item), at: atOf(item) });
        continue;
      }
      const stage = options.stages && seen.stage === undefined ? takeStage(cursor) : undefined;
      if (stage !== undefined) {
        seen.stage = stage;
        continue;
      }
      take(cursor);
      if (wordOf(cursor, item) === 'grey' && (greySaid || nextIsPercent(cursor))) greySaid = true;
      else seen.words.push(wordAt(cursor, item));
      continue;
    }
    // On a `grey` line a bare figure can only be a share.
    const bareShare = options.percentIsGrey === true && item.kind === 'number' && item.unit === undefined;
    if (item.kind === 'number' && (item.percent || bareShare) && seen.grey === undefined) {
      take(cursor);
      const amount = amountOf(cursor, item);
      greySaid = true;
      if (amount !== undefined) seen.grey = { ...amount, unit: '%' };
      continue;
    }
    if (seen.depth !== undefined) break;
    const known = cursor.notices.length;
    const depth = takeDepth(cursor);
    if (depth === undefined && cursor.notices.length === known) break;
    if (depth !== undefined) seen.depth = depth;
  }
  seen.zones = fitted(seen.zones);
  seen.words = fitted(seen.words);
  seen.at = runAt(cursor, start, cursor.next);
  return seen;
};

/** Binds the group under the cursor: one thing seen, or several without a comma between them. */
const bindGroup = (cursor: Cursor, options: SeenOptions): Seen[] => {
  let seen = bindOne(cursor, options);
  const all = [seen];
  while (beginsAnother(cursor, seen)) {
    seen = bindOne(cursor, options);
    all.push(seen);
  }
  finish(cursor);
  return all;
};

const nextIsPercent = (cursor: Cursor): boolean => peek(cursor)?.percent === true;

const isBare = (seen: Seen): boolean =>
  seen.depth === undefined && seen.stage === undefined && seen.grey === undefined && seen.words.length === 0;

/**
 * Binds groups of what is seen. Places alone before a comma go with what the next group says (`roots, lengths yellow`):
 * a comma between places means *and*.
 */
export const bindSeen = (cursor: Cursor, groups: readonly (readonly Item[])[], options: SeenOptions): Seen[] => {
  const all: Seen[] = [];
  let waiting: Zone[] = [];
  for (const group of groups) {
    if (group.length === 0) continue;
    enter(cursor, group);
    for (const seen of bindGroup(cursor, options)) {
      if (isBare(seen)) waiting = joined(waiting, seen.zones);
      else {
        all.push(waiting.length === 0 ? seen : { ...seen, zones: joined(waiting, seen.zones) });
        waiting = [];
      }
    }
  }
  const [first] = waiting;
  const last = waiting.at(-1);
  if (first !== undefined && last !== undefined)
    all.push({ zones: waiting, words: fitted([]), at: joinSpans(first.at, last.at) });
  return fitted(all);
};

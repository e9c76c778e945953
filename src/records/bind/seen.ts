import type { Item } from '../../notation/line-tree.ts';
import { isBowlName } from '../../notation/words.ts';
import { joinSpans } from '../../text/span.ts';
import { isStage } from '../../trade/stages.ts';
import { TONE_WORDS } from '../../trade/tone.ts';
import { isZone } from '../../trade/zones.ts';
import type { Name, Seen, Stage, Zone } from '../schema/values.ts';
import { atOf, type Cursor, enter, finish, nameAt, peek, peekWord, take, takeKind, wordAt, wordOf } from './cursor.ts';
import { amountOf, takeDepth } from './figures.ts';

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
]);

/** The place a word names, in the plural where the notation has it so; undefined for any other word. */
export const zoneWord = (word: string): string | undefined =>
  isZone(word) ? word : isZone(`${word}s`) ? `${word}s` : undefined;

/** Takes a place made of known words: `back left`, `ends top`. */
export const takeKnownZone = (cursor: Cursor): Zone | undefined => {
  const words: string[] = [];
  let first: Item | undefined;
  let last: Item | undefined;
  for (;;) {
    const word = peekWord(cursor);
    const zone = word === undefined ? undefined : zoneWord(word);
    if (zone === undefined) break;
    last = take(cursor);
    first ??= last;
    words.push(zone);
  }
  return first && last && { zone: words.join(' '), at: atOf({ from: first.from, to: last.to }) };
};

/** Takes bowls: `A`, `A B`, `A+B`. */
export const takeBowls = (cursor: Cursor): Name[] => {
  const bowls: Name[] = [];
  for (;;) {
    const word = peekWord(cursor);
    if (word === undefined || !isBowlName(word)) return bowls;
    const item = take(cursor);
    if (item !== undefined) bowls.push(nameAt(cursor, item));
    const joiner = peek(cursor);
    const after = peekWord(cursor, 1);
    if ((joiner?.kind === 'plus' || joiner?.kind === 'comma') && after !== undefined && isBowlName(after)) take(cursor);
  }
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
      if (word === undefined || item === undefined || isBowlName(word) || word === 'for') return zones;
      take(cursor);
      zones.push({ zone: word, at: atOf(item) });
    }
    if (takeKind(cursor, 'comma') === undefined) return zones;
  }
};

const takeStage = (cursor: Cursor): Stage | undefined => {
  const item = peek(cursor);
  const word = peekWord(cursor);
  if (item === undefined || word === undefined || !isStage(word)) return undefined;
  take(cursor);
  const about = item.about ? { about: true as const } : {};
  const far = peekWord(cursor, 1);
  const farItem = peek(cursor, 1);
  if (peekWord(cursor) === 'to' && far !== undefined && isStage(far) && farItem !== undefined) {
    take(cursor);
    take(cursor);
    return { stage: word, to: far, ...about, at: joinSpans(atOf(item), atOf(farItem)) };
  }
  return { stage: word, ...about, at: atOf(item) };
};

type SeenDraft = { -readonly [key in keyof Seen]: Seen[key] };
export type SeenOptions = { readonly stages: boolean; readonly percentIsGrey?: boolean };

/** Whether the group's first word can only be a name of the head's own: an unknown word before something seen. */
const isOwnZone = (cursor: Cursor, stages: boolean): boolean => {
  const word = peekWord(cursor);
  if (word === undefined || PLAIN_WORDS.has(word) || TONES.has(word) || isStage(word)) return false;
  const next = peek(cursor, 1);
  if (next?.kind === 'number' || next?.kind === 'slashed') return true;
  const after = peekWord(cursor, 1);
  return after !== undefined && (TONES.has(after) || (stages && isStage(after)));
};

const groupAt = ({ items }: Cursor): number => atOf({ from: items[0]?.from ?? 0, to: items.at(-1)?.to ?? 0 });

/** Binds the group under the cursor: places, and what is seen at them. What is neither is reported. */
const bindGroup = (cursor: Cursor, options: SeenOptions): Seen => {
  const seen: SeenDraft = { zones: [], words: [], at: groupAt(cursor) };
  let greySaid = false;
  while (peek(cursor) !== undefined) {
    const zone = takeKnownZone(cursor);
    if (zone !== undefined) {
      seen.zones.push(zone);
      continue;
    }
    const item = peek(cursor);
    if (item === undefined) break;
    if (item.kind === 'word') {
      if (cursor.next === 0 && isOwnZone(cursor, options.stages)) {
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
    if (item.kind === 'number' && item.percent && seen.grey === undefined) {
      take(cursor);
      const amount = amountOf(cursor, item);
      greySaid = true;
      if (amount !== undefined) seen.grey = amount;
      continue;
    }
    const depth = seen.depth === undefined ? takeDepth(cursor) : undefined;
    if (depth === undefined) break;
    seen.depth = depth;
  }
  finish(cursor);
  return seen;
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
    const seen = bindGroup(cursor, options);
    if (isBare(seen)) {
      waiting = [...waiting, ...seen.zones];
      continue;
    }
    all.push(waiting.length === 0 ? seen : { ...seen, zones: [...waiting, ...seen.zones] });
    waiting = [];
  }
  const [first] = waiting;
  const last = waiting.at(-1);
  if (first !== undefined && last !== undefined)
    all.push({ zones: waiting, words: [], at: joinSpans(first.at, last.at) });
  return all;
};

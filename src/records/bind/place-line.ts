import type { Item, Run } from '../../notation/line-tree.ts';
import { SOFT_WORDS } from '../../notation/words.ts';
import { fitted } from '../../text/fitted.ts';
import { isLengthUnit } from '../../trade/units.ts';
import { isCover, isTechnique } from '../../trade/zones.ts';
import type { Word, Zone } from '../schema/values.ts';
import type { Placing } from '../schema/visit.ts';
import {
  atOf,
  type Cursor,
  enterAll,
  finish,
  notice,
  type Opened,
  peek,
  peekWord,
  take,
  takeJoiner,
  takeKind,
  takeWord,
  typed,
  wordAt,
  wordOf,
} from './cursor.ts';
import { amountOf, countAt, unitOf } from './figures.ts';
import { bowlAhead, takeBowls, takeKnownZone } from './seen.ts';

type Bound = Omit<Placing, 'word' | 'line'>;
type Draft = { -readonly [key in keyof Bound]: Bound[key] };

/** `6x`, `28 foils`: a count of sections typed the other way round. */
const countOtherWay = (cursor: Cursor, item: Item): void => {
  const figure = typed(cursor, item.first ?? item);
  const after = peek(cursor);
  const word =
    after?.kind === 'word' && /^(x|foils?|sections?|slices?|weaves?|packets?)$/.test(wordOf(cursor, after))
      ? after
      : undefined;
  if (word !== undefined) take(cursor);
  const run = { from: item.from, to: word?.to ?? item.to };
  notice(cursor, 'not-read', run, `\`${typed(cursor, run)}\` is not read as a count of sections.`, {
    todo: `Write \`x${figure}\`.`,
    label: 'how many',
    put: { title: `write x${figure}`, text: `x${figure}`, sure: word === undefined ? 'likely' : 'certain' },
  });
};

/** Takes a word of a list, in one word or two, in the singular or the plural: `fine weaves` is `fine-weave`. */
const takeListed = (cursor: Cursor, isListed: (word: string) => boolean): Word | undefined => {
  for (const count of [2, 1]) {
    const items = cursor.items.slice(cursor.next, cursor.next + count);
    const [first] = items;
    const last = items.at(-1);
    if (first === undefined || last === undefined || items.some(({ kind }) => kind !== 'word')) continue;
    const joined = items.map((item) => wordOf(cursor, item)).join('-');
    const word = [joined, joined.replace(/s$/, '')].find(isListed);
    if (word === undefined) continue;
    cursor.next += items.length;
    const at = atOf({ from: first.from, to: last.to });
    return { word, ...(last.about && { about: true as const }), at };
  }
  return undefined;
};

const SCALP: ReadonlyMap<string, 'on' | 'off'> = new Map([
  ['on-scalp', 'on'],
  ['onscalp', 'on'],
  ['off-scalp', 'off'],
  ['offscalp', 'off'],
]);

/** Takes `on-scalp` or `off-scalp`, in one word or two. */
const takeScalp = (cursor: Cursor): 'on' | 'off' | undefined => {
  const word = takeListed(cursor, (one) => SCALP.has(one));
  return word && SCALP.get(word.word);
};

/** Whether anything but bowls and places has been said. */
const isBegun = ({ technique, sections, cover, scalp }: Draft): boolean =>
  technique !== undefined || sections !== undefined || cover !== undefined || scalp !== undefined;

/** A word of the head's own before anything else that a place line says. */
const takeOwnZone = (cursor: Cursor, draft: Draft): Zone | undefined => {
  const item = peek(cursor);
  const word = peekWord(cursor);
  if (item === undefined || word === undefined || isBegun(draft) || SOFT_WORDS.has(word)) return undefined;
  take(cursor);
  return { zone: word, at: atOf(item) };
};

const takeNumber = (cursor: Cursor, draft: Draft, item: Item): void => {
  take(cursor);
  if (isLengthUnit(unitOf(cursor, item)) && draft.clear === undefined) {
    const clear = amountOf(cursor, item);
    if (clear !== undefined) draft.clear = clear;
  } else countOtherWay(cursor, item);
};

const takePlaceWord = (cursor: Cursor, draft: Draft): boolean => {
  const item = peek(cursor);
  const word = peekWord(cursor);
  if (item === undefined || word === undefined) return false;
  const scalp = takeScalp(cursor);
  if (scalp !== undefined) draft.scalp = scalp;
  else if (takeWord(cursor, 'mirror')) draft.mirror = true;
  else if (takeWord(cursor, 'turn')) draft.turn = takeBowls(cursor);
  else if (takeWord(cursor, 'gap')) {
    const figure = takeKind(cursor, 'number');
    const gap = figure && amountOf(cursor, figure);
    const todo = 'Write it as in `gap 10mm`.';
    if (figure === undefined) notice(cursor, 'nothing-said', item, 'There is no figure after `gap`.', { todo });
    else if (gap !== undefined && (gap.unit === '' || isLengthUnit(gap.unit))) draft.gap = gap;
    else if (gap !== undefined)
      notice(cursor, 'not-read', figure, `\`${typed(cursor, figure)}\` is no width of a gap.`, { todo });
  } else if (word === 'x' && peek(cursor, 1)?.kind === 'number') {
    take(cursor);
    const figure = take(cursor);
    if (figure !== undefined) addSections(cursor, draft, figure.first ?? figure);
  } else {
    const technique = draft.technique === undefined ? takeListed(cursor, isTechnique) : undefined;
    const cover = technique === undefined && draft.cover === undefined ? takeListed(cursor, isCover) : undefined;
    if (technique !== undefined) draft.technique = technique;
    else if (cover !== undefined) draft.cover = cover;
    else return false;
  }
  return true;
};

const addSections = (cursor: Cursor, draft: Draft, run: Run): void => {
  const count = countAt(cursor, run);
  if (count === undefined) return;
  if (Number.isInteger(count)) draft.sections = (draft.sections ?? 0) + count;
  else
    notice(cursor, 'not-read', run, `\`${typed(cursor, run)}\` is no count of sections.`, {
      todo: 'Write it as in `x6`.',
    });
};

/** `place A hairline slice x2 gap 0 mirror off-scalp 1cm foil`, `place A+B back weave x28 turn A B A` */
export const bindPlace = (opened: Opened): Bound => {
  const cursor = enterAll(opened);
  const draft: Draft = { bowls: takeBowls(cursor), zones: [], mirror: false, words: [] };
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind === 'comma') take(cursor);
    else if (item.kind === 'count') {
      take(cursor);
      addSections(cursor, draft, item);
    } else if (item.kind === 'number') takeNumber(cursor, draft, item);
    else if (draft.bowls.length === 0 && bowlAhead(cursor)) draft.bowls = takeBowls(cursor);
    else if (item.kind === 'word') {
      const zone = takeKnownZone(cursor);
      if (zone !== undefined) draft.zones.push(zone);
      else if (!takePlaceWord(cursor, draft)) {
        const own = takeOwnZone(cursor, draft);
        if (own !== undefined) draft.zones.push(own);
        else if (takeListed(cursor, isTechnique) !== undefined)
          notice(cursor, 'not-read', item, `\`${typed(cursor, item)}\` is a second technique on the line.`, {
            todo: 'Write a `place` line for each technique.',
            label: 'not kept',
          });
        else draft.words.push(wordAt(cursor, take(cursor) ?? item));
      }
    } else if (draft.zones.length === 0 || isBegun(draft) || !takeJoiner(cursor)) break;
  }
  finish(cursor);
  if (draft.bowls.length === 0)
    notice(cursor, 'no-bowl', { from: 0, to: cursor.text.length }, 'The `place` line names no bowl.', {
      todo: 'Write the bowl first, as in `place A top weave x6`.',
    });
  draft.zones = fitted(draft.zones);
  draft.words = fitted(draft.words);
  return draft;
};

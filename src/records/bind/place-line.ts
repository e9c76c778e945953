import type { Item } from '../../notation/line-tree.ts';
import { isLengthUnit } from '../../trade/units.ts';
import { isCover, isTechnique } from '../../trade/zones.ts';
import type { Zone } from '../schema/values.ts';
import type { Placing } from '../schema/visit.ts';
import {
  atOf,
  type Cursor,
  enter,
  finish,
  flatten,
  notice,
  type Opened,
  peek,
  peekWord,
  take,
  takeKind,
  takeWord,
  typed,
  wordAt,
  wordOf,
} from './cursor.ts';
import { amountOf, unitOf } from './figures.ts';
import { takeBowls, takeKnownZone, zoneWord } from './seen.ts';

type Draft = { -readonly [key in keyof Placing]: Placing[key] };

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

const isPlaceWord = (word: string): boolean =>
  isTechnique(word) ||
  isCover(word) ||
  word === 'mirror' ||
  word === 'gap' ||
  word === 'turn' ||
  /^o(n|ff)-scalp$/.test(word);

/** A word of the head's own before anything else that a place line says. */
const takeOwnZone = (cursor: Cursor, draft: Draft): Zone | undefined => {
  const item = peek(cursor);
  const word = peekWord(cursor);
  const begun =
    draft.technique !== undefined ||
    draft.sections !== undefined ||
    draft.cover !== undefined ||
    draft.scalp !== undefined;
  if (item === undefined || word === undefined || begun || isPlaceWord(word)) return undefined;
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
  if (takeWord(cursor, 'mirror')) draft.mirror = true;
  else if (takeWord(cursor, 'on-scalp')) draft.scalp = 'on';
  else if (takeWord(cursor, 'off-scalp')) draft.scalp = 'off';
  else if (takeWord(cursor, 'turn')) draft.turn = takeBowls(cursor);
  else if (takeWord(cursor, 'gap')) {
    const figure = takeKind(cursor, 'number');
    const gap = figure && amountOf(cursor, figure);
    if (gap !== undefined) draft.gap = gap;
  } else if (word === 'x' && peek(cursor, 1)?.kind === 'number') {
    take(cursor);
    const figure = take(cursor);
    if (figure !== undefined) draft.sections = Number(typed(cursor, figure.first ?? figure));
  } else if (isTechnique(word) && draft.technique === undefined) draft.technique = wordAt(cursor, take(cursor) ?? item);
  else if (isCover(word) && draft.cover === undefined) draft.cover = wordAt(cursor, take(cursor) ?? item);
  else return false;
  return true;
};

/** `place A hairline slice x2 gap 0 mirror off-scalp 1cm foil`, `place A+B back weave x28 turn A B A` */
export const bindPlace = ({ cursor, groups }: Opened): Omit<Placing, 'word' | 'line'> => {
  enter(cursor, flatten(groups));
  const draft: Draft = { word: 'place', line: 0, bowls: [], zones: [], mirror: false, words: [] };
  draft.bowls = takeBowls(cursor);
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind === 'comma') take(cursor);
    else if (item.kind === 'count') {
      take(cursor);
      draft.sections = (draft.sections ?? 0) + Number(typed(cursor, item).slice(1));
    } else if (item.kind === 'number') takeNumber(cursor, draft, item);
    else if (item.kind === 'word') {
      const word = wordOf(cursor, item);
      const zone = zoneWord(word) !== undefined ? takeKnownZone(cursor) : undefined;
      if (zone !== undefined) draft.zones.push(zone);
      else if (!takePlaceWord(cursor, draft)) {
        const own = takeOwnZone(cursor, draft);
        if (own !== undefined) draft.zones.push(own);
        else draft.words.push(wordAt(cursor, take(cursor) ?? item));
      }
    } else break;
  }
  finish(cursor);
  if (draft.bowls.length === 0)
    notice(cursor, 'no-bowl', { from: 0, to: cursor.text.length }, 'The `place` line names no bowl.', {
      todo: 'Write the bowl first, as in `place A top weave x6`.',
    });
  const { word: _word, line: _line, ...rest } = draft;
  return rest;
};

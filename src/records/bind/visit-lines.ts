import type { Item } from '../../notation/line-tree.ts';
import { evenlySpaced, spaceEnd, trimmed } from '../../notation/space.ts';
import { isBowlName } from '../../notation/words.ts';
import { fitted, joined } from '../../text/fitted.ts';
import { fold } from '../../text/fold.ts';
import { fromOf, sliceOf, toOf } from '../../text/span.ts';
import { isLengthUnit } from '../../trade/units.ts';
import type { Word } from '../schema/values.ts';
import type { About, Asked, Call, Declined, Fit, Leave, Next, Redo, Regrowth } from '../schema/visit.ts';
import { shadeOf } from './component.ts';
import {
  atOf,
  type Closing,
  type Cursor,
  enter,
  enterAll,
  finish,
  nameAt,
  needs,
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
import { takeDate, whenOf } from './dates.ts';
import { amountOf, durationOf, plainNumber, unitOf } from './figures.ts';
import { takeZones } from './seen.ts';
import { takeTime } from './times.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

/** `regrowth 2cm roots` */
export const bindRegrowth = (opened: Opened): Bound<Regrowth> | undefined => {
  const cursor = enterAll(opened);
  const before = takeZones(cursor);
  const item = peek(cursor);
  if (item?.kind !== 'number' || !isLengthUnit(unitOf(cursor, item)))
    return needs(cursor, 'The line gives no length of new growth.', 'Write it with its unit, as in `regrowth 2cm`.');
  take(cursor);
  const length = amountOf(cursor, item);
  const zones = joined(before, takeZones(cursor));
  finish(cursor);
  return length && { length, zones };
};

export const bindLeave = (opened: Opened): Bound<Leave> | undefined => {
  const cursor = enterAll(opened);
  const { closing } = opened;
  const first = peek(cursor);
  const name = peekWord(cursor);
  if (first !== undefined && name !== undefined && isBowlName(name) && peek(cursor, 1)?.kind === 'number') {
    const figure = typed(cursor, peek(cursor, 1) ?? first);
    notice(cursor, 'not-read', first, '`leave` is for hair left out, and this line names a bowl.', {
      todo: `For grams in the bowl write \`left ${typed(cursor, first)} ${figure}\`.`,
      label: 'a bowl, no place',
    });
    return undefined;
  }
  const zones = takeZones(cursor);
  finish(cursor);
  if (zones.length === 0 && cursor.rest === undefined && closing.says === undefined)
    needs(cursor, 'The line does not say what is left out.', 'Write the place, as in `leave crown "stands up"`.');
  return { zones };
};

/** `fit 2 packs withybed "8 honey"` */
export const bindFit = (opened: Opened): Bound<Fit> => {
  const cursor = enterAll(opened);
  const draft: { -readonly [key in keyof Bound<Fit>]: Bound<Fit>[key] } = {};
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind === 'number' && draft.amount === undefined) {
      const amount = amountOf(cursor, item);
      if (amount !== undefined) draft.amount = amount;
    } else if (item.kind === 'word' && draft.product === undefined) draft.product = nameAt(cursor, item);
    else if (item.kind === 'slashed' && draft.shade === undefined)
      draft.shade = shadeOf(typed(cursor, item), atOf(item));
    else break;
    take(cursor);
  }
  finish(cursor);
  return draft;
};

/** `declined lightener "under 16"` */
export const bindDeclined = (opened: Opened): Bound<Declined> => {
  const cursor = enterAll(opened);
  const what: Word[] = [];
  for (let item = peek(cursor); item?.kind === 'word' || item?.kind === 'comma'; item = peek(cursor)) {
    if (item.kind === 'word') what.push(wordAt(cursor, item));
    take(cursor);
  }
  finish(cursor);
  return { what };
};

/** A bare answer, by its word, in the languages that the tool’s readers type. */
const ANSWERS: ReadonlyMap<string, 'yes' | 'no'> = new Map([
  ...['yes', 'ja', 'oui', 'sim', 'sí', 'si'].map((word) => [word, 'yes'] as const),
  ...['no', 'none', 'nil', 'never', 'nein', 'keine', 'nie', 'non', 'jamais', 'aucun', 'aucune', 'não', 'nao'].map(
    (word) => [word, 'no'] as const,
  ),
  ...['nenhum', 'nenhuma', 'nunca', 'ninguno', 'ninguna'].map((word) => [word, 'no'] as const),
]);

/** `asked asthma no`, `asked medicines "a new blood thinner"` */
export const bindAsked = (opened: Opened): Bound<Asked> | undefined => {
  const cursor = enterAll(opened);
  const about: Word[] = [];
  for (let item = peek(cursor); item?.kind === 'word' || item?.kind === 'comma'; item = peek(cursor)) {
    if (item.kind === 'word') about.push(wordAt(cursor, item));
    take(cursor);
  }
  finish(cursor);
  const answer = ANSWERS.get(about.at(-1)?.word ?? '');
  if (answer !== undefined) about.pop();
  if (about.length === 0)
    return needs(cursor, 'The line does not say what was asked.', 'Write it as in `asked asthma no`.');
  if (answer === undefined && opened.closing.says === undefined && cursor.rest === undefined)
    needs(
      cursor,
      'The line gives no answer.',
      `Write \`yes\` or \`no\` after it, or the answer in quotation marks, as in \`asked ${about.map(({ word }) => word).join(' ')} no\`.`,
    );
  return { about, ...(answer && { answer }) };
};

/** `redo 2026-08-30` */
export const bindRedo = (opened: Opened): Bound<Redo> | undefined => {
  const cursor = enterAll(opened);
  const known = cursor.notices.length;
  const date = takeDate(cursor);
  if (date === undefined) {
    if (cursor.notices.length === known)
      needs(cursor, 'The line does not say which visit is put right.', 'Write its date, as in `redo 2026-08-30`.');
    return undefined;
  }
  finish(cursor);
  return { date };
};

/** `about 2026-05-02 ends "went mauve after two washes"` */
export const bindAbout = (opened: Opened): Bound<About> | undefined => {
  const cursor = enterAll(opened);
  const known = cursor.notices.length;
  const date = takeDate(cursor);
  if (date === undefined) {
    if (cursor.notices.length === known)
      needs(
        cursor,
        'The line does not say which visit it is about.',
        'Write its date, as in `about 2026-05-02 ends "…"`.',
      );
    return undefined;
  }
  const zones = takeZones(cursor);
  finish(cursor);
  return { date, zones };
};

/** `call 2026-11-05 10:00 "redness gone"` */
export const bindCall = (opened: Opened): Bound<Call> => {
  const cursor = enterAll(opened);
  const date = takeDate(cursor);
  const time = takeTime(cursor);
  finish(cursor);
  return { ...(date && { date }), ...(time && { time }) };
};

type Change = Next['changes'][number];

/** A change is half prose: a small letter is a bowl only where a figure follows (`a -20%`, but `a little cooler`). */
const isBowlToChange = (cursor: Cursor, item: Item): boolean => {
  const word = wordOf(cursor, item);
  const next = peek(cursor)?.kind;
  if (!isBowlName(word)) return false;
  return typed(cursor, item) !== word || /\d/.test(word) || next === 'dash' || next === 'plus' || next === 'number';
};

const changeOf = (cursor: Cursor, items: readonly Item[]): Change => {
  enter(cursor, items);
  const draft: { -readonly [key in keyof Change]: Change[key] } = { words: [], text: '' };
  const first = items[0];
  const last = items.at(-1);
  if (first !== undefined && last !== undefined)
    draft.text = evenlySpaced(typed(cursor, { from: first.from, to: last.to }));
  for (let item = take(cursor); item !== undefined; item = take(cursor)) {
    if (item.kind === 'word' && draft.bowl === undefined && isBowlToChange(cursor, item))
      draft.bowl = nameAt(cursor, item);
    else if (item.kind === 'word') draft.words.push(wordAt(cursor, item));
    else if (item.kind === 'dash' || item.kind === 'plus') {
      const figure = peek(cursor);
      if (figure?.kind !== 'number' || !figure.percent) continue;
      take(cursor);
      const percent = plainNumber(cursor, figure);
      if (percent !== undefined) draft.percent = percent * (item.kind === 'dash' ? -1 : 1);
    }
  }
  draft.words = fitted(draft.words);
  return draft;
};

/** `next roots 6w`: the wait after what to change; `next 6/8w` is asked about. */
const lateWait = (cursor: Cursor, draft: { wait?: Next['wait'] }, groups: Item[][]): void => {
  for (const group of groups) {
    const slashed = group.find((item) => item.kind === 'slashed' && /^\d+\/\d+[dw]/i.test(typed(cursor, item)));
    if (slashed !== undefined)
      notice(cursor, 'two-readings', slashed, `\`${typed(cursor, slashed)}\` reads as a shade.`, {
        todo: `Write \`${typed(cursor, slashed).replace('/', '-')}\` for a wait.`,
      });
    const place = group.findIndex((item) => durationOf(cursor, item) !== undefined);
    const before = group[place - 1];
    if (place < 0 || (before?.kind === 'word' && /^(or|to)$/.test(wordOf(cursor, before)))) continue;
    const [item] = group.splice(place, 1);
    const wait = durationOf(cursor, item);
    if (wait !== undefined) draft.wait = wait;
    return;
  }
};

/** `next 6-8w roots, A -20%`, `next from 2026-12-02`, `next 2026-12-19 14:00 foils` */
export const bindNext = ({ cursor, groups, closing }: Opened): Bound<Next> => {
  enter(cursor, groups[0] ?? []);
  const draft: { -readonly [key in keyof Bound<Next>]: Bound<Next>[key] } = { from: false, changes: [] };
  if (takeWord(cursor, 'from')) draft.from = true;
  // `next in 6w`
  if (durationOf(cursor, peek(cursor, 1)) !== undefined) takeWord(cursor, 'in');
  const monthItem = takeKind(cursor, 'month');
  const month = whenOf(cursor, monthItem);
  if (month !== undefined) draft.month = month;
  const wait = durationOf(cursor, peek(cursor));
  if (wait !== undefined) {
    draft.wait = wait;
    take(cursor);
  } else {
    const date = takeDate(cursor);
    if (date !== undefined) {
      draft.date = date;
      const time = takeTime(cursor);
      if (time !== undefined) draft.time = time;
    }
  }
  const rest = [cursor.items.slice(cursor.next), ...groups.slice(1)];
  if (draft.wait === undefined && draft.date === undefined && monthItem === undefined) lateWait(cursor, draft, rest);
  if (cursor.next === 0 && rest.every((items) => items.length === 0) && closing.says === undefined)
    needs(cursor, 'The line does not say when, nor what to change.', 'Write it as in `next 6w roots`.');
  draft.changes = fitted(rest.filter((items) => items.length > 0).map((items) => changeOf(cursor, items)));
  for (const { words } of draft.changes) {
    const glued = words.find(({ word }) => /^\p{L}\d*-\d+$/u.test(word));
    if (glued === undefined) continue;
    const name = sliceOf(cursor.text, glued.at);
    const run = { from: fromOf(glued.at), to: toOf(glued.at) };
    notice(cursor, 'two-readings', run, `\`${name}\` reads as one name.`, {
      todo: `Write \`${name.replace(/[-–−]/, ' -')}%\`, with a space before the minus.`,
    });
  }
  return draft;
};

/** A free line: all its text, or the quotation that it is. Only after a quotation can `by` or a comment follow. */
export const bindFree = (line: string, from: number): { text: string; closing: Closing; at: number } => {
  // `note: …`: a colon straight after the word.
  const start = spaceEnd(line, line[from] === ':' ? from + 1 : from);
  const text = trimmed(line.slice(start));
  const at = atOf({ from: start, to: start + text.length });
  const quoted = /^(?:"([^"“”]*)["“”]|[“„]([^"“”]*)["“”]|«([^»]*)»)\s*(?:by\s+([\p{L}\p{N}.-]+)\s*)?(?:#.*)?$/iu.exec(
    text,
  );
  if (quoted === null) return { text, closing: {}, at };
  const inner = quoted[1] ?? quoted[2] ?? quoted[3] ?? '';
  const by = quoted[4];
  const where = by === undefined ? -1 : line.lastIndexOf(by);
  const closing: Closing =
    by === undefined ? {} : { by: { name: fold(by), at: atOf({ from: where, to: where + by.length }) } };
  return { text: inner, closing, at: atOf({ from: start + 1, to: start + 1 + inner.length }) };
};

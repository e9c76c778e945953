import type { Item } from '../../notation/line-tree.ts';
import { SOFT_WORDS } from '../../notation/words.ts';
import { fitted } from '../../text/fitted.ts';
import { isTestKind, TEST_KINDS, TEST_RESULTS } from '../../trade/hair.ts';
import { isStage } from '../../trade/stages.ts';
import type { Test } from '../schema/client.ts';
import { bindComponent, shadeOf } from './component.ts';
import {
  atOf,
  type Cursor,
  enter,
  finish,
  nameAt,
  notice,
  type Opened,
  peek,
  peekWord,
  take,
  takeWord,
  typed,
  wordAt,
  wordOf,
} from './cursor.ts';
import { dateOf, otherDate } from './dates.ts';
import { durationOf, unitOf } from './figures.ts';
import { bindSeen, takeKnownZone, zoneWord } from './seen.ts';
import { takeTime } from './times.ts';

const RESULTS: ReadonlySet<string> = new Set([
  ...Object.values(TEST_RESULTS).flat(),
  'clear',
  'reaction',
  ...['positive', 'negative', 'pos', 'neg', 'ok', 'fine', 'good', 'passed', 'failed'],
]);
const MADE_WITH: ReadonlySet<string> = new Set(['skin', 'strand', 'metal']);

type Bound = Omit<Test, 'word' | 'line'>;
type Draft = { -readonly [key in keyof Bound]: Bound[key] };

/** What else the trade calls a test: common practice, no source. */
const OTHER_NAMES: Readonly<Record<string, string>> = { patch: 'skin', allergy: 'skin', elasticity: 'stretch' };

/** Words by which a note says that no test was made: none of them is a product. */
const NOT_MADE: ReadonlySet<string> = new Set([
  'not',
  'no',
  'none',
  'never',
  'declined',
  'refused',
  'skipped',
  'waived',
]);

/** Signs that a hand puts between the words of a reading. */
const SIGNS: ReadonlySet<Item['kind']> = new Set(['stop', 'dash', 'slash', 'unknown']);

/** Whether the word here denies a result (`no reaction`), not the making of the test. */
const deniesResult = (cursor: Cursor): boolean => {
  const next = peekWord(cursor, 1);
  return next !== undefined && RESULTS.has(next);
};

/** A skin test is made with products, never on a place of the head: there `brow` is the tint. */
const isResult = (word: string, test = ''): boolean =>
  RESULTS.has(word) || isStage(word) || (test !== 'skin' && zoneWord(word) !== undefined);

/** Whether a product stands here with its lot (`cream lot K2231`). */
const isWithLot = (cursor: Cursor, items: readonly Item[], index: number): boolean => {
  const [item, next] = items.slice(index, index + 2);
  return item?.kind === 'word' && next?.kind === 'word' && wordOf(cursor, next) === 'lot';
};

/** Whether an item begins a recipe: a weight, a strength, or a product with its lot. Minutes and depths do not. */
const isRecipe = (cursor: Cursor, items: readonly Item[], index: number): boolean => {
  const item = items[index];
  if (isWithLot(cursor, items, index)) return true;
  if (item?.kind !== 'number') return false;
  const unit = unitOf(cursor, item);
  if (unit === 'vol' || unit === 'g' || unit === 'ml' || unit === 'drop') return true;
  const next = items[index + 1];
  if (unit === '%') return items.some(({ kind }) => kind === 'plus') || next?.kind === 'pair';
  return unit === '' && next?.kind === 'word' && !isResult(wordOf(cursor, next));
};

/**
 * The recipe of a test from its first weight or lot on: one component a plus sign, or a comma before a further product
 * with its lot; each as far as its first name and its lot.
 */
const takeRecipe = (cursor: Cursor): NonNullable<Test['mix']> => {
  const all = cursor.items;
  let { next } = cursor;
  const mix: NonNullable<Test['mix']> = [];
  for (;;) {
    const start = next;
    let names = 0;
    while (next < all.length) {
      const item = all[next];
      if (item === undefined || item.kind === 'plus' || item.kind === 'comma' || item.kind === 'text') break;
      if (item.kind === 'number' && durationOf(cursor, item) !== undefined) break;
      if (item.kind === 'word') {
        const word = wordOf(cursor, item);
        if (word === 'lot' && next + 1 < all.length) {
          next += 2;
          while (all[next]?.glued && all[next]?.kind !== 'comma') next++;
          continue;
        }
        if (isResult(word) || SOFT_WORDS.has(word) || names === 1) break;
        names++;
      }
      next++;
    }
    if (next > start) mix.push(bindComponent(cursor, all.slice(start, next)));
    const goesOn = all[next]?.kind === 'plus' || (all[next]?.kind === 'comma' && isWithLot(cursor, all, next + 1));
    if (!goesOn) break;
    next++;
  }
  enter(cursor, all);
  cursor.next = next;
  return mix;
};

/** Takes `not-needed`, in one word or two. */
const takeNotNeeded = (cursor: Cursor): boolean => {
  if (takeWord(cursor, 'not-needed')) return true;
  if (peekWord(cursor) !== 'not' || peekWord(cursor, 1) !== 'needed') return false;
  cursor.next += 2;
  return true;
};

/** When it was read: a date and a time, in either order, either alone. */
const takeReading = (cursor: Cursor, draft: Draft): void => {
  for (;;) {
    const item = peek(cursor);
    if (item?.kind === 'date' && draft.readDate === undefined) {
      take(cursor);
      const date = dateOf(cursor, item);
      if (date !== undefined) draft.readDate = date;
      continue;
    }
    const time = draft.readTime === undefined ? takeTime(cursor) : undefined;
    if (time === undefined) return;
    draft.readTime = time;
  }
};

/** What skin shows, in its own words: `reaction, red` names neither a place nor a stage of lift. */
const bindSkin = (cursor: Cursor, items: readonly Item[]): Test['result'] => {
  enter(cursor, items);
  const words: Test['result'][number]['words'] = [];
  const zones: Test['zones'] = [];
  for (let item = peek(cursor); item?.kind === 'word'; item = peek(cursor)) {
    const zone = takeKnownZone(cursor);
    if (zone === undefined) words.push(wordAt(cursor, take(cursor) ?? item));
    else zones.push(zone);
  }
  const [first, last] = [items[0], items[cursor.next - 1]];
  finish(cursor);
  return first === undefined || last === undefined
    ? []
    : [{ zones: fitted(zones), words: fitted(words), at: atOf({ from: first.from, to: last.to }) }];
};

/** `test skin 2026-09-01 11:00 cream, gloss read 2026-09-03 11:30 clear`, `test strand clay 20min yellow`, … */
export const bindTest = ({ cursor, groups }: Opened): Bound | undefined => {
  enter(cursor, groups[0] ?? []);
  const kind = peek(cursor);
  if (kind?.kind !== 'word' || !isTestKind(wordOf(cursor, kind))) {
    const run = kind ?? { from: 0, to: cursor.text.length };
    const meant = kind && OTHER_NAMES[wordOf(cursor, kind)];
    notice(cursor, kind === undefined ? 'nothing-said' : 'not-read', run, 'The line does not say which test.', {
      todo: `Begin with ${TEST_KINDS.map((word) => `\`test ${word}\``).join(', ')}.`,
      ...(meant !== undefined && { put: { title: `write ${meant}`, text: meant, sure: 'likely' as const } }),
    });
    return undefined;
  }
  take(cursor);
  const test = nameAt(cursor, kind);
  const draft: Draft = {
    test,
    made: true,
    products: [],
    zones: [],
    read: false,
    result: [],
    notNeeded: false,
  };
  const shades: NonNullable<Test['shades']> = [];
  const seen: Item[] = [];
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind === 'comma') {
      take(cursor);
      continue;
    }
    if (item.kind === 'date' && draft.date === undefined) {
      take(cursor);
      const date = dateOf(cursor, item);
      if (date !== undefined) draft.date = date;
      // After a date `11.00` can only be a time.
      const time = draft.time === undefined ? takeTime(cursor) : undefined;
      if (time !== undefined) draft.time = time;
      continue;
    }
    if ((item.kind === 'slashed' || item.kind === 'chain') && otherDate(cursor, item)) {
      take(cursor);
      continue;
    }
    if (item.kind === 'slashed') {
      take(cursor);
      shades.push(shadeOf(typed(cursor, item), atOf(item)));
      continue;
    }
    if (item.kind === 'pair' && draft.time === undefined) {
      const time = takeTime(cursor);
      if (time !== undefined) draft.time = time;
      continue;
    }
    if (takeWord(cursor, 'read')) {
      draft.read = true;
      takeReading(cursor, draft);
      continue;
    }
    // `test skin patch done 2026-09-01`
    if (takeWord(cursor, 'done', 'made', 'patch')) continue;
    if (takeNotNeeded(cursor)) {
      draft.notNeeded = true;
      continue;
    }
    if (item.kind === 'word' && !draft.read && NOT_MADE.has(wordOf(cursor, item)) && !deniesResult(cursor)) {
      // Kept as typed, so that no test is taken to be made.
      finish(cursor, `Write \`test ${test.name} not-needed "why"\` for a decision, or keep it as a remark.`);
      return undefined;
    }
    const minutes = durationOf(cursor, item);
    if (minutes !== undefined && draft.minutes === undefined) {
      take(cursor);
      draft.minutes = minutes;
      continue;
    }
    if (MADE_WITH.has(test.name) && draft.mix === undefined && isRecipe(cursor, cursor.items, cursor.next)) {
      draft.mix = takeRecipe(cursor);
      continue;
    }
    take(cursor);
    // `clear (no redness)`, `clear - dry`: signs between the words of a reading say nothing.
    if (test.name === 'skin' && SIGNS.has(item.kind)) continue;
    const isProduct =
      item.kind === 'word' &&
      MADE_WITH.has(test.name) &&
      !isResult(wordOf(cursor, item), test.name) &&
      !NOT_MADE.has(wordOf(cursor, item)) &&
      seen.length === 0;
    if (isProduct && draft.minutes === undefined && !draft.read) draft.products.push(nameAt(cursor, item));
    else seen.push(item);
  }
  if (shades.length > 0) draft.shades = shades;
  draft.result = test.name === 'skin' ? bindSkin(cursor, seen) : bindSeen(cursor, [seen], { stages: true });
  const [first, last] = [seen[0], seen.at(-1)];
  if (test.name === 'skin' && !draft.read && first !== undefined && last !== undefined)
    notice(cursor, 'nothing-said', { from: first.from, to: last.to }, 'The result has no time of reading.', {
      todo: `Write when it was read, as in \`read 2026-11-20 10:00 ${typed(cursor, { from: first.from, to: last.to })}\`.`,
      label: 'read when',
    });
  draft.products = fitted(draft.products);
  draft.zones = fitted(draft.result.flatMap(({ zones }) => zones));
  const begun = draft.date ?? draft.time ?? draft.minutes ?? draft.mix?.[0] ?? draft.products[0];
  draft.made = !draft.notNeeded && (begun !== undefined || !draft.read);
  return draft;
};

import type { Item, Run } from '../../notation/line-tree.ts';
import { textEnd } from '../../notation/space.ts';
import { fold } from '../../text/fold.ts';
import { fromOf, toOf } from '../../text/span.ts';
import { HAIR_QUALITIES, type HairQuality, isHairWord, isHistory } from '../../trade/hair.ts';
import type {
  Allergy,
  Avoid,
  Because,
  Born,
  Caution,
  Consent,
  Grey,
  Hair,
  History,
  Hold,
  Letter,
  Natural,
  Pattern,
} from '../schema/client.ts';
import type { ZoneLine } from '../schema/shelf.ts';
import type { Word } from '../schema/values.ts';
import {
  atOf,
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
import { dateOf, isWhen, otherDate, takeDate, whenOf } from './dates.ts';
import { durationOf } from './figures.ts';
import { bindSeen, takeKnownZone, takeZones, zoneWord } from './seen.ts';
import { bindFree } from './visit-lines.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

/** `born 1988-04-02`, `born 1988` */
export const bindBorn = ({ cursor, groups }: Opened): Bound<Born> | undefined => {
  enter(cursor, groups[0] ?? []);
  const item = peek(cursor);
  if (item !== undefined && isWhen(cursor, item)) {
    take(cursor);
    const when = whenOf(cursor, item);
    finish(cursor);
    return when && { when };
  }
  if (item !== undefined && otherDate(cursor, item)) return undefined;
  return needs(cursor, 'The line gives no date of birth.', 'Write it as in `born 1988-04-02`, or the year alone.');
};

export const bindNatural = ({ cursor, groups }: Opened): Bound<Natural> => ({
  seen: bindSeen(cursor, groups, { stages: false }),
});

export const bindGrey = ({ cursor, groups }: Opened): Bound<Grey> => ({
  parts: bindSeen(cursor, groups, { stages: false, percentIsGrey: true }),
});

/** `hair medium, density high, length shoulder, form wavy, porosity high ends` */
export const bindHair = ({ cursor, groups }: Opened): Bound<Hair> => {
  const qualities: Hair['qualities'] = [];
  for (const group of groups) {
    enter(cursor, group);
    const words: Word[] = [];
    const zones: Hair['qualities'][number]['zones'] = [];
    for (let item = peek(cursor); item?.kind === 'word'; item = peek(cursor)) {
      // `ends` and `lengths` are places; `length` is a quality.
      const zone =
        zoneWord(wordOf(cursor, item)) !== undefined && wordOf(cursor, item) !== 'length'
          ? takeKnownZone(cursor)
          : undefined;
      if (zone !== undefined) zones.push(zone);
      else words.push(wordAt(cursor, take(cursor) ?? item));
    }
    finish(cursor);
    const [first, ...rest] = words.filter(({ word }) => word !== 'and');
    const before = qualities.at(-1);
    // `porosity high roots, ends`
    if (first === undefined && before !== undefined) before.zones.push(...zones);
    if (first === undefined) continue;
    if (isQuality(first.word)) qualities.push({ quality: first, words: rest, zones });
    // `porosity medium roots, high ends`: the quality before is kept while the word fits it.
    else if (before !== undefined && isHairQualityOf(before.quality.word, first.word))
      qualities.push({ quality: before.quality, words: [first, ...rest], zones });
    // `fine`, `fine curly`: each word says which quality it is of.
    else
      for (const word of [first, ...rest])
        qualities.push({ quality: { ...word, word: hairQualityOf(word.word) }, words: [word], zones });
  }
  return { qualities };
};

const isQuality = (word: string): word is HairQuality => Object.hasOwn(HAIR_QUALITIES, word);

/** Whether a word, after a quality of hair, tells of it. */
export const isHairQualityOf = (quality: string, word: string): boolean =>
  isQuality(quality) && isHairWord(quality, word);

/** The quality that a word alone tells of; the thickness of the strand where it could be several, or none of them. */
export const hairQualityOf = (word: string): string =>
  (['strand', 'form', 'length'] as const).find((quality) => isHairWord(quality, word)) ?? 'strand';

export const bindPattern = (opened: Opened): Bound<Pattern> => {
  const cursor = enterAll(opened);
  const zones = takeZones(cursor);
  finish(cursor);
  return { zones };
};

/** `history 2024-05 box-colour lengths` */
export const bindHistory = (opened: Opened): Bound<History> => {
  const cursor = enterAll(opened);
  const draft: { -readonly [key in keyof Bound<History>]: Bound<History>[key] } = { kinds: [], zones: [] };
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (isWhen(cursor, item) && draft.when === undefined) {
      take(cursor);
      const when = whenOf(cursor, item);
      if (when !== undefined) draft.when = when;
    } else if (item.kind === 'comma') take(cursor);
    else if (draft.when === undefined && item.kind !== 'word' && otherDate(cursor, item)) take(cursor);
    else if (item.kind === 'word' && isHistory(`${wordOf(cursor, item)}-${peekWord(cursor, 1)}`)) {
      // `box colour`
      take(cursor);
      const last = take(cursor) ?? item;
      draft.kinds.push({
        word: `${wordOf(cursor, item)}-${wordOf(cursor, last)}`,
        at: atOf({ from: item.from, to: last.to }),
      });
    } else if (item.kind === 'word' && zoneWord(wordOf(cursor, item)) !== undefined) {
      const zone = takeKnownZone(cursor);
      if (zone !== undefined) draft.zones.push(zone);
    } else if (item.kind === 'word') draft.kinds.push(wordAt(cursor, take(cursor) ?? item));
    else break;
  }
  finish(cursor);
  return draft;
};

const bindWords = (opened: Opened): Word[] => {
  const cursor = enterAll(opened);
  const words: Word[] = [];
  for (let item = peek(cursor); item?.kind === 'word' || item?.kind === 'comma'; item = peek(cursor)) {
    if (item.kind === 'word') words.push(wordAt(cursor, item));
    take(cursor);
  }
  return words;
};

export const bindAllergy = (opened: Opened): Bound<Allergy> | undefined => {
  // `allergy to nickel`
  const [first, ...others] = bindWords(opened);
  const to = first === undefined ? [] : first.word === 'to' ? others : [first, ...others];
  const [only, ...more] = to;
  if (only !== undefined && more.length === 0 && /^(no|none|nil)$/.test(only.word)) {
    const run = { from: fromOf(only.at), to: toOf(only.at) };
    notice(
      opened.cursor,
      'two-readings',
      run,
      'An `allergy` line stands for an allergy, and this one says there is none.',
      {
        todo: 'Write `note no known allergy`.',
        label: 'kept as typed',
      },
    );
    return undefined;
  }
  finish(opened.cursor);
  if (to.length === 0 && opened.closing.says === undefined)
    needs(opened.cursor, 'The line names no allergy.', 'Write it as in `allergy "nickel"`.');
  return { to };
};

export const bindAvoid = (opened: Opened): Bound<Avoid> => {
  const what = bindWords(opened);
  finish(opened.cursor);
  if (what.length === 0 && opened.closing.says === undefined)
    needs(opened.cursor, 'The line does not say what to avoid.', 'Write it as in `avoid "brassiness"`.');
  return { what };
};

/** `consent photos`, `consent form 2026-09-01 "her mother"` */
export const bindConsent = (opened: Opened): Bound<Consent> => {
  const what = bindWords(opened);
  const { cursor } = opened;
  const item = takeKind(cursor, 'date');
  const date = item && dateOf(cursor, item);
  while (peek(cursor)?.kind === 'word') what.push(wordAt(cursor, take(cursor) as Item));
  finish(cursor);
  return { what, ...(date && { date }) };
};

/** `letter 2026-05-02 "Dr N: may have hair colour"` */
export const bindLetter = (opened: Opened): Bound<Letter> => {
  const cursor = enterAll(opened);
  const known = cursor.notices.length;
  const date = takeDate(cursor);
  if (date === undefined && cursor.notices.length === known)
    needs(
      cursor,
      'The line does not say when the letter was written.',
      'Write its date, as in `letter 2026-05-02 "Dr N: may have hair colour"`.',
    );
  else {
    finish(cursor);
    if (date !== undefined && opened.closing.says === undefined)
      needs(cursor, 'The line does not say what the letter says.', 'Write it in quotation marks after the date.');
  }
  return { ...(date && { date }) };
};

/** `hold lightener to 2027-01 "ends gummy"`, `hold oxidative 4w`, `hold all` */
export const bindHold = (opened: Opened): Bound<Hold> | undefined => {
  const cursor = enterAll(opened);
  const first = peek(cursor);
  if (first?.kind !== 'word')
    return needs(
      cursor,
      'The line does not say what to hold.',
      'Name a kind, a product, `oxidative` or `all`, as in `hold lightener to 2027-01`.',
    );
  take(cursor);
  const draft: { -readonly [key in keyof Bound<Hold>]: Bound<Hold>[key] } = { what: nameAt(cursor, first) };
  const known = cursor.notices.length;
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    const from = takeWord(cursor, 'from');
    const until = !from && takeWord(cursor, 'to', 'until', 'for');
    if (until && takeWord(cursor, 'letter')) {
      draft.untilLetter = true;
      continue;
    }
    const value = peek(cursor);
    const length = durationOf(cursor, value);
    if (
      value === undefined ||
      (length !== undefined && draft.length !== undefined) ||
      (length === undefined && !isWhen(cursor, value)) ||
      (!from && !until && length === undefined)
    )
      break;
    take(cursor);
    const when = length === undefined ? whenOf(cursor, value) : undefined;
    if (length !== undefined) draft.length = length;
    else if (when !== undefined) draft[from ? 'from' : 'until'] = when;
  }
  if (cursor.notices.length === known)
    finish(cursor, 'Write `to` before the date the hold ends, or how long it lasts, as in `4w`.');
  return draft;
};

/** `because RULE "reason"` */
export const bindBecause = ({ cursor, groups, closing }: Opened): Bound<Because> | undefined => {
  enter(cursor, groups[0] ?? []);
  const item = takeKind(cursor, 'word');
  if (item === undefined)
    return needs(
      cursor,
      'The line names no rule.',
      'Write the rule and the reason, as in `because ratio-off-mix "runny on purpose"`.',
    );
  finish(cursor);
  if (closing.says === undefined)
    needs(cursor, 'The line gives no reason.', 'Write it in quotation marks after the rule.');
  return { rule: nameAt(cursor, item) };
};

/** `until 2027-01` or `to 2027-01` as the last two words of a text: where the word and the date stand. */
const lastWords = (line: string, from: number): { word: Run; date: Run } | undefined => {
  const end = textEnd(line);
  const size =
    /\d{4}(?:[-‐-―−]\d{2}(?:[-‐-―−]\d{2})?)?$/.exec(line.slice(Math.max(from, end - 10), end))?.[0].length ?? 0;
  const before = textEnd(line.slice(0, end - size));
  const word = /(?:^|[\s\u200b"“”])(until|to)$/i.exec(line.slice(Math.max(from, before - 6), before))?.[1] ?? '';
  if (size === 0 || word === '' || before === end - size) return undefined;
  return { word: { from: before - word.length, to: before }, date: { from: end - size, to: end } };
};

/** A caution takes the rest of its line; only `until` and a date as its last two words end it. */
export const bindCaution = (
  line: string,
  from: number,
  cursor: Cursor,
): { caution: Bound<Caution>; closing: Opened['closing'] } => {
  const { text, closing } = bindFree(line, from);
  const last = lastWords(line, from);
  if (last === undefined) return { caution: { text }, closing };
  const date = typed(cursor, last.date);
  if (fold(typed(cursor, last.word)) === 'until') {
    const kind = date.length === 10 ? 'date' : date.length === 7 ? 'month' : 'number';
    const until = whenOf(cursor, { kind, ...last.date, glued: false });
    const said = bindFree(line.slice(0, last.word.from), from).text;
    // A quotation mark that lost its twin to `until` says nothing.
    return { caution: { text: said.replace(/^["“„]|["“”]$/g, ''), ...(until && { until }) }, closing };
  }
  notice(
    cursor,
    'caution-to',
    { from: last.word.from, to: last.date.to },
    'A caution ends only with `until`; this one stays in force.',
    { todo: `Write \`until ${date}\` if it ends then.` },
  );
  return { caution: { text }, closing };
};

/** `zone half-head top, crown, sides` under a salon; `zone band "left, 8 cm down"` under a client or visit. */
export const bindZoneLine = (opened: Opened): Bound<ZoneLine> | undefined => {
  const cursor = enterAll(opened);
  const { closing } = opened;
  const first = takeKind(cursor, 'word');
  if (first === undefined)
    return needs(
      cursor,
      'The line names no place.',
      'Write its name, then where it is, as in `zone band "left, 8 cm down"`.',
    );
  const zones = takeZones(cursor);
  finish(cursor);
  return { zone: nameAt(cursor, first), zones, ...(closing.says && { where: closing.says }) };
};

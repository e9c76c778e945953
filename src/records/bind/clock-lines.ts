import type { Item } from '../../notation/line-tree.ts';
import { isBowlName } from '../../notation/words.ts';
import type { Name, Period, Word } from '../schema/values.ts';
import type { Check, Heat, Off, On, Reaction, Wash } from '../schema/visit.ts';
import {
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
} from './cursor.ts';
import { amountOf, durationOf, periodOf } from './figures.ts';
import { bindSeen, takeBowls, takeKnownZone, takeZones, zoneWord } from './seen.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

const two = (text: string): string => text.padStart(2, '0');

/** Takes the time that a clock line begins with. A figure that is no time is reported here, where a time is expected. */
const takePeriod = (cursor: Cursor, word: string, needed: boolean): Period | undefined => {
  const item = peek(cursor);
  if (item?.kind === 'clock' || item?.kind === 'pair') {
    take(cursor);
    return periodOf(cursor, item);
  }
  const bare = item?.kind === 'number' && item.unit === undefined && !item.percent && !item.second ? item : undefined;
  if (bare !== undefined && (needed || /[.,]/.test(typed(cursor, bare)))) {
    const text = typed(cursor, bare);
    const [hour = '', minute] = text.split(/[.,]/);
    const offers = minute === undefined ? `\`${two(hour)}:00\`` : `\`${hour}:0${minute}\` or \`${hour}:${minute}0\``;
    if (minute === undefined || Number(hour) > 8 || needed) {
      take(cursor);
      notice(cursor, 'bad-time', bare, `\`${text}\` is no time of day.`, {
        todo: `Write ${offers}.`,
        label: 'hours and minutes',
      });
      return undefined;
    }
  }
  if (needed && bare === undefined)
    notice(cursor, 'bad-time', item ?? { from: 0, to: cursor.text.length }, `The \`${word}\` line has no time.`, {
      todo: `Write the time first, as in \`${word} 14:35 A\`.`,
    });
  return undefined;
};

const sayBowl = (cursor: Cursor, word: string, bowls: readonly Name[]): void => {
  const item = peek(cursor);
  if (bowls.length > 0 || item !== undefined || word !== 'on') return;
  notice(cursor, 'no-bowl', { from: 0, to: cursor.text.length }, `The \`${word}\` line names no bowl.`, {
    todo: `Write the bowl after the time, as in \`${word} 14:35 A roots\`.`,
  });
};

/** `on 14:35-14:55 A hairline, top for 7min` */
export const bindOn = ({ cursor, groups }: Opened): Bound<On> | undefined => {
  enter(cursor, flatten(groups));
  const period = takePeriod(cursor, 'on', true);
  const bowls = takeBowls(cursor);
  sayBowl(cursor, 'on', bowls);
  const zones = takeZones(cursor);
  const meant =
    takeWord(cursor, 'for') || durationOf(cursor, peek(cursor)) !== undefined
      ? durationOf(cursor, take(cursor))
      : undefined;
  finish(cursor);
  return period && { period, bowls, zones, ...(meant && { minutes: meant }) };
};

/** `off 15:15 A hairline 40min`: the minutes are a claim. */
export const bindOff = ({ cursor, groups }: Opened): Bound<Off> => {
  enter(cursor, flatten(groups));
  const period = takePeriod(cursor, 'off', true);
  const bowls = takeBowls(cursor);
  let claim = takeDuration(cursor);
  const zones = takeZones(cursor);
  claim ??= takeDuration(cursor);
  finish(cursor);
  return { bowls, zones, ...(period && { time: period.from }), ...(claim && { claim }) };
};

const takeDuration = (cursor: Cursor): Off['claim'] => {
  const duration = durationOf(cursor, peek(cursor));
  if (duration !== undefined) take(cursor);
  return duration;
};

/** Bowls at the head of a check, which may stand apart from the rest by a comma (`check 10:40 A, B roots yellow`). */
const leadBowls = (cursor: Cursor, groups: Item[][]): { bowls: Name[]; rest: Item[][] } => {
  const bowls = takeBowls(cursor);
  const rest = [cursor.items.slice(cursor.next), ...groups.slice(1)];
  while (bowls.length > 0 && rest[0]?.length === 0 && rest.length > 1) {
    rest.shift();
    enter(cursor, rest[0] ?? []);
    bowls.push(...takeBowls(cursor));
    rest[0] = cursor.items.slice(cursor.next);
  }
  return { bowls, rest };
};

/** `check 14:55 hairline gold, top orange` */
export const bindCheck = ({ cursor, groups }: Opened): Bound<Check> => {
  enter(cursor, groups[0] ?? []);
  const period = takePeriod(cursor, 'check', false);
  const { bowls, rest } = leadBowls(cursor, groups);
  return { bowls, seen: bindSeen(cursor, rest, { stages: true }), ...(period && { period }) };
};

type Step = Bound<Wash>;

/** `heat 14:00-14:20 A`, `wash 15 clarify`, `rinse 15:20`, `dry`, `cut 15:40`: order is free after the time. */
export const bindStep = ({ cursor, groups }: Opened, word: string): Step & Bound<Heat> => {
  enter(cursor, flatten(groups));
  const period = takePeriod(cursor, word, false);
  const step: { -readonly [key in keyof Step]: Step[key] } = { bowls: [], zones: [], words: [] };
  if (period !== undefined) step.period = period;
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    const text = peekWord(cursor);
    if (text !== undefined && zoneWord(text) !== undefined) {
      const zone = takeKnownZone(cursor);
      if (zone !== undefined) step.zones.push(zone);
    } else if (text !== undefined && isBowlName(text)) step.bowls.push(...takeBowls(cursor));
    else if (text !== undefined) step.words.push(wordAt(cursor, take(cursor) ?? item));
    else if (item.kind === 'comma' || item.kind === 'plus') take(cursor);
    else if (item.kind === 'number') {
      const minutes = durationOf(cursor, item);
      const amount = minutes === undefined ? amountOf(cursor, item) : undefined;
      take(cursor);
      if (minutes !== undefined) step.minutes = minutes;
      else if (amount !== undefined) step.amount = amount;
    } else break;
  }
  finish(cursor);
  return step;
};

/** `reaction +18 A temple burning`, `stopped 13:24 A` */
export const bindEvent = ({ cursor, groups }: Opened, word: string): Bound<Reaction> => {
  const { period, bowls, zones, words } = bindStep({ cursor, groups, closing: {} }, word);
  return { bowls, zones, words, ...(period && { time: period.from }) };
};

/** Words of a group, as they stand. */
export const takeWords = (cursor: Cursor): Word[] => {
  const words: Word[] = [];
  for (let item = takeKind(cursor, 'word'); item !== undefined; item = takeKind(cursor, 'word'))
    words.push(wordAt(cursor, item));
  return words;
};

import type { Item, Run } from '../../notation/line-tree.ts';
import { fitted, joined } from '../../text/fitted.ts';
import { type At, fromOf, joinSpans, sliceOf, toOf } from '../../text/span.ts';
import type { Amount, Duration, Name, Period, Zone } from '../schema/values.ts';
import type { Check, Heat, Off, On, Reaction, Wash, Zero } from '../schema/visit.ts';
import {
  type Cursor,
  enter,
  enterAll,
  finish,
  notice,
  type Opened,
  peek,
  peekWord,
  take,
  takeKind,
  typed,
  wordAt,
  wordOf,
} from './cursor.ts';
import { amountOf, countAt, durationOf } from './figures.ts';
import { bindSeen, bowlAhead, takeBowls, takeKnownZone, takeZones, zoneAhead } from './seen.ts';
import { periodOf, takeHeadTime } from './times.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

const two = (text: string): string => text.padStart(2, '0');

/** Whether an item is a time of day wherever it stands: `14:35`, `2pm`, and `14.35` where the line needs a time. */
const isTime = (cursor: Cursor, item: Item, needed: boolean): boolean => {
  if (item.kind === 'clock' || item.kind === 'pair') return true;
  if (item.kind !== 'number' || item.percent) return false;
  if (item.unit !== undefined) return /^[ap]m$/i.test(typed(cursor, item.unit));
  return needed && /^\d{1,2}[.,]\d\d(\s*[-‐-―−]\s*\d{1,2}[.,]\d\d)?$/.test(typed(cursor, item));
};

/** Takes the time out of the line: it is written first, but has one meaning wherever it stands (`on A 14:35`). */
const pickTime = (cursor: Cursor, needed: boolean): Item | undefined => {
  let index = cursor.next;
  let item = cursor.items[index];
  while (item !== undefined && !isTime(cursor, item, needed)) item = cursor.items[++index];
  if (item === undefined) return undefined;
  cursor.items = cursor.items.filter((_, place) => place !== index);
  if (index > cursor.next && wordBefore(cursor, index) === 'at')
    cursor.items = cursor.items.filter((_, place) => place !== index - 1);
  return item;
};

const wordBefore = (cursor: Cursor, index: number): string | undefined => {
  const before = cursor.items[index - 1];
  return before?.kind === 'word' ? wordOf(cursor, before) : undefined;
};

/** Takes the far end of `14:35 to 14:55`. */
const takeEnd = (cursor: Cursor, period: Period): Period => {
  const end = peek(cursor, 1);
  const word = peekWord(cursor);
  if (period.to !== undefined || (word !== 'to' && word !== 'until') || end === undefined) return period;
  if (!isTime(cursor, end, true)) return period;
  cursor.next += 2;
  const to = periodOf(cursor, end)?.from;
  return to === undefined ? period : { ...period, to, at: joinSpans(period.at, to.at) };
};

/** What to write for figures that are no time: `1435`, `14h35`, `14.5`, `9`. */
const timeOffers = (text: string): string => {
  const joined = /^(\d{1,2})h?(\d\d)$/i.exec(text);
  if (joined !== null) return `\`${two(joined[1] ?? '')}:${joined[2]}\``;
  const [hour = '', minute] = text.split(/[.,]/);
  if (!/^\d{1,2}$/.test(hour) || (minute?.length ?? 1) > 1) return 'hours and minutes, as in `14:35`';
  return minute === undefined ? `\`${two(hour)}:00\`` : `\`${hour}:0${minute}\` or \`${hour}:${minute}0\``;
};

/** Takes the time that a clock line begins with. A figure that is no time is reported here, where a time is expected. */
const takePeriod = (cursor: Cursor, word: string, needed: boolean): Period | undefined => {
  const ofHead = takeHeadTime(cursor);
  if (ofHead !== undefined) return takeEnd(cursor, ofHead);
  const picked = pickTime(cursor, needed);
  if (picked !== undefined) {
    const period = periodOf(cursor, picked);
    // `14:35h`
    if (peek(cursor)?.glued && /^h(rs?)?$/.test(peekWord(cursor) ?? '')) take(cursor);
    const whole = period && takeEnd(cursor, period);
    // `check 15:05 - roots gold`
    takeKind(cursor, 'dash');
    return whole;
  }
  const item = peek(cursor);
  const bare = item?.kind === 'number' && item.unit === undefined && !item.percent ? item : undefined;
  const known = cursor.notices.length;
  const start = cursor.next;
  if (bare !== undefined && (needed || (!bare.second && /[.,]/.test(typed(cursor, bare))))) {
    take(cursor);
    const letters = peek(cursor)?.glued && /^h\d\d$/.test(peekWord(cursor) ?? '') ? take(cursor) : undefined;
    const run = { from: bare.from, to: letters?.to ?? bare.to };
    const text = typed(cursor, run);
    const hour = Number(text.split(/[.,]/)[0]);
    if (needed || hour > 8)
      notice(cursor, 'bad-time', run, `\`${text}\` is no time of day.`, {
        todo: `Write ${timeOffers(text)}.`,
        label: 'hours and minutes',
      });
    else cursor.next = start;
  }
  const minutes = durationOf(cursor, item);
  const since = minutes?.unit === 'min' ? ` or \`${word} +${minutes.value}\` for minutes after the first \`on\`` : '';
  if ((needed || (word === 'check' && since !== '')) && cursor.notices.length === known) {
    notice(cursor, 'bad-time', item ?? { from: 0, to: cursor.text.length }, `The \`${word}\` line has no time.`, {
      todo: `Write the time first, as in \`${word} 14:35 A\`${since}.`,
    });
    if (!needed) take(cursor);
  }
  return undefined;
};

/** Whether a line begins with a bowl or a place and holds no time of day: half of all hands note minutes alone. */
const isWithoutClock = (cursor: Cursor): boolean =>
  (bowlAhead(cursor) || zoneAhead(cursor)) &&
  cursor.items.every(
    (item, index) =>
      !isTime(cursor, item, true) &&
      // `on A 1435`: a figure that may have been meant as a time.
      (item.kind !== 'number' || durationOf(cursor, item) !== undefined || wordBefore(cursor, index) === 'for'),
  );

/** `on 14:35-14:55 A hairline, top for 7min`; without a clock `on T roots for 8min`, `on T lengths last 2min`. */
export const bindOn = (opened: Opened): Bound<On> | undefined => {
  const cursor = enterAll(opened);
  const clockless = isWithoutClock(cursor);
  const period = clockless ? undefined : takePeriod(cursor, 'on', true);
  // The line is kept as typed: one finding is enough.
  if (period === undefined && !clockless) return undefined;
  const { bowls, zones, minutes, last } = takeWhere(cursor, false);
  finish(cursor);
  if (bowls.length === 0 && zones.length === 0 && cursor.rest === undefined)
    notice(cursor, 'no-bowl', { from: 0, to: cursor.text.length }, 'The `on` line names no bowl.', {
      todo: 'Write the bowl after the time, as in `on 14:35 A roots`.',
    });
  return { bowls, zones, ...(period && { period }), ...(minutes && { minutes }), ...(last && { last }) };
};

/** Reports the far end of a span where one time belongs. */
const oneTime = (cursor: Cursor, { to }: Period): void => {
  if (to === undefined) return;
  notice(cursor, 'not-read', runAt(to.at), 'One time belongs here; the first of the span counts.', {
    todo: 'Write the one time.',
    label: 'not kept',
  });
};

/** `zero 9:40`: a time of day, from which `0+25` counts. */
export const bindZero = (opened: Opened): Bound<Zero> | undefined => {
  const cursor = enterAll(opened);
  const period = takePeriod(cursor, 'zero', true);
  if (period === undefined) return undefined;
  if (period.from.minutes === undefined) {
    notice(cursor, 'bad-time', runAt(period.at), 'The `zero` line says what other times count from.', {
      todo: 'Write the time of day, as in `zero 9:40`.',
      label: 'no time of day',
    });
    return undefined;
  }
  oneTime(cursor, period);
  finish(cursor);
  return { time: period.from };
};

/** Bowls, places and a length of time, in whatever order a hand writes them; where it `counts`, sections too. */
const takeWhere = (cursor: Cursor, counts: boolean): Where => {
  let bowls: Name[] = [];
  let zones: Zone[] = [];
  let minutes: Duration | undefined;
  let sections: number | undefined;
  let last = false;
  for (;;) {
    const start = cursor.next;
    if (counts) sections ??= takeSections(cursor);
    bowls = joined(bowls, takeBowls(cursor));
    if (minutes === undefined) {
      last = isLast(cursor);
      if (last) cursor.next += peekWord(cursor) === 'last' ? 1 : peekWord(cursor, 1) === 'last' ? 2 : 3;
      minutes = takeMinutes(cursor);
    }
    zones = joined(zones, takeZones(cursor));
    if (cursor.next === start && takeKind(cursor, 'comma') === undefined)
      return { bowls, zones, minutes, last, sections };
  }
};

type Where = {
  bowls: Name[];
  zones: Zone[];
  minutes: Duration | undefined;
  last: boolean;
  sections: number | undefined;
};

/** `x6`, of what came off. */
const takeSections = (cursor: Cursor): number | undefined => {
  const item = peek(cursor);
  if (item?.kind !== 'count') return undefined;
  const count = countAt(cursor, item);
  if (count === undefined || !Number.isInteger(count) || count === 0) return undefined;
  take(cursor);
  return count;
};

/** `last 2min`, `for the last 2min`: the end of the bowl's own time. */
const isLast = (cursor: Cursor): boolean => {
  const words = [0, 1, 2].map((ahead) => peekWord(cursor, ahead));
  const place = words[0] === 'last' ? 0 : words[0] === 'for' ? (words[1] === 'the' ? 2 : 1) : -1;
  return place >= 0 && words[place] === 'last' && durationOf(cursor, peek(cursor, place + 1))?.unit === 'min';
};

/** `7min`, `for 7min`; after `for` a bare figure can only be minutes. */
const takeMinutes = (cursor: Cursor): Duration | undefined => {
  const meant = peekWord(cursor) === 'for';
  const item = peek(cursor, meant ? 1 : 0);
  if (item?.kind !== 'number') return undefined;
  const duration =
    durationOf(cursor, item) ??
    (meant && item.unit === undefined && !item.percent ? minutesOf(amountOf(cursor, item)) : undefined);
  if (duration !== undefined) cursor.next += meant ? 2 : 1;
  return duration;
};

const minutesOf = (amount: Amount | undefined): Duration | undefined => amount && { ...amount, unit: 'min' };

/**
 * `off 15:15 A hairline 40min`: the minutes are a claim; without a time, `off T 8min`, they are how long it was on. A span
 * `off 14:48-15:01 A` is from the first section off to the last; `x6` says how many came off, while the rest stays in.
 */
export const bindOff = (opened: Opened): Bound<Off> => {
  const cursor = enterAll(opened);
  const clockless = isWithoutClock(cursor) && cursor.items.some((item) => durationOf(cursor, item)?.unit === 'min');
  const period = clockless ? undefined : takePeriod(cursor, 'off', true);
  const { bowls, zones, minutes, sections } = takeWhere(cursor, true);
  finish(cursor);
  return {
    bowls,
    zones,
    ...(period && { time: period.from }),
    ...(period?.to && { until: period.to }),
    ...(minutes && { claim: minutes }),
    ...(sections !== undefined && { sections }),
  };
};

/** Bowls at the head of a check, which may stand apart from the rest by a comma (`check 10:40 A, B roots yellow`). */
const leadBowls = (cursor: Cursor, groups: Item[][]): { bowls: Name[]; rest: Item[][] } => {
  let bowls = takeBowls(cursor);
  const rest = [cursor.items.slice(cursor.next), ...groups.slice(1)];
  while (bowls.length > 0 && rest[0]?.length === 0 && rest.length > 1) {
    rest.shift();
    enter(cursor, rest[0] ?? []);
    bowls = joined(bowls, takeBowls(cursor));
    rest[0] = cursor.items.slice(cursor.next);
  }
  return { bowls, rest };
};

/** `check 14:55 hairline gold, top orange` */
export const bindCheck = ({ cursor, groups }: Opened): readonly Bound<Check>[] => {
  enter(cursor, groups[0] ?? []);
  const period = takePeriod(cursor, 'check', false);
  const { bowls, rest } = leadBowls(cursor, groups);
  const looks = [{ bowls, rest: rest.slice(0, 1) }];
  for (const group of rest.slice(1)) {
    const led = bowls.length === 0 ? undefined : bowlsOf(cursor, group);
    if (led === undefined) looks.at(-1)?.rest.push(group);
    else looks.push(led);
  }
  return looks.map((look) => ({
    bowls: look.bowls,
    seen: bindSeen(cursor, look.rest, { stages: true }),
    ...(period && { period }),
  }));
};

/** A later part of a check that begins by another bowl, in a capital: `check 9:30 A left orange, B right gold`. */
const bowlsOf = (cursor: Cursor, group: Item[]): { bowls: Name[]; rest: Item[][] } | undefined => {
  const [first] = group;
  if (first === undefined || !/^\p{Lu}/u.test(typed(cursor, first))) return undefined;
  enter(cursor, group);
  const bowls = takeBowls(cursor);
  const rest = cursor.items.slice(cursor.next);
  return bowls.length === 0 || rest.length === 0 ? undefined : { bowls, rest: [rest] };
};

type Step = Bound<Wash>;

/** `heat 14:00-14:20 A`, `wash 15 clarify`, `rinse 15:20`, `dry`, `cut 15:40`: order is free after the time. */
export const bindStep = (opened: Opened, word: string): Step => {
  const cursor = enterAll(opened);
  const period = takePeriod(cursor, word, false);
  const step: { -readonly [key in keyof Step]: Step[key] } = { bowls: [], zones: [], words: [] };
  if (period !== undefined) step.period = period;
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    const text = peekWord(cursor);
    const zone = takeKnownZone(cursor);
    const minutes = zone === undefined && step.minutes === undefined ? takeMinutes(cursor) : undefined;
    if (zone !== undefined) step.zones.push(zone);
    else if (minutes !== undefined) step.minutes = minutes;
    else if (bowlAhead(cursor)) step.bowls.push(...takeBowls(cursor));
    else if (text !== undefined) step.words.push(wordAt(cursor, take(cursor) ?? item));
    else if (item.kind === 'comma' || item.kind === 'plus') take(cursor);
    else if (
      item.kind === 'number' &&
      step.amount === undefined &&
      !isTimes(cursor) &&
      durationOf(cursor, item) === undefined
    ) {
      take(cursor);
      const amount = amountOf(cursor, item);
      if (amount !== undefined) step.amount = amount;
    } else break;
  }
  step.bowls = fitted(step.bowls);
  step.zones = fitted(step.zones);
  step.words = fitted(step.words);
  finish(cursor);
  return step;
};

/** `2x`: how often, which is not kept as an amount. */
const isTimes = (cursor: Cursor): boolean => peek(cursor, 1)?.glued === true && peekWord(cursor, 1) === 'x';

const runAt = (at: At): Run => ({ from: fromOf(at), to: toOf(at) });

/** `heat 14:00-14:20 A`, `heat 20min` */
export const bindHeat = (opened: Opened): Bound<Heat> => {
  const { amount, ...heat } = bindStep(opened, 'heat');
  if (amount !== undefined)
    notice(
      opened.cursor,
      'two-readings',
      runAt(amount.at),
      `\`${sliceOf(opened.cursor.text, amount.at)}\` can be minutes or degrees.`,
      {
        todo: `Write \`${amount.value}min\`, or the degrees in quotation marks.`,
        label: 'of what',
      },
    );
  return heat;
};

/** `reaction +18 A temple burning`, `stopped 13:24 A` */
export const bindEvent = (opened: Opened, word: string): Bound<Reaction> | undefined => {
  const [only, ...others] = opened.groups.flat();
  if (
    word === 'reaction' &&
    only !== undefined &&
    others.length === 0 &&
    /^(no|none|nil)$/i.test(typed(opened.cursor, only))
  ) {
    notice(
      opened.cursor,
      'two-readings',
      only,
      'A `reaction` line stands for a reaction, and this one says there was none.',
      {
        todo: 'Write `note no reaction`.',
        label: 'kept as typed',
      },
    );
    return undefined;
  }
  const { period, minutes, amount, bowls, zones, words } = bindStep(opened, word);
  if (period !== undefined) oneTime(opened.cursor, period);
  const figure = minutes ?? amount;
  if (figure !== undefined)
    notice(
      opened.cursor,
      'two-readings',
      runAt(figure.at),
      `\`${sliceOf(opened.cursor.text, figure.at)}\` does not say when.`,
      {
        todo: `Write \`${word} +${figure.value}\` for minutes after the first \`on\`, or the time of day.`,
        label: 'since when',
      },
    );
  return { bowls, zones, words, ...(period && { time: period.from }) };
};

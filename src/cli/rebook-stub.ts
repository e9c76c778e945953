import type { Source, Stood } from '../journal/source.ts';
import type { Visit, VisitFact } from '../records/schema/entry.ts';
import type { Duration, Name } from '../records/schema/values.ts';
import { addDays, addMonths } from '../text/dates.ts';
import { sliceOf } from '../text/span.ts';
import { timeText } from './today.ts';

type Next = Extract<VisitFact, { word: 'next' }>;

const lastOf = <W extends VisitFact['word']>(visit: Stood<Visit>, word: W) =>
  visit.entry.facts.findLast((fact): fact is Extract<VisitFact, { word: W }> => fact.word === word);

const later = (date: string, { value, unit }: Duration): string => {
  if (unit === 'mo') return addMonths(date, Math.round(value));
  return addDays(date, unit === 'w' ? Math.round(value * 7) : unit === 'd' ? Math.round(value) : 0);
};

/** The day that a visit's `next` names, or the near end of its length from the visit; undefined without either. */
export const nextDate = (visit: Stood<Visit>): string | undefined => {
  const next = lastOf(visit, 'next');
  const date = visit.entry.date?.date;
  if (next?.date !== undefined) return next.date.date;
  return next?.wait === undefined || date === undefined ? undefined : later(date, next.wait);
};

/** `again A from 2026-09-04 A 80%` for every bowl of the visit, at the share that its `next` asks for. */
const againLines = (
  visit: Stood<Visit>,
  date: string,
  typed: (line: number, name: Name) => string,
  next: Next | undefined,
): string[] => {
  const bowls = new Map<string, string>();
  for (const fact of visit.entry.facts)
    if ((fact.word === 'bowl' || fact.word === 'again') && !bowls.has(fact.bowl.name))
      bowls.set(fact.bowl.name, typed(fact.line, fact.bowl));
  return [...bowls].map(([key, bowl]) => {
    const change = next?.changes.find((one) => one.bowl?.name === key && one.percent !== undefined);
    return `  again ${bowl} from ${date} ${bowl}${change?.percent === undefined ? '' : ` ${100 + change.percent}%`}`;
  });
};

/** What `next` asks for besides a bowl's share, as a note to read before beginning. */
const plannedLines = (date: string, next: Next | undefined): string[] => {
  const words = next?.changes.filter(({ bowl, percent }) => bowl === undefined || percent === undefined) ?? [];
  const said = [...words.map(({ text }) => text), ...(next?.says === undefined ? [] : [next.says.text])];
  return said.length === 0 ? [] : [`  note planned on ${date}: ${said.join(', ')}`];
};

/**
 * The lines of a new visit made from an earlier one and its `next`: bowls made again, aims and places as they were
 * typed. `on` is its day.
 */
export const stubLines = (visit: Stood<Visit>, source: Source, on: string): string[] => {
  const { entry } = visit;
  const lineAt = (line: number): string => source.lines[visit.line + line] ?? '';
  const typed = (line: number, name: Name): string => sliceOf(lineAt(line), name.at);
  const date = entry.date?.date ?? '';
  const next = lastOf(visit, 'next');
  const time = next?.date?.date === on && next.time?.minutes !== undefined ? ` ${timeText(next.time.minutes)}` : '';
  const named = (word: string, name: Name | undefined): string =>
    name === undefined ? '' : ` ${word}${typed(0, name)}`;
  const header = `visit ${on}${time}${named('', entry.client)}${named('by ', entry.by)}${named('at ', entry.salon)}`;
  const kept = (word: string): string[] => {
    const lines = entry.facts.filter((fact) => fact.word === word).map((fact) => `  ${lineAt(fact.line).trim()}`);
    return [...new Set(lines)];
  };
  return [
    header,
    ...plannedLines(date, next),
    ...kept('aim'),
    ...againLines(visit, date, typed, next),
    ...kept('place'),
    ...kept('leave'),
  ];
};

import type { Source, Stood } from '../journal/source.ts';
import { sumText } from '../pages/prep-sums.ts';
import { nextIn } from '../reckon/due-window.ts';
import type { Plan, PlannedBowl } from '../reckon/plan.ts';
import { figure } from '../reckon/say.ts';
import type { Visit } from '../records/schema/entry.ts';
import type { Name } from '../records/schema/values.ts';
import type { Next } from '../records/schema/visit.ts';
import { div, type Exact, equal, exact, mul, roundTo } from '../text/exact.ts';
import { sliceOf } from '../text/span.ts';
import { timeText } from './today.ts';

type Typed = (line: number, name: Name) => string;

/**
 * What a bowl is made to, as per cent of the one that is made again: the fewest decimals that come to the grams planned.
 * Without a weight to go by it is what `next` asks for.
 */
const shareText = (planned: PlannedBowl | undefined, scale: Exact): string => {
  const { bowl, total, asked = 0 } = planned ?? {};
  if (bowl?.total === undefined || total === undefined) return asked === 0 ? '' : ` ${100 + asked}%`;
  const whole = bowl.total;
  const share = div(mul(total, exact(100)), whole);
  const shares = [0, 1, 2].map((places) => roundTo(share, exact(1, 10 ** places)));
  const found = shares.find((one) => equal(roundTo(div(mul(whole, one), exact(100)), scale), total)) ?? shares.at(-1);
  return found === undefined || equal(found, exact(100)) ? '' : ` ${figure(found)}%`;
};

/** `again A from 2026-09-04 A 80%` for every bowl of the visit, at the share that comes to the grams planned. */
const againLines = (visit: Stood<Visit>, date: string, typed: Typed, plan: Plan | undefined): string[] => {
  const bowls = new Map<string, string>();
  for (const fact of visit.entry.facts)
    if ((fact.word === 'bowl' || fact.word === 'again') && !bowls.has(fact.bowl.name))
      bowls.set(fact.bowl.name, typed(fact.line, fact.bowl));
  return [...bowls].map(([key, bowl]) => {
    const planned = plan?.bowls.find((one) => one.bowl.name === key.toUpperCase());
    return `  again ${bowl} from ${date} ${bowl}${plan === undefined ? '' : shareText(planned, plan.visit.salon.scale)}`;
  });
};

/** How the grams of each bowl were forecast, as a note to read before mixing; what `next` asks for is noted already. */
const forecastLines = (plan: Plan | undefined): string[] =>
  (plan?.bowls ?? []).flatMap((planned) => {
    const { bowl, by, total } = planned;
    // The sheet's own words, without its marks.
    return by === 'forecast' && total !== undefined
      ? [`  note bowl ${bowl.name}: ${sumText(planned).replaceAll('**', '')}`]
      : [];
  });

/** What `next` asks for besides a bowl's share, as a note to read before beginning. */
const plannedLines = (date: string, next: Next | undefined): string[] => {
  const words = next?.changes.filter(({ bowl, percent }) => bowl === undefined || percent === undefined) ?? [];
  const said = [...words.map(({ text }) => text), ...(next?.says === undefined ? [] : [next.says.text])];
  return said.length === 0 ? [] : [`  note planned on ${date}: ${said.join(', ')}`];
};

/**
 * The lines of a new visit made from an earlier one and its `next`: bowls made again, aims and places as they were
 * typed. `on` is its day; `plan` the visit's bowls made to the need of it.
 */
export const stubLines = (visit: Stood<Visit>, source: Source, on: string, plan: Plan | undefined): string[] => {
  const { entry } = visit;
  const lineAt = (line: number): string => source.lines[visit.line + line] ?? '';
  const typed = (line: number, name: Name): string => sliceOf(lineAt(line), name.at);
  const date = entry.date?.date ?? '';
  const next = nextIn(visit);
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
    ...forecastLines(plan),
    ...kept('aim'),
    ...againLines(visit, date, typed, plan),
    ...kept('place'),
    ...kept('leave'),
  ];
};

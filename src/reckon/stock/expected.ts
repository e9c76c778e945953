import type { ClientFile } from '../../journal/journal.ts';
import type { Next } from '../../records/schema/visit.ts';
import { addDays, addMonths } from '../../text/dates.ts';
import { add, div, type Exact, exact, exactOf, mul, ONE, sign } from '../../text/exact.ts';
import type { VisitReckoned } from '../model.ts';
import { type Touch, touchesOf } from './touch.ts';

/** A client who is booked, due or overdue, and what she took off the shelf the last time. */
export type Expected = {
  readonly client: ClientFile;
  /** The first day she is awaited. */
  readonly date: string;
  readonly why: 'booked' | 'due' | 'overdue';
  /** How often within the time ahead. */
  readonly times: number;
  readonly takes: readonly Touch[];
};

/** Days after which somebody overdue is no longer counted on: eight weeks. A choice, no source. */
const GIVEN_UP = 56;

const nextOf = ({ visit }: VisitReckoned): Next | undefined =>
  visit.entry.facts.findLast((fact): fact is Next => fact.word === 'next');

const waited = (date: string, { wait }: Next): string | undefined => {
  if (wait === undefined) return undefined;
  if (wait.unit === 'mo') return addMonths(date, Math.floor(wait.value));
  return addDays(date, Math.round(wait.value * (wait.unit === 'w' ? 7 : wait.unit === 'd' ? 1 : 0)));
};

/** What `next` asks to change: `A -20%` mixes a fifth less of bowl A. */
const shareOf = (next: Next | undefined, bowl: string | undefined): Exact => {
  const change = next?.changes.find((one) => one.percent !== undefined && one.bowl?.name.toUpperCase() === bowl);
  const share = add(ONE, div(exactOf(change?.percent ?? 0), exact(100)));
  return sign(share) > 0 ? share : ONE;
};

type Shelf = Parameters<typeof touchesOf>[0];

const takesOf = (shelf: Shelf, like: VisitReckoned, next: Next | undefined): Touch[] =>
  touchesOf(shelf, like).map((touch) => ({
    ...touch,
    amount: touch.amount && mul(touch.amount, shareOf(next, touch.bowl)),
  }));

/** When the last visit’s `next` awaits her, and how many days apart. */
const awaited = (last: VisitReckoned, next: Next): { date: string; every: string | undefined } | undefined => {
  const byWait = waited(last.date, next);
  const date = next.date?.date ?? byWait;
  return date === undefined ? undefined : { date, every: byWait };
};

const expectedOf = (shelf: Shelf, visits: readonly VisitReckoned[], on: string, until: string): Expected[] => {
  const [first] = visits;
  if (first === undefined) return [];
  const { client } = first;
  const past = visits.filter(({ date }) => date <= on);
  const last = past.at(-1);
  const like = past.findLast(({ uses }) => uses.length > 0);
  const next = last && nextOf(last);
  const noted = visits.filter(({ date }) => date > on && date <= until);
  if (noted.length > 0)
    return noted.map((visit) => ({
      client,
      date: visit.date,
      why: 'booked',
      times: 1,
      takes:
        visit.uses.length > 0 ? takesOf(shelf, visit, undefined) : like === undefined ? [] : takesOf(shelf, like, next),
    }));
  if (last === undefined || like === undefined || next === undefined) return [];
  const when = awaited(last, next);
  if (when === undefined || when.date > until || when.date < addDays(on, -GIVEN_UP)) return [];
  let times = 0;
  // One overdue comes on the first day, and again after her own wait.
  for (let date = when.date < on ? on : when.date; date <= until; times += 1) {
    const again = waited(date, next);
    if (again === undefined || again <= date) {
      times += 1;
      break;
    }
    date = again;
  }
  const isBooked = next.date !== undefined && !next.from;
  const why = when.date < on ? 'overdue' : isBooked ? 'booked' : 'due';
  return [{ client, date: when.date, why, times, takes: takesOf(shelf, like, next) }];
};

/** Who comes from the day on until another, both counted: by the notes of visits to come and by `next` lines. */
export const expectedVisits = (
  shelf: Shelf,
  all: ReadonlyMap<string, readonly VisitReckoned[]>,
  on: string,
  until: string,
): Expected[] => [...all.values()].flatMap((visits) => expectedOf(shelf, visits, on, until));

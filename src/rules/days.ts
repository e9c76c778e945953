import type { VisitReckoned } from '../reckon/model.ts';
import { type HandOn, handsOf } from '../reckon/timing/hands.ts';
import type { UnplacedFinding } from '../text/finding.ts';
import { compareText } from '../text/fold.ts';
import { findInDay } from './find.ts';
import type { Subjects } from './reasons.ts';

/**
 * What bears on several clients of one day, kept by day: a change of one client's notes looks again at the days that she
 * had, and has, and at no other.
 *
 * Reads: what each hand did, client by client. Gives: findings of days. Runs again: for the days of a client who changed.
 */
export type Days = {
  /** Puts what hands did on a client in place of what they did before; without visits she is gone. */
  readonly put: (client: string, visits: readonly VisitReckoned[]) => void;
  /** The findings of all days, day by day; only those that changed since the last time are looked at again. */
  readonly found: (subjects: Subjects) => readonly (readonly UnplacedFinding[])[];
};

/** By the clock; those of one client and minute stay in the order of her visits and lines. */
const inOrder = (a: HandOn, b: HandOn): number =>
  a.from - b.from || compareText(a.client, b.client) || compareText(a.place.in.file, b.place.in.file);

/** No days yet. */
export const createDays = (): Days => {
  const hands = new Map<string, Map<string, readonly HandOn[]>>();
  const daysOf = new Map<string, readonly string[]>();
  const findings = new Map<string, readonly UnplacedFinding[]>();
  const touched = new Set<string>();

  const put = (client: string, visits: readonly VisitReckoned[]): void => {
    for (const day of daysOf.get(client) ?? []) {
      hands.get(day)?.delete(client);
      touched.add(day);
    }
    const own = new Map<string, HandOn[]>();
    for (const hand of visits.flatMap(handsOf)) {
      const same = own.get(hand.date);
      if (same === undefined) own.set(hand.date, [hand]);
      else same.push(hand);
    }
    for (const [day, done] of own) {
      const all = hands.get(day) ?? new Map<string, readonly HandOn[]>();
      all.set(client, done);
      hands.set(day, all);
      touched.add(day);
    }
    if (own.size === 0) daysOf.delete(client);
    else daysOf.set(client, [...own.keys()]);
  };

  const found: Days['found'] = (subjects) => {
    for (const day of touched) {
      const all = hands.get(day);
      if (all?.size === 0) hands.delete(day);
      const now = all === undefined || all.size < 2 ? [] : findInDay([...all.values()].flat().sort(inOrder), subjects);
      if (now.length === 0) findings.delete(day);
      else findings.set(day, now);
    }
    touched.clear();
    return [...findings.values()];
  };

  return { put, found };
};

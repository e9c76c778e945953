import type { ClientFile } from '../../journal/journal.ts';
import { compareText } from '../../text/fold.ts';
import type { VisitReckoned } from '../model.ts';
import { minorUnits } from './money.ts';

/** A deposit that no later visit has used or given back. */
export type DepositHeld = {
  readonly client: ClientFile;
  readonly currency: string | undefined;
  /** The day it was taken, and the day it is for. */
  readonly taken: string;
  readonly for: string | undefined;
  /** Minor units still held of it. */
  readonly amount: number;
};

type Open = { -readonly [key in keyof DepositHeld]: DepositHeld[key] };

/** Takes from what is held: first the deposit for this very day, then the oldest. What was never noted is not missed. */
const spend = (open: readonly Open[], amount: number, date: string, currency: string | undefined): void => {
  let rest = amount;
  const own = open.filter((one) => one.currency === currency);
  for (const one of [...own.filter((held) => held.for === date), ...own.filter((held) => held.for !== date)]) {
    const part = Math.min(rest, one.amount);
    one.amount -= part;
    rest -= part;
  }
};

/**
 * Deposits held at the end of a day, by the day they are for: taken by the notes up to then and neither used nor
 * returned. `reckoned` is every visit of the journal, each client’s oldest first.
 */
export const depositsHeld = (reckoned: Iterable<VisitReckoned>, on: string): DepositHeld[] => {
  const clients = new Map<string, Open[]>();
  for (const { visit, client, date, money } of reckoned) {
    if (date > on) continue;
    const open = clients.get(client.name) ?? [];
    clients.set(client.name, open);
    for (const fact of visit.entry.facts) {
      if (fact.word !== 'deposit') continue;
      const amount = minorUnits(fact.amount ?? 0, money.currency);
      if (fact.used || fact.returned) spend(open, amount, date, money.currency);
      else open.push({ client, currency: money.currency, taken: date, for: fact.for?.date, amount });
    }
  }
  return [...clients.values()]
    .flat()
    .filter(({ amount }) => amount > 0)
    .sort((a, b) => compareText(a.for ?? '', b.for ?? '') || compareText(a.client.name, b.client.name));
};

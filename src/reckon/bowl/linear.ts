import { div, type Exact, isZero, mul, sub, ZERO } from '../../text/exact.ts';

/** A fact about weights: the sum of `factor × unknown` is `value`. Unknowns go by number; one left out has no factor. */
export type Equation = { readonly factors: ReadonlyMap<number, Exact>; readonly value: Exact };

/** What a system of facts settles. */
export type LinearAnswer = {
  /** Each unknown's one value; an unknown that the facts leave open has none. */
  readonly values: ReadonlyMap<number, Exact>;
  /** Facts that cannot hold beside those before them, by their place in the list; they are left out of the answer. */
  readonly against: readonly number[];
};

type Row = { readonly factors: Map<number, Exact>; value: Exact };

/** Takes another row off, so often that the unknown goes. */
const clear = (row: Row, unknown: number, other: Row): void => {
  const by = row.factors.get(unknown);
  if (by === undefined) return;
  for (const [index, factor] of other.factors) {
    const rest = sub(row.factors.get(index) ?? ZERO, mul(by, factor));
    if (isZero(rest)) row.factors.delete(index);
    else row.factors.set(index, rest);
  }
  row.value = sub(row.value, mul(by, other.value));
};

/**
 * Solves facts exactly, in their order (Gauss–Jordan elimination on rationals): each fact either settles something
 * further, follows from those before it, or contradicts them.
 */
export const solveLinear = (equations: readonly Equation[]): LinearAnswer => {
  const rows = new Map<number, Row>();
  const against: number[] = [];
  for (const [place, { factors, value }] of equations.entries()) {
    const draft: Row = { factors: new Map([...factors].filter(([, factor]) => !isZero(factor))), value };
    for (const [unknown, row] of rows) clear(draft, unknown, row);
    const [first] = draft.factors;
    if (first === undefined) {
      if (!isZero(draft.value)) against.push(place);
      continue;
    }
    const [unknown, lead] = first;
    for (const [index, factor] of draft.factors) draft.factors.set(index, div(factor, lead));
    draft.value = div(draft.value, lead);
    for (const row of rows.values()) clear(row, unknown, draft);
    rows.set(unknown, draft);
  }
  const settled = [...rows].filter(([, { factors }]) => factors.size === 1);
  return { values: new Map(settled.map(([unknown, { value }]) => [unknown, value])), against };
};

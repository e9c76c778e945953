import type { SalonSettings } from '../../journal/salon.ts';
import type { ShelfItem } from '../../journal/shelf.ts';
import type { Amount, Component } from '../../records/schema/values.ts';
import type { Exact } from '../../text/exact.ts';
import { joinSpans, type Place, wholeFile } from '../../text/span.ts';
import type { BowlProblem } from '../model.ts';
import { type Solved, solveBowl } from './bowl.ts';
import { type Said, typedPart } from './part.ts';
import { resolveParts } from './portions.ts';
import { portionCost, portionsCost } from './price.ts';
import { noWeight, plainGrams } from './weighing.ts';

/** What stands beside the parts of a mix: the total that it sets, and the total that it claims. */
export type MixSaid = {
  readonly total?: Amount | undefined;
  readonly claim?: Amount | undefined;
  readonly name?: string;
};

/**
 * Works out one mix that stands in no visit, such as the one typed after the command `mix`. With an empty shelf a strength
 * is a developer without a name, `dev-6` one of the strength in its name, and any other name a base. Places are on one
 * line of a file without a name. Costs are at the prices of `date`.
 */
export const reckonMix = (
  parts: readonly Component[],
  { total, claim, name = 'A' }: MixSaid,
  shelf: ReadonlyMap<string, ShelfItem>,
  salon: Pick<SalonSettings, 'scale' | 'mlAsGrams' | 'currency'>,
  date = '9999-12-31',
): Solved & { readonly cost: Exact | undefined } => {
  const nowhere = wholeFile('');
  const placeAt = (at: number): Place => ({ in: nowhere, line: 0, at });
  const first = parts[0]?.at ?? 0;
  const place = placeAt(joinSpans(first, parts.at(-1)?.at ?? first));
  const problems: BowlProblem[] = [];
  const saidOf = (amount: Amount | undefined): Said | undefined => {
    if (amount === undefined) return undefined;
    const value = plainGrams(amount, salon);
    if (value !== undefined)
      return { value, place: placeAt(amount.at), about: amount.about === true || amount.to !== undefined };
    problems.push({ ...noWeight(amount), place: placeAt(amount.at) });
    return undefined;
  };
  const [all, claimed] = [saidOf(total), saidOf(claim)];
  const typed = parts.map((part) => typedPart(part, nowhere, 0, true));
  const resolved = resolveParts(typed, { shelf, date, conversion: salon });
  const solved = solveBowl(
    { name, place, ...(all && { total: all }), ...(claimed && { claim: claimed }) },
    { parts: resolved.parts, problems: [...resolved.problems, ...problems] },
    salon,
  );
  const portions = solved.portions.map((portion) => ({ ...portion, cost: portionCost(portion, date, salon) }));
  return { ...solved, portions, cost: portionsCost(portions) };
};

import { add, compare, div, type Exact, isZero, mul, sub, ZERO } from '../../text/exact.ts';
import type { BowlReckoned, Portion, ProductUse } from '../model.ts';
import { inMillionths } from './finest.ts';
import { heldOf } from './price.ts';

type Draft = { -readonly [key in keyof ProductUse]: ProductUse[key] };

const held = (portion: Portion): Exact => heldOf(portion) ?? ZERO;

/** Whether a portion is a product at all, counted here and nowhere else. */
const isProduct = ({ role, label }: Portion): boolean => role !== 'bowl' && role !== 'water' && label !== '';

const productOf = ({ item, label, shade }: Portion): string =>
  item?.name ?? (shade === undefined ? label : label.slice(0, -shade.length - 1));

/** Bowls so that each stands before those that it was taken out of; what waits is a list, for pouring can go on and on. */
const lastFirst = (bowls: readonly BowlReckoned[]): readonly BowlReckoned[] => {
  const ordered = new Map<string, BowlReckoned | undefined>();
  const waiting = [...bowls];
  for (let top = waiting.at(-1); top !== undefined; top = waiting.at(-1)) {
    const isEntered = ordered.has(top.name);
    if (!isEntered) {
      ordered.set(top.name, undefined);
      for (const { from } of top.held) if (from !== undefined && !ordered.has(from.name)) waiting.push(from);
      continue;
    }
    waiting.pop();
    if (ordered.get(top.name) !== undefined) continue;
    ordered.delete(top.name);
    ordered.set(top.name, top);
  }
  return [...ordered.values()].filter((bowl) => bowl !== undefined).reverse();
};

type LeftOf = { readonly portion: Portion; readonly grams: Exact };

/** Grams of each portion in what is left, what was poured out of another bowl told by what was in that. */
const leftIn = (bowls: readonly BowlReckoned[]): readonly LeftOf[] => {
  if (bowls.every(({ left }) => left === undefined)) return [];
  const left = new Map<string, Exact>();
  for (const bowl of bowls) if (bowl.left !== undefined) left.set(bowl.name, bowl.left.weight);
  const all: LeftOf[] = [];
  for (const { name, held: parts, mixed } of lastFirst(bowls)) {
    const weight = left.get(name);
    if (weight === undefined || mixed === undefined || isZero(mixed)) continue;
    for (const portion of parts) {
      const grams = mul(weight, div(held(portion), mixed));
      const { from } = portion;
      if (from !== undefined) left.set(from.name, inMillionths(add(left.get(from.name) ?? ZERO, grams)));
      else if (isProduct(portion)) all.push({ portion, grams });
    }
  }
  return all;
};

/**
 * What a visit used of each product and shade, in grams, with the cost in exact minor units. What is left in a bowl is
 * shared out over what it holds; what was taken out of one bowl into another counts once. `loose` is what was used
 * outside any bowl.
 */
export const usesOf = (bowls: readonly BowlReckoned[], loose: readonly ProductUse[] = []): ProductUse[] => {
  const drafts = new Map<string, Draft>();
  const draftOf = (product: string, shade: string | undefined): Draft => {
    const key = shade === undefined ? product : `${product}\n${shade}`;
    let draft = drafts.get(key);
    if (draft === undefined) {
      draft = { product, shade, mixed: ZERO, used: ZERO, left: ZERO, cost: undefined };
      drafts.set(key, draft);
    }
    return draft;
  };
  const count = (product: string, shade: string | undefined, mixed: Exact, cost: Exact | undefined): Draft => {
    const draft = draftOf(product, shade);
    draft.mixed = add(draft.mixed, mixed);
    if (cost === undefined) draft.costMissing = true;
    else draft.cost = draft.cost === undefined ? cost : add(draft.cost, cost);
    return draft;
  };
  for (const { held: parts } of bowls)
    for (const portion of parts)
      if (isProduct(portion)) count(productOf(portion), portion.shade, held(portion), portion.cost);
  for (const { product, shade, mixed, cost, pieces } of loose) {
    const draft = count(product, shade, mixed, cost);
    if (pieces) draft.pieces = true;
  }
  for (const { portion, grams } of leftIn(bowls)) {
    const draft = draftOf(productOf(portion), portion.shade);
    draft.left = add(draft.left, grams);
  }
  for (const draft of drafts.values()) {
    if (!draft.costMissing) draft.cost ??= ZERO;
    // More left than mixed is a mistake of the note, and a rule says so.
    if (compare(draft.left, draft.mixed) > 0) draft.left = draft.mixed;
    draft.used = sub(draft.mixed, draft.left);
  }
  return [...drafts.values()];
};

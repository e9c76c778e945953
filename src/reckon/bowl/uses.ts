import { add, compare, div, type Exact, isZero, mul, sub, ZERO } from '../../text/exact.ts';
import type { BowlReckoned, Portion, ProductUse } from '../model.ts';
import { heldOf } from './price.ts';

type Draft = { -readonly [key in keyof ProductUse]: ProductUse[key] };

const held = (portion: Portion): Exact => heldOf(portion) ?? ZERO;

/** Whether a portion is a product at all, counted here and nowhere else. */
const isProduct = ({ role, label }: Portion): boolean => role !== 'bowl' && role !== 'water' && label !== '';

const productOf = ({ item, label, shade }: Portion): string =>
  item?.name ?? (shade === undefined ? label : label.slice(0, -shade.length - 1));

/**
 * What a visit used of each product and shade, in grams, with the cost in exact minor units. What is left in a bowl is
 * shared out over what it holds; what was taken out of one bowl into another counts once. `loose` is what was used
 * outside any bowl.
 */
export const usesOf = (bowls: readonly BowlReckoned[], loose: readonly ProductUse[] = []): ProductUse[] => {
  const drafts: Draft[] = [];
  const draftOf = (product: string, shade: string | undefined): Draft => {
    for (const draft of drafts) if (draft.product === product && draft.shade === shade) return draft;
    const draft = { product, shade, mixed: ZERO, used: ZERO, left: ZERO, cost: ZERO };
    drafts.push(draft);
    return draft;
  };
  const count = (product: string, shade: string | undefined, mixed: Exact, cost: Exact | undefined): Draft => {
    const draft = draftOf(product, shade);
    draft.mixed = add(draft.mixed, mixed);
    draft.cost = draft.cost && cost && add(draft.cost, cost);
    return draft;
  };
  const leave = ({ held: parts, mixed }: BowlReckoned, weight: Exact): void => {
    if (mixed === undefined || isZero(mixed)) return;
    for (const portion of parts) {
      const share = mul(weight, div(held(portion), mixed));
      if (portion.from !== undefined) leave(portion.from, share);
      else if (isProduct(portion)) {
        const draft = draftOf(productOf(portion), portion.shade);
        draft.left = add(draft.left, share);
      }
    }
  };
  for (const { held: parts } of bowls)
    for (const portion of parts)
      if (isProduct(portion)) count(productOf(portion), portion.shade, held(portion), portion.cost);
  for (const { product, shade, mixed, cost, pieces } of loose) {
    const draft = count(product, shade, mixed, cost);
    if (pieces) draft.pieces = true;
  }
  for (const bowl of bowls) if (bowl.left !== undefined) leave(bowl, bowl.left.weight);
  for (const draft of drafts) {
    // More left than mixed is a mistake of the note, and a rule says so.
    if (compare(draft.left, draft.mixed) > 0) draft.left = draft.mixed;
    draft.used = sub(draft.mixed, draft.left);
  }
  return drafts;
};

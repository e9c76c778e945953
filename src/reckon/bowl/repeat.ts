import { compare, div, type Exact, exact, isZero, mul, roundTo } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import type { Solved } from './bowl.ts';
import type { Part } from './part.ts';

/** Where the parts of a repeated bowl go, and what becomes of a portion that came out of another bowl. */
export type Into = {
  readonly place: Place;
  /** The day of the bowl that is repeated, where that is an earlier one. */
  readonly lotOf: string | undefined;
  /** Whether that bowl is there to take it out of again. */
  readonly hasBowl: (name: string) => boolean;
  /** Else the bowl it came out of at the time. */
  readonly bowlThen: (name: string) => Solved | undefined;
};

/** What a weight is kept to once its fraction is finer: a millionth of a gram, far below any scales. A choice of ours. */
const FINEST = exact(1, 1_000_000);
/** A thousand tonnes: what many remakes at more than 100 % come to is no weight any more. A choice of ours. */
const MOST = exact(1_000_000_000);

/**
 * So much of a weight, exact as long as a millionth of a gram shows it whole, so that the fractions of a chain of remakes
 * do not grow with its length. Undefined above what could be mixed.
 */
const shareOf = (weight: Exact, share: Exact): Exact | undefined => {
  const grams = mul(weight, share);
  if (compare(grams, MOST) > 0) return undefined;
  return grams.d > FINEST.d ? roundTo(grams, FINEST) : grams;
};

/**
 * The portions of a solved bowl as parts of another: so much of each (`share`), at another place in the notes. A lot goes
 * with its portion; where it was named on an earlier day, `lotOf` says which, for another tub may be open by now.
 */
export const repeatParts = (source: Solved, share: Exact, into: Into): Part[] =>
  source.portions.flatMap((portion, index): Part[] => {
    const out = source.outs[index];
    const grams = portion.weight && shareOf(portion.weight, share);
    const { role, item, label, shade, strength, about } = portion;
    const part: Part = {
      component: portion.component,
      place: into.place,
      role,
      item,
      label,
      shade,
      strength,
      about,
      grams,
      parts: undefined,
      inLine: true,
      how: undefined,
      ratio: undefined,
      blend: undefined,
      out: undefined,
      repeated: true,
      lotOf: portion.component.lot && (portion.lotOf ?? into.lotOf),
    };
    if (out === undefined) return [part];
    if (into.hasBowl(out)) return [{ ...part, out }];
    // That bowl is not mixed this time, so what came out of it is mixed from the start.
    const then = into.bowlThen(out);
    if (then?.total === undefined || grams === undefined || isZero(then.total)) return [{ ...part, role: 'unknown' }];
    return repeatParts(then, div(grams, then.total), into);
  });

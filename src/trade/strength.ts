import { add, div, type Exact, exact, mul, ZERO } from '../text/exact.ts';

export { LIMIT_READY_FOR_USE } from './law.ts';

/** The strongest developer in per cent that lightener has on the scalp, where no leaflet says: common practice, no source. */
export const ON_SCALP = 6;

const VOL_PER_PERCENT = exact(10, 3);

/** Volumes of a peroxide strength in per cent, by the trade's nominal pairing: × 10/3, exactly. */
export function volOf(percent: Exact): Exact {
  return mul(percent, VOL_PER_PERCENT);
}

/** Per cent of a peroxide strength in volumes, by the trade's nominal pairing: × 3/10, exactly. */
export function percentOf(vol: Exact): Exact {
  return div(vol, VOL_PER_PERCENT);
}

/**
 * Strength of the mixture on the head, in per cent: the peroxide of every part over the whole weight. `total` counts
 * everything in the bowl, in the unit of the parts. Throws RangeError when `total` is nought.
 */
export function readyForUse(
  parts: readonly { readonly weight: Exact; readonly percent: Exact }[],
  total: Exact,
): Exact {
  return div(
    parts.reduce((peroxide, part) => add(peroxide, mul(part.weight, part.percent)), ZERO),
    total,
  );
}

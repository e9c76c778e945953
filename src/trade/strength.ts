import { add, div, type Exact, exact, mul, sign, sub, ZERO } from '../text/exact.ts';

export { LIMIT_READY_FOR_USE } from './law.ts';

/**
 * The trade's pairs of per cent and volumes. Regulation (EC) 1223/2009, Annex III, entry 12 prints 12 % as 40 volumes;
 * the 6 % solution of the British Pharmacopoeia is sold as 20 volumes, the 9 % as 30; 3 % as 10 is from memory.
 */
export const NOMINAL_PAIRS: readonly { readonly percent: Exact; readonly vol: Exact }[] = [3, 6, 9, 12].map(
  (percent) => ({
    percent: exact(percent),
    vol: exact(percent * 10, 3),
  }),
);

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

/** Grams in a mole of hydrogen peroxide: 34.0147, from memory; the monograph of the USP prints 34.01. */
export const MOLAR_MASS: Exact = exact(340_147, 10_000);

/** Litres of a mole of gas at 0 °C, from memory (CODATA): at one atmosphere, and at 100 kPa. */
export const MOLAR_VOLUME = { atmosphere: exact(22_414, 1000), bar: exact(22_711, 1000) } as const;

/** Litres of oxygen per gram of peroxide: two moles of it give one of oxygen. */
function oxygenPerGram(molarVolume: Exact): Exact {
  return div(molarVolume, mul(exact(2), MOLAR_MASS));
}

/**
 * Volumes of oxygen that one volume of solution really gives: chemistry, not the trade's nominal pairing, and never to
 * be held against a legal limit. `percentWv` in g per 100 ml, `molarVolume` in litres a mole (the basis is named by
 * the caller, see `MOLAR_VOLUME`).
 */
export function chemicalVolume(percentWv: Exact, molarVolume: Exact): Exact {
  return mul(mul(percentWv, exact(10)), oxygenPerGram(molarVolume));
}

/** Grams of peroxide in 100 ml of a solution of so many volumes: `chemicalVolume` the other way. */
export function chemicalPercent(vol: Exact, molarVolume: Exact): Exact {
  return div(div(vol, exact(10)), oxygenPerGram(molarVolume));
}

/** Per cent by weight of a strength in g per 100 ml, from the density of the solution in g/ml. */
export function percentByWeight(percentWv: Exact, density: Exact): Exact {
  return div(percentWv, density);
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

/**
 * Parts of developer to one part of the rest at which a mixture just reaches `limit` per cent; undefined when the
 * developer itself does not exceed the limit, so that no amount of it can.
 */
export function ratioAtLimit(developerPercent: Exact, limit: Exact): Exact | undefined {
  const over = sub(developerPercent, limit);
  return sign(over) > 0 ? div(limit, over) : undefined;
}

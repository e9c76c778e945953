import { sum } from './grouped.ts';

/**
 * What is known of a value that may not have been waited for: the value itself, or, where `ended` is false, only that it
 * lies beyond it (a censored observation).
 */
export type Waited = { readonly value: number; readonly ended: boolean; readonly weight: number };

/** So much of all values lies at this one. */
export type Mass = { readonly value: number; readonly mass: number };

export type Survival = {
  /** By ascending value; the masses add up to 1. */
  readonly masses: readonly Mass[];
  /** The part of it that stands at the last value only because nobody was waited for beyond: a lower end. */
  readonly tail: number;
};

/**
 * The distribution of values of which some are only known to be longer: the product-limit estimate (Kaplan and Meier,
 * Journal of the American Statistical Association 53, 1958), with weights. What is left beyond the last value is set
 * there, as Efron has it (Fifth Berkeley Symposium, 1967); both from memory. At one value those that ended come first.
 */
export const survivalOf = (all: readonly Waited[]): Survival => {
  const sorted = all.toSorted((a, b) => a.value - b.value || Number(b.ended) - Number(a.ended));
  const masses: Mass[] = [];
  let atRisk = sum(sorted.map(({ weight }) => weight));
  let left = 1;
  for (let at = 0; at < sorted.length; ) {
    const value = sorted[at]?.value ?? 0;
    const here = sorted.slice(at).filter((one) => one.value === value);
    const ended = sum(here.filter((one) => one.ended).map(({ weight }) => weight));
    if (ended > 0) {
      const mass = left * Math.min(1, ended / atRisk);
      masses.push({ value, mass });
      left -= mass;
    }
    atRisk -= sum(here.map(({ weight }) => weight));
    at += here.length;
  }
  const last = sorted.at(-1);
  const isOpen = last !== undefined && !last.ended && left > 0;
  if (isOpen) masses.push({ value: last.value, mass: left });
  return { masses, tail: isOpen ? left : 0 };
};

/**
 * What is to be expected of a measure of each value: of one that ended the measure itself, of another its mean over what
 * lies beyond. The weighted mean of these is the mean over the whole distribution: each hands its weight on to the right.
 */
export const expectedOf = (
  { masses }: Survival,
  { value, ended }: Waited,
  measure: (value: number) => number,
): number => {
  if (ended) return measure(value);
  const beyond = masses.filter((one) => one.value > value);
  const whole = sum(beyond.map(({ mass }) => mass));
  return whole > 0 ? sum(beyond.map((one) => one.mass * measure(one.value))) / whole : measure(value);
};

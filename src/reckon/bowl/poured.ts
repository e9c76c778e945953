import { div, type Exact, equal, isZero, mul } from '../../text/exact.ts';
import type { BowlReckoned, Portion } from '../model.ts';
import { inMillionths } from './finest.ts';
import { type Grams, merged } from './merged.ts';

const isOutOfAnother = ({ from }: Portion): boolean => from !== undefined;

type Whole = Pick<BowlReckoned, 'held' | 'mixed' | 'poured'>;

/** Things in a bowl that are told apart by shade and strength; of more, the products alone. A choice of ours. */
const APART = 48;

const exactText = (value: Exact | undefined): string => (value === undefined ? '' : `${value.n}/${value.d}`);

const thingOf = ({ role, label, strength, typed, about }: Portion): string =>
  [role, label, exactText(strength), typed, about].join('\n');

const productOf = ({ role, item, shade }: Portion): string =>
  [role, item?.name ?? '', shade === undefined ? '' : /^clear$/i.test(shade)].join('\n');

/** What was poured out of a bowl, as much as weighs so many grams. */
const outOf = ({ held, mixed, poured }: Whole, grams: Exact | undefined): readonly Grams<Portion>[] => {
  const share = grams && mixed && !isZero(mixed) ? div(grams, mixed) : undefined;
  return (poured ?? held).map((what) => ({
    what,
    grams: share && what.weight && inMillionths(mul(what.weight, share)),
  }));
};

const ofWeight = ({ what, grams }: Grams<Portion>): Portion =>
  what.weight === grams || (what.weight !== undefined && grams !== undefined && equal(what.weight, grams))
    ? what
    : { ...what, weight: grams, shown: grams };

/**
 * What is in a bowl of which something was taken out of another: its own portions, and of what was poured in so much as
 * came with it, alike things together, so that pouring on and on makes no list without end. Undefined where nothing was.
 */
export const pouredInto = (held: readonly Portion[]): readonly Portion[] | undefined => {
  if (!held.some(isOutOfAnother)) return undefined;
  const all = held.flatMap((what): readonly Grams<Portion>[] =>
    what.from === undefined ? [{ what, grams: what.weight }] : outOf(what.from, what.weight),
  );
  const things = merged(all, thingOf);
  return (things.length <= APART ? things : merged(things, productOf)).map(ofWeight);
};

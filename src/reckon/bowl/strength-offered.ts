import type { StrengthLine } from '../../records/schema/shelf.ts';
import { compare, type Exact } from '../../text/exact.ts';
import { inPercent } from './contents.ts';

/** Whether a line offers a strength; a blend of two developers lies anywhere between the least and the most. */
export const offersStrength = ({ strengths, upTo }: StrengthLine, strength: Exact, blended: boolean): boolean => {
  if (upTo !== undefined && compare(strength, inPercent(upTo)) <= 0) return true;
  const offered = (is: (difference: number) => boolean): boolean =>
    strengths.some((one) => is(compare(inPercent(one), strength)));
  if (offered((difference) => difference === 0)) return true;
  return blended && offered((difference) => difference >= 0) && offered((difference) => difference <= 0);
};

import { type Exact, exact, roundTo } from '../../text/exact.ts';

/** What a figure is kept to once its fraction is finer: of grams, far below any scales. A choice of ours. */
const FINEST = exact(1, 1_000_000);

/**
 * A figure that comes of bowl upon bowl, exact as long as millionths show it whole, so that the fractions of a chain do not
 * grow with its length.
 */
export const inMillionths = (figure: Exact): Exact => (figure.d > FINEST.d ? roundTo(figure, FINEST) : figure);

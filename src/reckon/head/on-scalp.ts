import type { Zone } from '../../records/schema/values.ts';
import type { Placing } from '../../records/schema/visit.ts';
import { itemsIn } from '../bowl/contents.ts';
import type { BowlReckoned } from '../model.ts';
import { isAt } from './hair-meets.ts';

/**
 * The zone of a `place` line at which lightener comes to the scalp though the line says neither `on-scalp` nor
 * `off-scalp`: roots, in any technique, but for what lies in foil (common practice, no source).
 */
export const unsaidRoots = ({ scalp, clear, cover, zones }: Placing, bowl: BowlReckoned): Zone | undefined =>
  scalp !== undefined ||
  clear !== undefined ||
  cover?.word === 'foil' ||
  !itemsIn(bowl).some(({ kind }) => kind === 'lightener')
    ? undefined
    : zones.find(({ zone }) => isAt(zone, 'roots'));

/** Whether a `place` line puts a bowl on the scalp: because it says so, or because it is lightener on roots. */
export const liesOnScalp = (placing: Placing, bowl: BowlReckoned): boolean =>
  placing.scalp === 'on' || unsaidRoots(placing, bowl) !== undefined;

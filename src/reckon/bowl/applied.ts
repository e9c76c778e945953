import { sign } from '../../text/exact.ts';
import type { BowlReckoned, VisitReckoned } from '../model.ts';

/** Whether a bowl was put on, as far as the notes show: all of it may be left, or taken into another bowl. */
export const wentOn = ({ used }: BowlReckoned): boolean => used === undefined || sign(used) > 0;

/** The bowls of a visit that were put on. */
export const bowlsPutOn = ({ bowls }: VisitReckoned): readonly BowlReckoned[] =>
  bowls.every(wentOn) ? bowls : bowls.filter(wentOn);

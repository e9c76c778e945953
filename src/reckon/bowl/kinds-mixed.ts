import { recently } from '../../text/recently.ts';
import type { Kind } from '../../trade/kinds.ts';
import type { VisitReckoned } from '../model.ts';
import { itemsIn } from './contents.ts';

type Kinds = readonly (Kind | undefined)[];

const kindsOf = ({ bowls }: VisitReckoned): Kinds => {
  const kinds: (Kind | undefined)[] = [];
  for (const bowl of bowls) for (const { kind } of itemsIn(bowl)) if (!kinds.includes(kind)) kinds.push(kind);
  return kinds;
};

/**
 * The kinds of everything mixed at a visit, each once, put on or not. A rule about a few kinds asks first, so that most visits cost
 * it no more.
 */
export const kindsMixed: (visit: VisitReckoned) => Kinds = recently(kindsOf);

/** Whether anything mixed at a visit is there to lighten: a lightener or a high-lift colour. */
export const mixesLightening = (visit: VisitReckoned): boolean => {
  const kinds = kindsMixed(visit);
  return kinds.includes('lightener') || kinds.includes('high-lift');
};

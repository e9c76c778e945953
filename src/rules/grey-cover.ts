import type { BowlReckoned, VisitReckoned } from '../reckon/model.ts';
import { zonesOfBowl } from '../reckon/services.ts';
import { type GreyShare, greyShare } from '../reckon/state.ts';
import { recently } from '../text/recently.ts';
import { GREY_TO_BASE } from '../trade/grey.ts';
import { bowlsPutOn } from './applied.ts';
import { itemsIn } from './contents.ts';
import { isAway } from './seen-at.ts';

/** A bowl of permanent colour that goes on hair with so much grey that it is a cover. */
export type GreyCover = { readonly bowl: BowlReckoned; readonly grey: GreyShare };

const coversOf = (visit: VisitReckoned): GreyCover[] => {
  const bowls = bowlsPutOn(visit).filter((bowl) => itemsIn(bowl).some(({ kind }) => kind === 'permanent'));
  const grey = bowls.length === 0 ? undefined : greyShare(visit.client, visit.visit);
  if (grey === undefined || grey.percent < GREY_TO_BASE) return [];
  return bowls.flatMap((bowl) => {
    const zones = zonesOfBowl(visit, bowl.name);
    return zones.length === 0 || !zones.every(isAway) ? [{ bowl, grey }] : [];
  });
};

/** The bowls of a visit that cover grey: permanent colour, not on the lengths alone, where half the hair or more is grey. */
export const greyCovers: (visit: VisitReckoned) => readonly GreyCover[] = recently(coversOf);

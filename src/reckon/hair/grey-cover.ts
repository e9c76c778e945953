import { recently } from '../../text/recently.ts';
import { GREY_TO_BASE } from '../../trade/grey.ts';
import { bowlsPutOn } from '../bowl/applied.ts';
import { itemsIn } from '../bowl/contents.ts';
import { kindsMixed } from '../bowl/kinds-mixed.ts';
import { type GreyShare, greyShare } from '../client/state.ts';
import { isAway } from '../head/seen-at.ts';
import { zonesOfBowl } from '../head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../model.ts';

/** A bowl of permanent colour that goes on hair with so much grey that it is a cover. */
export type GreyCover = { readonly bowl: BowlReckoned; readonly grey: GreyShare };

const NONE: readonly GreyCover[] = [];

const isCover = (visit: VisitReckoned, bowl: BowlReckoned): boolean => {
  if (!itemsIn(bowl).some(({ kind }) => kind === 'permanent')) return false;
  const zones = zonesOfBowl(visit, bowl.name);
  return zones.length === 0 || !zones.every(isAway);
};

const coversOf = (visit: VisitReckoned): readonly GreyCover[] => {
  if (!kindsMixed(visit).includes('permanent')) return NONE;
  const grey = greyShare(visit.client, visit.visit);
  if (grey === undefined || grey.percent < GREY_TO_BASE) return NONE;
  return bowlsPutOn(visit)
    .filter((bowl) => isCover(visit, bowl))
    .map((bowl) => ({ bowl, grey }));
};

/** The bowls of a visit that cover grey: permanent colour, not on the lengths alone, where half the hair or more is grey. */
export const greyCovers: (visit: VisitReckoned) => readonly GreyCover[] = recently(coversOf);

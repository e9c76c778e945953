import { amountText, wordsText, wordText } from './figures.ts';
import { bowlsText, bowlText, zonesText } from './names.ts';
import { type SaidFact, spaced } from './said.ts';

/** `A hairline slice x2 gap 0 mirror off-scalp 1cm foil`, `A+B back weave x28 turn A B A` */
export const printPlace = (fact: SaidFact<'place'>): string => {
  const { bowls, zones, technique, sections, gap, mirror, scalp, clear, cover, turn, words } = fact;
  return spaced(
    bowlsText(bowls),
    zonesText(zones),
    technique && wordText(technique),
    sections !== undefined && `x${sections}`,
    gap && `gap ${amountText(gap)}`,
    mirror && 'mirror',
    scalp && `${scalp}-scalp`,
    clear && amountText(clear),
    cover && wordText(cover),
    wordsText(words),
    turn && spaced('turn', ...turn.map(bowlText)),
  );
};

import type { Placing } from '../records/schema/visit.ts';
import { escapeText } from './escape.ts';
import { bowlName, commas, type Noted, spaced, typedWords } from './noted.ts';
import { amountText } from './say-numbers.ts';
import { zonesText } from './seen.ts';

/** Techniques that are counted by their own name; the others are counted in sections. */
const MANY: Readonly<Record<string, readonly [string, string]>> = {
  slice: ['slice', 'slices'],
  weave: ['weave', 'weaves'],
  'fine-weave': ['fine weave', 'fine weaves'],
  babylight: ['babylight', 'babylights'],
  panel: ['panel', 'panels'],
  block: ['block', 'blocks'],
};

const sectionsText = ({ technique, sections }: Placing): string | undefined => {
  if (sections === undefined) return technique && escapeText(technique.word);
  const names = technique && MANY[technique.word];
  if (names !== undefined) return `${sections} ${sections === 1 ? names[0] : names[1]}`;
  return commas([technique && escapeText(technique.word), `${sections} ${sections === 1 ? 'section' : 'sections'}`]);
};

const mirrorText = ({ mirror, sections }: Placing): string | undefined => {
  if (!mirror) return undefined;
  return sections === undefined ? 'both sides' : `both sides (${2 * sections} in all)`;
};

const gapText = ({ gap }: Placing): string | undefined => {
  if (gap === undefined) return undefined;
  return gap.value === 0 && gap.to === undefined ? 'no gap' : `gap ${amountText(gap)}`;
};

const scalpText = ({ scalp, clear }: Placing): string | undefined => {
  const off = clear === undefined ? 'off the scalp' : `${amountText(clear)} off the scalp`;
  return commas([scalp === 'on' && 'on the scalp', (scalp === 'off' || clear !== undefined) && off]);
};

/** Where a bowl goes, in words: `hairline · 2 slices, both sides (4 in all), no gap, 1 cm off the scalp, foil`. */
export const placingText = (noted: Noted, fact: Placing): string => {
  const how = commas([
    sectionsText(fact),
    mirrorText(fact),
    gapText(fact),
    scalpText(fact),
    fact.cover && escapeText(fact.cover.word),
    fact.turn && `taking turns ${fact.turn.map(bowlName).join(', ')}`,
    typedWords(noted, fact, fact.words),
  ]);
  const bowls = fact.bowls.map(bowlName).join(' and ');
  return [bowls, zonesText(fact.zones), how].filter((piece) => piece !== '').join(' · ');
};

/** A bowl's name where a line has several, `A, B`. */
export const bowlsText = (bowls: readonly { readonly name: string }[]): string =>
  spaced([bowls.map(bowlName).join(', ')]);

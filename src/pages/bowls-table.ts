import { factAt } from '../journal/thing-at.ts';
import type { BowlReckoned, Portion } from '../reckon/model.ts';
import { figure, grams, listed, perCent, ratioText } from '../reckon/say.ts';
import type { Amount } from '../records/schema/values.ts';
import { type Exact, equal, exact, exactOf, mul, roundTo, sub, sum, ZERO } from '../text/exact.ts';
import { sameLine } from '../text/span.ts';
import { escapeText } from './escape.ts';
import { minorText } from './money-words.ts';
import { bowlName, commas, type Noted } from './noted.ts';
import { amountText, hedged } from './say-numbers.ts';
import { componentText } from './seen.ts';
import { type Column, table } from './tables.ts';

/** One bowl as a table: what is in it, in grams as the scales show them, and what the note says of each part. */

const shownGrams = ({ shown, weight, about }: Portion): string => {
  const value = shown ?? weight;
  return value === undefined ? 'not known' : hedged(about, figure(value));
};

/** The bowl that a further mix was made as, by its `more` line. */
const furtherOf = ({ visit, place }: BowlReckoned): string | undefined => {
  const line = factAt(visit.entry, place.line);
  return line?.word === 'more' ? bowlName(line.bowl) : undefined;
};

/** Where a weight comes from: typed, reckoned from what was typed, or an earlier bowl made again. */
const howText = (noted: Noted, bowl: BowlReckoned, portion: Portion): string => {
  const { component, typed, weight, shown, how, place, label } = portion;
  const again = bowl.again !== undefined && sameLine(place, bowl.place) ? bowl.again : undefined;
  if (again !== undefined) {
    const date = again.visit === bowl.visit ? undefined : again.visit.entry.date?.date;
    return `${perCent(mul(again.share, exact(100)))} of ${commas([`bowl ${escapeText(again.bowl)}`, date])}`;
  }
  const further = furtherOf(bowl);
  if (further !== undefined) return `as in bowl ${further}`;
  const said = componentText(noted, component);
  const plain = said === `${hedged(component.amount?.about, figure(shown ?? ZERO))} g ${escapeText(label)}`;
  const start = weight === undefined || typed ? 'typed' : 'reckoned from';
  // A weight that stands as it was typed needs no word.
  return commas([!(typed && plain) && `${start} ${said}`, how && escapeText(how)]);
};

/** What a portion is called on a page: a developer with its strength. */
export const partName = ({ label, role, strength, item }: Portion): string => {
  const known = role === 'developer' && strength !== undefined && !/%/.test(label) && item !== undefined;
  return known ? `${escapeText(label)}, ${perCent(strength)}` : escapeText(label);
};

/** `1:0.5 as weighed, meant 1:2`: a figure of the bowl as it went on the head, and as it was meant. */
const asWeighed = (figure: string | undefined, meant: string | undefined): string | undefined =>
  figure === undefined || meant === undefined || figure === meant ? figure : `${figure} as weighed, meant ${meant}`;

const readyText = (ready: Exact | undefined): string | undefined => ready && `${perCent(ready)} peroxide ready for use`;

/** The bowl in one line: `Bowl A · 120 g · 1:2 · 4 % ready for use`. */
const captionOf = (noted: Noted, bowl: BowlReckoned, money: boolean): string =>
  [
    `**Bowl ${bowlName(bowl)}**`,
    bowl.shownTotal && hedged(bowl.about, grams(bowl.shownTotal)),
    asWeighed(bowl.ratio && ratioText(bowl.ratio), bowl.meant?.ratio && ratioText(bowl.meant.ratio)),
    asWeighed(readyText(bowl.ready), bowl.meant?.ready && perCent(bowl.meant.ready)),
    bowl.used && bowl.left && `${grams(roundTo(bowl.used, noted.salon.scale))} used`,
    money && (bowl.cost === undefined ? 'cost not known' : `products ${minorText(bowl.cost, noted.salon.currency)}`),
  ]
    .filter((piece) => piece !== undefined && piece !== false)
    .join(' · ');

const COLUMNS: readonly Column[] = [{ head: 'What' }, { head: 'Grams', figures: true }, { head: 'How' }];

const labels = (portions: readonly Portion[]): string => listed(portions.map(({ label }) => escapeText(label)));

/** `, without bond`: parts that a claim leaves out, where the rest comes to what it says. */
const withoutAdded = ({ portions, shownTotal }: BowlReckoned, claim: Amount): string => {
  const added = portions.filter(({ role }) => role === 'additive' || role === 'water');
  const rest = shownTotal && sub(shownTotal, sum(added.map(({ shown }) => shown ?? ZERO)));
  const isRest = rest !== undefined && claim.to === undefined && equal(rest, exactOf(claim.value));
  return added.length > 0 && isRest ? `, without ${labels(added)}` : '';
};

/** `, without bond`: parts that did not stand on the scales, where others did. */
const notWeighed = ({ portions, weighed }: BowlReckoned): string => {
  const missing = portions.filter((portion) => portion.weighed === undefined);
  return weighed === undefined || weighed.parts.length === 0 || missing.length === 0
    ? ''
    : `, without ${labels(missing)}`;
};

/** What the note says of the whole: a total set, a total claimed, what the scales said, and of which parts. */
const totalText = (bowl: BowlReckoned): string => {
  const { name, visit, weighed } = bowl;
  const line = visit.entry.facts.find((fact) => fact.word === 'bowl' && fact.bowl.name.toUpperCase() === name);
  const { total, claim } = line?.word === 'bowl' ? line : {};
  return commas([
    total && `set as ${amountText(total, 'g')}`,
    claim && `noted as ${amountText(claim, 'g')}${withoutAdded(bowl, claim)}`,
    weighed && `weighed ${grams(weighed.total)}${notWeighed(bowl)}`,
  ]);
};

/** What the scales said of a part, where it is not what was meant. */
const weighedText = ({ weighed, weight, shown }: Portion): string =>
  weighed === undefined || (weight !== undefined && equal(weighed, shown ?? weight)) ? '' : `weighed ${grams(weighed)}`;

/** Rows of what stood on the scales and was not meant to be in the bowl. */
const otherRows = ({ portions, held }: BowlReckoned): string[][] =>
  held
    .filter(({ place }) =>
      portions.every((portion) => !sameLine(portion.place, place) || portion.place.at !== place.at),
    )
    .map((portion) => [
      partName(portion),
      'not meant',
      weighedText({ ...portion, weight: undefined, shown: undefined }),
    ]);

/** The bowl as a table with its caption; `money` adds what its products cost. */
export const bowlTable = (noted: Noted, bowl: BowlReckoned, money = false): string => {
  const rows = bowl.portions.map((portion) => [
    partName(portion),
    shownGrams(portion),
    commas([howText(noted, bowl, portion), weighedText(portion)]),
  ]);
  rows.push(...otherRows(bowl));
  const total = totalText(bowl);
  if (bowl.shownTotal !== undefined && (rows.length > 1 || total !== ''))
    rows.push(['**In all**', `**${hedged(bowl.about, figure(bowl.shownTotal))}**`, total]);
  return table(COLUMNS, rows, captionOf(noted, bowl, money));
};

import type { Plan, PlannedBowl } from '../reckon/ahead/plan.ts';
import { figure, grams, perCent, ratioText } from '../reckon/say.ts';
import { type Exact, largestRemainder, roundTo, sum } from '../text/exact.ts';
import { bowlLine, bowlTerm } from './bowl-line.ts';
import { partName } from './bowls-table.ts';
import { escapeText } from './escape.ts';
import { listOf } from './head-view.ts';
import { bowlName, quote } from './noted.ts';
import { sumText, workedText } from './prep-sums.ts';
import { hedged } from './say-numbers.ts';
import { type Column, table } from './tables.ts';

/** The bowls to mix on a day: what was in them the last time, what goes in now, and the sum between. */

const COLUMNS: readonly Column[] = [
  { head: 'What' },
  { head: 'Last time', figures: true },
  { head: 'Mix', figures: true },
];

/** What the blocks of a plan need besides: names that bowls of another visit on the sheet have too, and bowls left out. */
export type PlanShown = { readonly twice: ReadonlySet<string>; readonly others: ReadonlySet<string> };

const dateOf = ({ bowl }: PlannedBowl, { visit }: Plan, { twice }: PlanShown): string | undefined =>
  twice.has(bowl.name) ? visit.date : undefined;

/** The words that stand in the grams' place, with where and when they were noted. */
const wordsText = ({ words }: PlannedBowl): string =>
  words.map(({ word, date, text }) => `**${quote(text)}** (${word} of ${date})`).join(', ');

const captionOf = ({ bowl, total }: PlannedBowl, date: string | undefined): string => {
  // What is planned is the formula, not what the scales said of it once.
  const { ratio, ready } = bowl.meant ?? bowl;
  return [
    `**Bowl ${escapeText(bowl.name)}${date === undefined ? '' : ` of ${date}`}**`,
    total && hedged(bowl.about, grams(total)),
    ratio && ratioText(ratio),
    ready && `${perCent(ready)} peroxide ready for use`,
  ]
    .filter((piece) => piece !== undefined)
    .join(' · ');
};

/** The grams of the last time as the scales show them, rounded together so that they add up to their sum. */
const lastGrams = ({ portions }: PlannedBowl, scale: Exact): Exact[] | undefined => {
  const weights = portions.flatMap(({ last }) => last ?? []);
  return weights.length === portions.length ? largestRemainder(weights, sum(weights), scale) : undefined;
};

/** Room for grams to be written by hand. */
const BY_HAND = '\\_\\_\\_\\_';

/** A bowl that the notes speak of in words: the words, what was in it the last time, and room for what goes in now. */
const wordsBlock = (planned: PlannedBowl, plan: Plan, shown: PlanShown): string => {
  const { bowl, portions } = planned;
  const date = dateOf(planned, plan, shown);
  const last = lastGrams(planned, plan.visit.salon.scale);
  const rows = portions.map(({ portion, last: own }, index) => {
    const before = last?.[index] ?? (own && roundTo(own, plan.visit.salon.scale));
    return [partName(portion), before === undefined ? 'not known' : hedged(portion.about, figure(before)), BY_HAND];
  });
  if (rows.length > 1) rows.push(['In all', last ? figure(sum(last)) : 'not known', BY_HAND]);
  const name = `**Bowl ${escapeText(bowl.name)}${date === undefined ? '' : ` of ${date}`}**`;
  return table(COLUMNS, rows, `${name} · ${wordsText(planned)}`);
};

const bowlBlock = (planned: PlannedBowl, plan: Plan, shown: PlanShown): string => {
  if (planned.by === 'words') return wordsBlock(planned, plan, shown);
  const { total, portions } = planned;
  const { scale } = plan.visit.salon;
  const last = lastGrams(planned, scale);
  const rows = portions.map(({ portion, mix, last: own }, index) => {
    const before = last?.[index] ?? (own && roundTo(own, scale));
    return [
      partName(portion),
      before === undefined ? 'not known' : hedged(portion.about, figure(before)),
      mix === undefined ? 'not known' : `**${figure(mix)}**`,
    ];
  });
  if (rows.length > 1)
    rows.push(['**In all**', last ? figure(sum(last)) : 'not known', total ? `**${figure(total)}**` : 'not known']);
  return table(COLUMNS, rows, captionOf(planned, dateOf(planned, plan, shown)));
};

/** The tables and sums of one earlier visit's bowls as blocks of Markdown; none where it mixed none. */
export const planBlocks = (plan: Plan, shown: PlanShown): string[] => {
  const asked = plan.bowls.filter(({ bowl }) => !shown.others.has(bowl.name));
  const others = plan.bowls.filter((planned) => !asked.includes(planned));
  return [
    ...asked.map((planned) => bowlBlock(planned, plan, shown)),
    ...listOf([
      ...asked.map((planned) => `- ${bowlTerm(planned.bowl, dateOf(planned, plan, shown))} ${sumText(planned)}`),
      ...others.map(({ bowl }) => `- **Not asked for** ${bowlName(bowl)} was mixed too, ${bowlLine(bowl)}`),
    ]),
  ];
};

/** How the grams came about, bowl by bowl, as items; none where nothing is to be told. */
export const workedItems = (plan: Plan, shown: PlanShown): string[] =>
  plan.bowls
    .filter(({ bowl }) => !shown.others.has(bowl.name))
    .flatMap((planned) => {
      const said = workedText(planned, plan);
      return said === undefined ? [] : [`- ${bowlTerm(planned.bowl, dateOf(planned, plan, shown))} ${said}`];
    });

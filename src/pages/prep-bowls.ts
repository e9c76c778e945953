import type { Plan, PlannedBowl } from '../reckon/plan.ts';
import { figure, grams, perCent, ratioText } from '../reckon/say.ts';
import { sayBeside, sayDecided } from '../reckon/say-plan.ts';
import { roundTo } from '../text/exact.ts';
import { partName } from './bowls-table.ts';
import { escapeText } from './escape.ts';
import { listOf } from './head-view.ts';
import { joined } from './noted.ts';
import { hedged } from './say-numbers.ts';
import { type Column, table } from './tables.ts';

/** The bowls to mix on a day: what was in them the last time, what goes in now, and the sum between. */

const COLUMNS: readonly Column[] = [
  { head: 'What' },
  { head: 'Last time', figures: true },
  { head: 'Mix', figures: true },
];

/** What was left over, or that the note of the visit does not say. */
const leftText = ({ left, bowl }: PlannedBowl): string => {
  if (left === undefined) return 'none noted left over';
  const kept = bowl.left?.fate === 'kept' ? ' and kept' : '';
  return `${grams(left)} left over${kept}`;
};

/** `60 g last time, 9 g left over; the one bowl like it needed 51 g, likely 43 to 60 g: …, mix **56 g**`. */
const sumText = (planned: PlannedBowl): string => {
  const { bowl, mixed, total } = planned;
  if (mixed === undefined || total === undefined) return 'cannot be worked out from the note of last time';
  const last = `${hedged(bowl.about, grams(mixed))} last time, ${leftText(planned)}`;
  const mix = `${sayDecided(planned)}, mix **${hedged(bowl.about, grams(total))}**`;
  return joined([last, mix, sayBeside(planned)], '; ');
};

const captionOf = ({ bowl, total }: PlannedBowl): string =>
  [
    `**Bowl ${escapeText(bowl.name)}**`,
    total && hedged(bowl.about, grams(total)),
    bowl.ratio && ratioText(bowl.ratio),
    bowl.ready && `${perCent(bowl.ready)} peroxide ready for use`,
  ]
    .filter((piece) => piece !== undefined)
    .join(' · ');

const bowlBlock = (planned: PlannedBowl, { visit }: Plan): string => {
  const { mixed, total, portions } = planned;
  const rows = portions.map(({ portion, last, mix }) => [
    partName(portion),
    last === undefined ? 'not known' : hedged(portion.about, figure(roundTo(last, visit.salon.scale))),
    mix === undefined ? 'not known' : `**${figure(mix)}**`,
  ]);
  if (rows.length > 1)
    rows.push(['**In all**', mixed ? figure(mixed) : 'not known', total ? `**${figure(total)}**` : 'not known']);
  return table(COLUMNS, rows, captionOf(planned));
};

/** The tables and sums of one earlier visit's bowls as blocks of Markdown; none where it mixed none. */
export const planBlocks = (plan: Plan): string[] => [
  ...plan.bowls.map((planned) => bowlBlock(planned, plan)),
  ...listOf(plan.bowls.map((planned) => `- **Bowl ${escapeText(planned.bowl.name)}** ${sumText(planned)}`)),
];

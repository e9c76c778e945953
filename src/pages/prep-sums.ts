import { hundredths, type Plan, type PlannedBowl } from '../reckon/ahead/plan.ts';
import { type MixForecast, MOST_SCALED } from '../reckon/forecast/forecast.ts';
import type { Need } from '../reckon/forecast/need.ts';
import { figure, grams, listed } from '../reckon/say.ts';
import { compare, type Exact, exactOf, roundTo, sub, toNumber, ZERO } from '../text/exact.ts';
import { commas, joined } from './noted.ts';
import { hedged } from './say-numbers.ts';

/** Why a planned bowl is as large as it is: one line beside its table, and the whole sum elsewhere on the sheet. */

const whole = (value: number): string => figure(hundredths(value), 0);
const tenth = (value: number): string => figure(hundredths(value), 1);

/** `79–134 g`, `86 g`: what went of the bowls looked back to. */
const span = (from: readonly Need[]): string => {
  const used = from.map(({ used: one }) => Math.round(one));
  const [least, most] = [Math.min(...used), Math.max(...used)];
  return `${least === most ? least : `${least}–${most}`} g`;
};

/** `, +10 %`, what is mixed besides so that few bowls run short; nothing where it is nothing. */
const spareText = ({ need, mix }: MixForecast): string => {
  const percent = Math.round((mix / need - 1) * 100);
  return percent === 0 ? '' : `, ${percent < 0 ? '−' : '+'}${Math.abs(percent)} %`;
};

const mixText = ({ bowl, total = ZERO }: PlannedBowl): string => `**${hedged(bowl.about, grams(total))}**`;

/** What was really used the last time, where a `left` line tells. */
const usedLast = ({ mixed, left }: PlannedBowl): Exact | undefined =>
  mixed === undefined || left === undefined ? undefined : sub(mixed, left);

const signed = (percent: number): string => `${percent < 0 ? '−' : '+'}${figure(exactOf(Math.abs(percent)))} %`;

/** How often grams made so would have run short so far, in the salon’s own bowls. */
const shortSoFar = ({ short }: MixForecast): string =>
  short === undefined
    ? 'how often grams made so run short the notes are too young to say'
    : `of ${short.of} bowls of the salon so far ${short.bowls === 0 ? 'none' : short.bowls} would have run short by grams made so`;

/** That less is asked for than was used, so that the bowl may run short. */
const shortText = (planned: PlannedBowl): string | undefined => {
  const used = usedLast(planned);
  const { total } = planned;
  if (used === undefined || total === undefined || compare(total, used) >= 0) return undefined;
  return `less than the ${figure(used, 0)} g used last time`;
};

const askedText = (planned: PlannedBowl): string => {
  const { asked = 0, mixed = ZERO, forecast } = planned;
  const beside = forecast && `by what bowls like it needed ${whole(forecast.mix)} g`;
  return joined(
    [`${signed(asked)} asked for, of ${grams(mixed)} = ${mixText(planned)}`, shortText(planned), beside],
    '; ',
  );
};

/** Where no bowl looked back to says what was left: as last time only where it is what the last one held. */
const untoldText = (planned: PlannedBowl, { from, scaled, growth = 0 }: MixForecast): string => {
  const { need = ZERO, mixed = ZERO } = planned;
  const untold = 'for no note says what was left';
  const isSame = compare(need, hundredths(toNumber(mixed))) === 0;
  if (isSame) return `as last time ${mixText(planned)}, ${untold}`;
  const on = scaled ? `for ${whole(growth)} mm ` : '';
  return `${on}${mixText(planned)}, the middle of ${span(from)} that bowls like it held (${hedged(planned.bowl.about, grams(mixed))} last time), ${untold}`;
};

const forecastText = (planned: PlannedBowl, forecast: MixForecast): string => {
  const { need, from, scaled, growth = 0 } = forecast;
  const isTold = from.some(({ told }) => told);
  if (!isTold) return untoldText(planned, forecast);
  const on = scaled ? `for ${whole(growth)} mm ` : '';
  return `${on}about ${whole(need)} g (${span(from)} used before)${spareText(forecast)} = ${mixText(planned)}`;
};

/** Of a bowl that the notes speak of in words: how much it was, so that the eye has a measure, and what besides is asked. */
const wordsText = ({ asked, mixed, left, forecast }: PlannedBowl): string => {
  const needed = forecast?.from.some(({ told }) => told)
    ? `bowls like it needed about ${whole(forecast.need)} g`
    : undefined;
  const used = needed ?? (mixed && left && `${figure(sub(mixed, left), 0)} g used last time`);
  return joined(
    [
      'no grams, for the notes change it in words',
      asked !== undefined && `${signed(asked)} asked for besides`,
      mixed && `${grams(mixed)} mixed last time`,
      used,
    ],
    '; ',
  );
};

/** `for 20 mm about 102 g (79–134 g used before), +10 % = 113 g`: why a bowl is as large as it is, in one line. */
export const sumText = (planned: PlannedBowl): string => {
  const { by, forecast, total, mixed, left } = planned;
  if (by === 'words') return wordsText(planned);
  if (mixed === undefined || total === undefined) return 'cannot be worked out from the note of last time';
  if (by === 'asked') return askedText(planned);
  if (forecast !== undefined) return forecastText(planned, forecast);
  return left === undefined ? `as last time ${mixText(planned)}` : `what was used last time, ${mixText(planned)}`;
};

const lastText = ({ bowl, mixed = ZERO, left }: PlannedBowl, scale: Exact): string => {
  const kept = bowl.left?.fate === 'kept' ? ' and kept' : '';
  return `${hedged(bowl.about, grams(roundTo(mixed, scale)))} last time, ${left === undefined ? 'none noted left over' : `${grams(left)} left over${kept}`}`;
};

/** The bowls looked back to, each with its day and its growth: `79 g (2026-03-02, 21 mm)`. */
const needsText = ({ from, scaled }: MixForecast): string =>
  listed(
    from.map(
      ({ used, date, growth }) =>
        `${tenth(used)} g (${commas([date, scaled && growth !== undefined && `${whole(growth)} mm`])})`,
    ),
  );

/** That a bowl on much more or much less growth is not scaled all the way. */
const cappedText = ({ from, growth = 0 }: MixForecast): string | undefined => {
  const beyond = from.filter(
    ({ growth: then }) => then !== undefined && (growth > then * MOST_SCALED || growth < then / MOST_SCALED),
  );
  if (beyond.length === 0) return undefined;
  const dates = listed(beyond.map(({ date }) => date));
  return `a bowl is scaled to no more than twice the growth that it was for, and no less than half: so that of ${dates}`;
};

const scaledText = (forecast: MixForecast): string | undefined => {
  const { scaled, growth = 0, share, sized } = forecast;
  if (!scaled) return undefined;
  const sizes = listed(sized.map(tenth));
  const how = `on ${whole(growth)} mm, with which ${whole(share * 100)} % of a bowl grows, ${sizes} g`;
  return joined([how, cappedText(forecast)], '; ');
};

/** The last bowl itself where it is not counted. */
const skippedText = ({ left }: PlannedBowl, { from }: MixForecast, date: string): string | undefined => {
  const isLeftOut = left === undefined && !from.some((need) => need.date === date);
  return isLeftOut ? `the bowl of ${date} is not counted, for no note says what was left` : undefined;
};

/** The whole sum of a bowl that is forecast, as plain words; undefined for one that its one line says all of. */
export const workedText = (planned: PlannedBowl, { visit }: Plan): string | undefined => {
  const { forecast, total } = planned;
  if (forecast === undefined || total === undefined) return undefined;
  const { from, there, need, mix, low, high } = forecast;
  const isTold = from.some(({ told }) => told);
  const like = `bowls like it${there ? '' : ', at other places,'} ${isTold ? 'needed' : 'took'} ${needsText(forecast)}`;
  const spare = need === mix ? undefined : `× ${figure(hundredths(mix / need), 2)} to spare, ${tenth(mix)} g`;
  return joined(
    [
      lastText(planned, visit.salon.scale),
      like,
      skippedText(planned, forecast, visit.date),
      scaledText(forecast),
      from.length > 1 && `in the middle ${tenth(need)} g`,
      `eight of ten ${whole(low)} to ${whole(high)} g`,
      spare,
      isTold && shortSoFar(forecast),
    ],
    '; ',
  );
};

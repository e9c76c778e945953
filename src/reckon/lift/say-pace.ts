import { exactOf } from '../../text/exact.ts';
import { capital } from '../../text/fold.ts';
import { figure } from '../say.ts';
import { firstCheckAt, lineOf } from './first-check.ts';
import type { OwnPace, Pace, PaceAsk } from './pace.ts';

/** What stands beside every estimate of lift. */
export const JUDGE_BY_HAIR = 'Judge by the hair, not the clock.';

const TIMES = ['', 'last time', 'last two times', 'last three times'] as const;

const span = (from: number, to: number): string => {
  const [low, high] = [Math.round(from), Math.round(to)];
  return low === high ? `${low} min` : `${low} to ${high} min`;
};

const visits = (count: number): string => (count === 1 ? '1 visit' : `${count} visits`);

/** `2026-06-10`, `2026-03-02 to 2026-06-10`: the times meant are those that reached the stage with this product. */
const daysOf = (own: readonly OwnPace[]): string =>
  [...new Set([own[0]?.date, own.at(-1)?.date])].filter(Boolean).join(' to ');

const ownSaid = (own: readonly OwnPace[], stage: string): string =>
  `about ${span(Math.min(...own.map(({ from }) => from)), Math.max(...own.map(({ to }) => to)))} to ${stage} the ${TIMES[own.length]} that reached it (${daysOf(own)})`;

const basis = ({ visits: { own, strength, product } }: Pace, ask: PaceAsk): string => {
  const name = ask.product.full;
  if (strength === 0) return `${visits(product)} in the salon with ${name}, at other strengths`;
  const at = ask.strength === undefined ? name : `${name} at ${figure(exactOf(ask.strength))} %`;
  return `${own > 0 ? `${own} own of ` : ''}${visits(strength)} in the salon with ${at}`;
};

const unknown = ({ product }: PaceAsk, stage: string): string[] => {
  const line = lineOf(product);
  const none = `no earlier visit tells the minutes to ${stage} with ${product.full}`;
  return line === undefined ? [none] : [none, `its line says ${span(line.from, line.to)}`];
};

const known = (pace: Pace, ask: PaceAsk, stage: string): string[] => {
  const own = pace.own.length > 0 ? [ownSaid(pace.own, stage)] : [];
  if (own.length > 0 && pace.own.length === TIMES.length - 1) return own;
  const to = own.length > 0 ? '' : ` to ${stage}`;
  return [...own, `reckon with ${span(pace.low, pace.high)}${to} (${basis(pace, ask)})`];
};

/**
 * One sentence for the sheet beside the trolley: how long the last times, what to reckon with while there are fewer than
 * three, what the product's line says when nothing is known, and when to look first. Minutes count from first on.
 */
export const sayPace = (ask: PaceAsk, pace: Pace | undefined): string => {
  const stage = ask.stage.replace('pale-', 'pale ');
  const first = pace === undefined ? firstCheckAt(ask.product) : pace.firstCheck;
  const said = pace === undefined ? unknown(ask, stage) : known(pace, ask, stage);
  const text = [...said, ...(first === undefined ? [] : [`first check at ${first}`])].join('; ');
  return `${capital(text)}. ${JUDGE_BY_HAIR}`;
};

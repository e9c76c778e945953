import { nearNames } from '../text/near.ts';
import { offered, refusal } from './refusal.ts';

export type BacktestOptions = { readonly others?: true; readonly json?: true };

const SUBJECTS = ['lift', 'mix'] as const;

/** `bowlbook backtest`: how far out what the program estimates is on a journal, beside naive guesses. */
export const backtest = async (
  subject: string,
  paths: readonly string[],
  options: BacktestOptions,
): Promise<number> => {
  if (subject === 'lift') return (await import('./backtest-lift.ts')).backtestLiftOf(paths, options);
  if (subject === 'mix') return (await import('./backtest-mix.ts')).backtestMixOf(paths, options);
  const near = nearNames(subject, SUBJECTS);
  throw refusal(
    `\`${subject}\` is nothing that can be tested back.`,
    `Write ${offered((near.length > 0 ? near : SUBJECTS).map((name) => `backtest ${name}`))}.`,
  );
};

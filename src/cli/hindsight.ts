import { nearNames } from '../text/near.ts';
import type { HindsightOptions } from './hindsight-options.ts';
import { offered, refusal } from './refusal.ts';

const SUBJECTS = ['lift', 'mix'] as const;

/** `bowlbook hindsight`: how far out what the program estimates is on a journal, beside naive guesses. */
export const hindsight = async (
  subject: string,
  paths: readonly string[],
  options: HindsightOptions,
): Promise<number> => {
  if (subject === 'lift') return (await import('./hindsight-lift.ts')).hindsightLiftOf(paths, options);
  if (subject === 'mix') return (await import('./hindsight-mix.ts')).hindsightMixOf(paths, options);
  const near = nearNames(subject, SUBJECTS);
  throw refusal(
    `\`${subject}\` is nothing that can be tested back.`,
    `Write ${offered((near.length > 0 ? near : SUBJECTS).map((name) => `hindsight ${name}`))}.`,
  );
};

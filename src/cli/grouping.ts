import { nearNames } from '../text/near.ts';
import { offered, refusal } from './refusal.ts';

/** What `--by` names, one of the words given; undefined without it. Throws a refusal that offers the near words. */
export const groupingOf = <By extends string>(typed: string | undefined, words: readonly By[]): By | undefined => {
  if (typed === undefined) return undefined;
  const found = words.find((word) => word === typed.toLowerCase());
  if (found !== undefined) return found;
  const near = nearNames(typed.toLowerCase(), words);
  throw refusal(
    `\`--by ${typed}\` is nothing to group by.`,
    near.length > 0 ? `Near: ${offered(near)}.` : `It takes ${offered(words)}.`,
  );
};

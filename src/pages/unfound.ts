import type { Journal } from '../journal/journal.ts';

/** What is said where no salon or no shelf was read: then nothing tells how long a test holds, nor what asks for one. */

/** What a page has to go by and does not: `salon`, `shelf`; none where both were read. */
export const unfound = ({ salons, shelf }: Pick<Journal, 'salons' | 'shelf'>): readonly string[] => [
  ...(salons.size === 0 ? ['salon'] : []),
  ...(shelf.size === 0 ? ['shelf'] : []),
];

/** Whether a page can say that a test holds: by the salon's policy, and by what the shelf says of the products. */
export const isGrounded = (journal: Pick<Journal, 'salons' | 'shelf'>): boolean => unfound(journal).length === 0;

const MEANS: Readonly<Record<string, string>> = {
  salon: 'no policy says how long a test holds',
  shelf: 'nothing says which products ask for a test, nor how they are mixed and timed',
};

/** The sentence for it; undefined where both were read. */
export const unfoundText = (journal: Pick<Journal, 'salons' | 'shelf'>): string | undefined => {
  const missing = unfound(journal);
  if (missing.length === 0) return undefined;
  const means = missing.map((one) => MEANS[one]).join(', and ');
  return `No ${missing.join(' and no ')} was found with these notes: ${means}. No test is said to hold here.`;
};

/** The same as the first block of the alerts. */
export const unfoundBlocks = (journal: Pick<Journal, 'salons' | 'shelf'>): string[] => {
  const text = unfoundText(journal);
  return text === undefined ? [] : [`**${text}**`];
};

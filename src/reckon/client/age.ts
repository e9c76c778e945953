import type { ClientFile } from '../../journal/journal.ts';
import { ageOn, isDate, isMonth, monthEnd } from '../../text/dates.ts';
import { recently } from '../../text/recently.ts';

/** The latest day on which someone born then can have been born: the day, or the last of the month or year. */
const latestBirth = (when: string): string => (isDate(when) ? when : isMonth(when) ? monthEnd(when) : `${when}-12-31`);

/** The latest day on which the `born` lines allow her to be born; '' without one. */
const birthOf = recently(({ entries }: ClientFile): string => {
  let birth = '';
  for (const { entry } of entries)
    for (const fact of entry.facts) {
      const latest = fact.word === 'born' ? latestBirth(fact.when.when) : '';
      if (latest > birth) birth = latest;
    }
  return birth;
});

/**
 * Whole years old on a day: the youngest that the client can be when only a month or year is noted, or when two `born`
 * lines differ. Undefined without a `born` line and before birth.
 */
export const ageOf = (client: ClientFile, date: string): number | undefined => {
  const birth = birthOf(client);
  if (birth === '' || !isDate(date)) return undefined;
  const age = ageOn(birth, date);
  return age < 0 ? undefined : age;
};

/** Whether the client is under an age on a day; undefined when no birth is noted. */
export const isUnder = (age: number, client: ClientFile, date: string): boolean | undefined => {
  const own = ageOf(client, date);
  return own === undefined ? undefined : own < age;
};

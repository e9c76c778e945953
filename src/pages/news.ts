import type { Journal } from '../journal/journal.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { About } from '../records/schema/visit.ts';
import { endOf } from './noted.ts';
import { zonesText } from './seen.ts';

/** What a later visit says about an earlier one. */
export type News = { readonly fact: About; readonly saidOn: string };

/** The news of each visit, by the date that it speaks of. */
export const newsByDate = (visits: readonly VisitReckoned[]): ReadonlyMap<string, readonly News[]> => {
  const news = new Map<string, News[]>();
  for (const { date, visit } of visits) {
    for (const fact of visit.entry.facts) {
      if (fact.word !== 'about') continue;
      const about = fact.date.date;
      news.set(about, [...(news.get(about) ?? []), { fact, saidOn: date }]);
    }
  }
  return news;
};

/** News as a list item under the visit that it speaks of. */
export const newsItem = (journal: Journal, { fact, saidOn }: News): string =>
  `- **Later news** told on ${saidOn}${fact.zones.length > 0 ? `: ${zonesText(fact.zones)}` : ''}${endOf(journal, fact)}`;

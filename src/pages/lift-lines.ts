import type { LiftSeries } from '../reckon/lift/series.ts';
import { liftOf } from '../reckon/lift/series.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { escapeText } from './escape.ts';
import { seriesText } from './figures/lift-panels.ts';
import { chartUndercoatOf } from './figures/swatches.ts';

/** The lift of a visit in words: what was seen after how many minutes, bowl by bowl and place by place. */

/** Places of one bowl that lifted alike, minute by minute, said once: `A roots crown, roots top: orange at 10 min`. */
const alikeTogether = (all: readonly LiftSeries[]): string[] => {
  const zones = new Map<string, string[]>();
  for (const series of all) {
    const alike = seriesText({ ...series, zone: '' });
    zones.set(alike, [...(zones.get(alike) ?? []), series.zone]);
  }
  return [...zones].map(([alike, places]) => {
    const bowl = alike.slice(0, alike.indexOf(':'));
    const named = places.filter((zone) => zone !== '').join(', ');
    return named === '' ? alike : `${bowl} ${named}${alike.slice(bowl.length)}`;
  });
};

/** List items for the lift that was looked at, and the undercoat to reckon with where none was noted. */
export const liftItems = (visit: VisitReckoned): string[] => [
  ...alikeTogether(liftOf(visit)).map((said) => `- **Lift** ${escapeText(said)}; minutes from first on`),
  ...chartUndercoatOf(visit).map(({ says }) => `- **Undercoat** ${escapeText(says)}`),
];

import { liftOf } from '../reckon/lift/series.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { escapeText } from './escape.ts';
import { seriesText } from './figures/lift-panels.ts';
import { chartUndercoatOf } from './figures/swatches.ts';

/** The lift of a visit in words: what was seen after how many minutes, bowl by bowl and place by place. */

/** List items for the lift that was looked at, and the undercoat to reckon with where none was noted. */
export const liftItems = (visit: VisitReckoned): string[] => [
  ...liftOf(visit).map((series) => `- **Lift** ${escapeText(seriesText(series))}; minutes from first on`),
  ...chartUndercoatOf(visit).map(({ says }) => `- **Undercoat** ${escapeText(says)}`),
];

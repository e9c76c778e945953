import { placementOf } from '../../reckon/head/placement.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { shownText } from '../escape.ts';
import { htmlText } from '../html-text.ts';
import { bowlMarks } from './bowl-marks.ts';
import { headViews } from './head.ts';
import { notDrawn, placementKey } from './key.ts';
import { strand } from './strand.ts';

/** Where the bowls of a visit went, drawn: the head, one hair, and what the patterns stand for. */
export const placementFigure = (id: string, visit: VisitReckoned): string | undefined => {
  const placement = placementOf(visit);
  const marks = bowlMarks(visit);
  const drawn = [headViews(`${id}-head`, marks, placement), strand(`${id}-along`, marks, placement)];
  if (drawn.every((one) => one === undefined)) return undefined;
  const without = notDrawn(placement);
  const said = without.length === 0 ? '' : `Not drawn: ${htmlText(shownText(without.join(', ')))}.`;
  const caption = `<figcaption>${placementKey(`${id}-key`, marks, visit, placement)}${said}</figcaption>`;
  return `<figure class="figure placement">${drawn.join('')}${caption}</figure>`;
};

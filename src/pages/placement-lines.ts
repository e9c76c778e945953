import type { LightenedShare } from '../reckon/head/lightened-share.ts';
import { type OrderStep, type Placement, placementOf, type SectionCount } from '../reckon/head/placement.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { listed } from '../reckon/say.ts';
import { clockText } from '../text/dates.ts';
import { type FromTo, HEAD_AREA_FACTS, HEAD_AREAS_SOURCE, SECTION_FACTS, SECTION_WIDTH } from '../trade/head-areas.ts';
import { escapeText } from './escape.ts';
import { joined } from './noted.ts';

/** What the placement of a visit comes to, in words: counts, the share lightened, the order of application. */

const fromTo = ({ least, most }: FromTo, unit: string, of = 1): string => {
  const [from, to] = [Math.round(least * of), Math.round(most * of)];
  return from === to ? `${from} ${unit}` : `${from} to ${to} ${unit}`;
};

const countsText = (counts: readonly SectionCount[]): string =>
  counts.map(({ name, sections }) => `${escapeText(name)} ${sections}`).join(', ');

const sectionsItem = ({ sections, byBowl, byZone, byTechnique }: Placement): string[] => {
  if (sections === 0) return [];
  // One bowl, one place and one technique say nothing that the line placed did not.
  const parts = [byBowl, byZone, byTechnique].map((counts) => (counts.length > 1 ? countsText(counts) : ''));
  if (parts.every((part) => part === '')) return [];
  return [`- **Sections** ${sections} in all: ${joined(parts, '; ')}`];
};

/** What an estimate takes for granted: the areas it counts, and how deep and how full a section is. */
const assumed = ({ areas, techniques }: LightenedShare): string => {
  const whole = areas.reduce((sum, area) => sum + HEAD_AREA_FACTS[area].percent, 0) >= 100;
  const sizes = whole ? '' : areas.map((area) => `${area} ${HEAD_AREA_FACTS[area].percent} %`).join(', ');
  const sections = techniques.map((technique) => {
    const { deep, taken } = SECTION_FACTS[technique];
    const share = taken.least === 1 ? '' : ` with ${fromTo(taken, '%', 100)} of its hair taken`;
    return `a ${technique.replace('-', ' ')} ${fromTo(deep, 'mm')} deep and up to ${SECTION_WIDTH.most} mm wide${share}`;
  });
  return joined([sizes && `of the head ${sizes}`, ...sections], '; ');
};

const lightenedItem = ({ lightened }: Placement): string[] => {
  if (lightened === undefined) return [];
  const { without } = lightened;
  if (lightened.most === 0)
    return [`- **Lightened** no share of the head can be reckoned for ${listed(without.map(escapeText))}`];
  const taking = assumed(lightened);
  const of = lightened.onlyNewGrowth ? 'the new growth of ' : '';
  const said = [
    `${of}about ${fromTo(lightened, '%')} of the head, an estimate`,
    !lightened.onlyNewGrowth &&
      lightened.newGrowth.length > 0 &&
      `of ${listed(lightened.newGrowth.map(escapeText))} the new growth alone`,
    taking && `it takes ${taking} (${HEAD_AREAS_SOURCE})`,
    without.length > 0 && `without ${listed(without.map(escapeText))}`,
  ];
  return [`- **Lightened** ${joined(said, '; ')}`];
};

const stepText = ({ at, on }: OrderStep): string => {
  const bowls = [...new Set(on.map(({ bowl }) => bowl ?? ''))];
  const said = bowls.map((bowl) => {
    const zones = on.filter((one) => (one.bowl ?? '') === bowl && one.zone !== '').map(({ zone }) => escapeText(zone));
    return joined([escapeText(bowl), zones.join(', ')], ' ');
  });
  return `${clockText(at)} ${said.join(', ')}`;
};

const orderItem = ({ order }: Placement): string[] =>
  order.length < 2 ? [] : [`- **Order** ${order.map(stepText).join('; ')}`];

/** List items on where the bowls went, beneath the lines as placed; none where those say it all. */
export const placementItems = (visit: VisitReckoned): string[] => {
  const placement = placementOf(visit);
  return [...sectionsItem(placement), ...lightenedItem(placement), ...orderItem(placement)];
};

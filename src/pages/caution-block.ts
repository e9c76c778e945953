import { isUnder, reactionsOf } from '../reckon/client/state.ts';
import { isOxidative, zonesOfBowl } from '../reckon/head/services.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { type CautionTopic, caution, FIRST } from '../trade/cautions.ts';
import { LAW } from '../trade/law.ts';
import { EYE } from '../trade/zones.ts';
import { escapeText } from './escape.ts';
import { type HeadView, salonOfHead } from './head-view.ts';
import { CAUTION_HEADING } from './headings.ts';

/** The usual cautions, at the end of the head, for what was used on this client. */

const isNearEyes = (visit: VisitReckoned): boolean =>
  visit.bowls.some(({ name }) =>
    zonesOfBowl(visit, name).some((zone) => EYE.some((place) => zone.split(' ').includes(place))),
  );

const topicsOf = (view: HeadView): CautionTopic[] => {
  const { visits, client, on } = view;
  const stoods = visits.map(({ visit }) => visit);
  const portions = visits.flatMap(({ bowls }) => bowls.flatMap((bowl) => bowl.held));
  const kinds = new Set(portions.map(({ item }) => item?.kind));
  const oxidative = visits.some(({ bowls }) => bowls.some(isOxidative));
  const metal = client.entries.some(({ entry }) =>
    entry.facts.some(
      (fact) => fact.word === 'history' && fact.kinds.some(({ word }) => /^(henna|metallic)$/.test(word)),
    ),
  );
  const topics: (CautionTopic | false)[] = [
    oxidative && 'skin-test',
    kinds.has('lightener') && 'lightener',
    kinds.has('lightener') && 'persulphate',
    portions.some(({ role }) => role === 'developer') && 'peroxide',
    metal && 'metallic',
    (kinds.has('brow') || visits.some(isNearEyes)) && 'eyes',
    reactionsOf(client, stoods, salonOfHead(view).hours, on).length > 0 && 'reaction',
    oxidative && isUnder(LAW.eu.youngest, client, on) === true && 'under-16',
  ];
  return topics.filter((topic) => topic !== false);
};

/** The cautions as blocks of Markdown, those of findings too, each once; none when nothing was used that could hurt. */
export const cautionBlocks = (view: HeadView): string[] => {
  const found = view.findings.flatMap(({ caution: said }) => said ?? []);
  const said = [...topicsOf(view).map(caution), ...found].map((text) => text.replace(FIRST, '').trim());
  if (said.length === 0) return [];
  return [`## ${CAUTION_HEADING}`, [...new Set(said)].map((one) => `- ${escapeText(one)}`).join('\n'), FIRST];
};

import { isOxidative } from '../reckon/services.ts';
import { type CautionTopic, caution, FIRST } from '../trade/cautions.ts';
import { escapeText } from './escape.ts';
import type { HeadView } from './head-view.ts';
import { CAUTION_HEADING } from './headings.ts';

/** The usual cautions, at the end of the head, for what was used on this client. */

const topicsOf = ({ visits, client }: HeadView): CautionTopic[] => {
  const portions = visits.flatMap(({ bowls }) => bowls.flatMap((bowl) => bowl.portions));
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
    kinds.has('brow') && 'eyes',
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

import type { Looked } from '../../reckon/model.ts';
import type { Seen } from '../../records/schema/values.ts';
import { depthText } from '../say-numbers.ts';

/** What was seen at a look in a word or two, as a label: a stage, else a depth, else its words; plain text. */
export const seenInShort = ({ stage, depth, words }: Seen): string => {
  if (stage !== undefined) {
    const said = stage.to === undefined ? stage.stage : `${stage.stage} to ${stage.to}`;
    return stage.about ? `about ${said}` : said;
  }
  const tones = words.map(({ word }) => word);
  return [...(depth === undefined ? [] : [depthText(depth)]), ...tones].join(' ');
};

/** All that was seen at a look, each thing once. */
export const lookInShort = ({ seen }: Looked): string =>
  [...new Set(seen.map(seenInShort).filter((said) => said !== ''))].join(', ');

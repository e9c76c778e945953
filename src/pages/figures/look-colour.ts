import type { Seen } from '../../records/schema/values.ts';
import { stageSwatch, swatch } from '../../trade/swatch.ts';
import { type ToneFamily, toneFamily } from '../../trade/tone.ts';

const toneOf = ({ words }: Seen): ToneFamily | undefined =>
  words.map(({ word }) => toneFamily(word)).find((family) => family !== undefined);

/** A colour to draw what was seen with: by its stage, else by its depth and tone; undefined when it says neither. */
export const colourOf = (seen: Seen): string | undefined => {
  const { depth, stage } = seen;
  if (stage !== undefined) return stageSwatch(stage.to ?? stage.stage);
  return depth && swatch(((depth.to ?? depth.value) + depth.value) / 2, toneOf(seen));
};

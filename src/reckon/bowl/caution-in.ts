import { type CautionTopic, isTrueOf } from '../../trade/cautions.ts';
import type { BowlReckoned } from '../model.ts';
import { hasPeroxide, itemsIn } from './contents.ts';

/** Whether a caution is true of anything in a bowl. What is not on the shelf may be anything. */
const isTrueIn = (bowl: BowlReckoned, topic: CautionTopic): boolean => {
  const developed = hasPeroxide(bowl);
  return itemsIn(bowl).some(({ kind }) => kind !== undefined && isTrueOf(topic, { kind, developed }));
};

/** The first of some cautions that is true of what a bowl holds; `false` where none is, and nothing is said. */
export const cautionIn = (bowl: BowlReckoned, ...topics: readonly CautionTopic[]): CautionTopic | false =>
  topics.find((topic) => isTrueIn(bowl, topic)) ?? false;

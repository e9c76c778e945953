import { UNIT_WORDS } from '../../notation/words.ts';
import { zoneWord } from '../bind/seen.ts';
import type { Seen, Zone } from '../schema/values.ts';
import { amountText, depthText, stageText, wordsText } from './figures.ts';
import { zonesText } from './names.ts';
import { type Said, spaced } from './said.ts';

/** Whether a place has a name of the head's own. */
const isOwn = ({ zone }: Said<Zone>): boolean => !zone.includes(' ') && zoneWord(zone) === undefined;

/** Places before what is seen at them, up to one of the head's own, which is one where a figure or a tone follows. */
const parted = (zones: readonly Said<Zone>[]): [readonly Said<Zone>[], readonly Said<Zone>[]] => {
  const own = zones.findIndex(isOwn);
  return own < 0 ? [zones, []] : [zones.slice(0, own + 1), zones.slice(own + 1)];
};

/** Whether words stand before the figures: `grey` beside a share says nothing behind it, and a unit would be its own. */
const areFirst = ({ words, grey, depth }: Said<Seen>): boolean =>
  (grey !== undefined && words.some(({ word }) => word === 'grey')) ||
  (depth !== undefined && UNIT_WORDS.has(words[0]?.word ?? ''));

/** `roots 6`, `lengths 8 warm`, `temples 80% covered`, `sides 30% grey` */
export const seenText = (seen: Said<Seen>): string => {
  const { zones, depth, stage, grey, words } = seen;
  const [before, after] = parted(zones);
  const first = areFirst(seen);
  return spaced(
    zonesText(before),
    first && wordsText(words),
    depth && depthText(depth),
    stage && stageText(stage),
    grey && amountText(grey),
    grey !== undefined && words.length === 0 && 'grey',
    !first && wordsText(words),
    zonesText(after),
  );
};

/** Several things seen, each after a comma. */
export const seenList = (seen: readonly Said<Seen>[]): string => seen.map(seenText).join(', ');

/** `30% temples, 10% rest`: on a `grey` line a share needs no word, and stands before a depth. */
export const greyText = (parts: readonly Said<Seen>[]): string =>
  parts
    .map((part) => {
      const { zones, grey, depth, words } = part;
      if (grey === undefined) return seenText(part);
      const isShort = zones.length < 2 && depth === undefined && words.length === 0 && !zones.some(isOwn);
      return isShort
        ? spaced(amountText(grey), zonesText(zones))
        : spaced(zonesText(zones), amountText(grey), depth && depthText(depth), wordsText(words));
    })
    .join(', ');

/** What a test showed, in one group: depths last, since a figure before a word would begin a recipe. */
export const shownText = (seen: readonly Said<Seen>[]): string =>
  seen
    .map(({ zones, depth, stage, grey, words }) =>
      spaced(
        zones.map(({ zone }) => zone).join(' and '),
        stage && stageText(stage),
        wordsText(words),
        grey && amountText(grey),
        depth && depthText(depth),
      ),
    )
    .join(' ');

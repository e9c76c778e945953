import type { SalonSettings } from '../../journal/salon.ts';
import { HEAD_AREAS, type HeadArea, isHeadArea } from '../../trade/head-areas.ts';
import { type Along, GROUP_ZONES, isAlong, isGroup, OFF_SCALP_HAIR } from '../../trade/zones.ts';

/** The client's own left or right. */
export type Half = 'left' | 'right';

/** A zone of a note as areas of the scalp and places along the hair. */
export type HeadPlace = {
  readonly zone: string;
  /** None where the zone says only a place along the hair, or is not known to lie on the scalp. */
  readonly areas: readonly HeadArea[];
  readonly half: Half | undefined;
  readonly along: readonly Along[];
  /** `all`, `full-head` and what lies along the hair of the whole head. */
  readonly whole: boolean;
  /** Whether every word of it is placed; a head's own word without places is not. */
  readonly known: boolean;
};

/** A head's or a salon's own words, with the zones each covers. */
export type OwnZones = ReadonlyMap<string, readonly string[]>;

/** The own zones of a salon, and of the lines given besides. */
export const ownZones = (
  salon: SalonSettings,
  lines: readonly { readonly zone: { readonly name: string }; readonly zones: readonly { readonly zone: string }[] }[],
): OwnZones =>
  new Map(
    [...salon.zones.values(), ...lines].map(({ zone, zones }) => [zone.name, zones.map((one) => one.zone)] as const),
  );

type Draft = {
  areas: Set<HeadArea> | undefined;
  half: Half | undefined;
  along: Set<Along>;
  whole: boolean;
  known: boolean;
};

const SIDE: readonly HeadArea[] = ['temples', 'sides'];
const OFF_SCALP: ReadonlySet<string> = new Set(OFF_SCALP_HAIR);

const areasOfWord = (word: string, own: OwnZones, within: readonly string[]): readonly HeadArea[] | undefined => {
  if (isHeadArea(word)) return [word];
  if (OFF_SCALP.has(word)) return [];
  if (word === 'all' || word === 'full-head' || word === 'rest') return HEAD_AREAS;
  const zones = within.includes(word) ? undefined : own.get(word);
  if (zones !== undefined && zones.length > 0)
    return [...new Set(zones.flatMap((zone) => headPlace(zone, own, [...within, word]).areas))];
  const group = isGroup(word) ? GROUP_ZONES[word] : undefined;
  return group?.filter(isHeadArea);
};

const narrow = (draft: Draft, areas: readonly HeadArea[]): void => {
  const both = draft.areas === undefined ? undefined : areas.filter((area) => draft.areas?.has(area));
  // Two words that share nothing, such as `top crown`, are two places said together.
  draft.areas = new Set(both === undefined || both.length === 0 ? [...(draft.areas ?? []), ...areas] : both);
};

/** Where a zone of a note lies. `rest` is the whole scalp here: the caller knows what else was named. */
export const headPlace = (zone: string, own: OwnZones, within: readonly string[] = []): HeadPlace => {
  const draft: Draft = { areas: undefined, half: undefined, along: new Set(), whole: false, known: true };
  for (const word of zone.split(' ')) {
    if (isAlong(word)) draft.along.add(word);
    else if (word === 'left' || word === 'right') draft.half = word;
    else {
      const areas = areasOfWord(word, own, within);
      if (areas === undefined) draft.known = false;
      else {
        draft.whole ||= areas.length === HEAD_AREAS.length;
        narrow(draft, areas);
      }
    }
  }
  if (draft.areas === undefined && draft.half !== undefined && draft.known) draft.areas = new Set(SIDE);
  const onlyAlong = draft.areas === undefined && draft.known;
  return {
    zone,
    areas: HEAD_AREAS.filter((area) => draft.areas?.has(area)),
    half: draft.half,
    along: [...draft.along],
    whole: draft.whole || onlyAlong,
    known: draft.known,
  };
};

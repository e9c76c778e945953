/** Colours that hair passes through while it is lightened, least to most lifted. Past `white` the fibre itself is going. */
export const STAGES = [
  'black-brown',
  'brown',
  'red-brown',
  'red',
  'red-orange',
  'orange',
  'gold',
  'yellow',
  'pale-yellow',
  'white',
] as const;

export type Stage = (typeof STAGES)[number];

/**
 * The rough depth each stage is seen at. From `red` to `pale-yellow`: chart C of `undercoat.ts`, read the other way.
 * Below `red` by order alone, and `white` held at the last depth of that chart: choices, no source.
 */
const STAGE_DEPTHS: readonly number[] = [1, 2, 2.5, 3, 4, 5, 7, 9, 10, 10];

/** The same by half steps, each between two stages lying midway. */
const HALF_STEP_DEPTHS = STAGE_DEPTHS.flatMap((depth, i) => [depth, (depth + (STAGE_DEPTHS[i + 1] ?? depth)) / 2]);

function allPlaces(): ReadonlyMap<string, number> {
  const places = new Map<string, number>();
  for (const [i, a] of STAGES.entries()) {
    for (const [j, b] of STAGES.entries()) if (i !== j) places.set(`${a}-${b}`, (i + j) / 2);
  }
  // A stage's own name wins: `red-orange` and `pale-yellow` are stages, whatever two words they hold.
  for (const [i, stage] of STAGES.entries()) places.set(stage, i);
  return places;
}

const PLACES = allPlaces();

/** Whether a word is a stage, or two stages joined by a hyphen (the stage between them). Case-blind. */
export function isStage(word: string): boolean {
  return PLACES.has(word.toLowerCase());
}

/** Where a stage stands from 0 (`black-brown`) to 9 (`white`), in halves; undefined when the word is not a stage. */
export function stageIndex(word: string): number | undefined {
  return PLACES.get(word.toLowerCase());
}

/** The stage at a place: a half step is written as its two neighbours (`orange-gold`). Undefined outside the list. */
export function stageAt(place: number): string | undefined {
  const [low, high] = [STAGES[Math.floor(place)], STAGES[Math.ceil(place)]];
  if (low === undefined || high === undefined) return undefined;
  return low === high ? low : `${low}-${high}`;
}

/** The stage halfway between two, in either order: `orange`, `yellow` give `gold`. Undefined when one is not a stage. */
export function stageBetween(a: string, b: string): string | undefined {
  const [from, to] = [stageIndex(a), stageIndex(b)];
  // Halves only: a middle between two half steps is taken down to the less lifted half.
  return from === undefined || to === undefined ? undefined : stageAt(Math.floor(from + to) / 2);
}

/** Two stages of a span (`orange to yellow`) as places, least lifted first. Undefined when one is not a stage. */
export function stageSpan(a: string, b: string): { readonly from: number; readonly to: number } | undefined {
  const [from, to] = [stageIndex(a), stageIndex(b)];
  if (from === undefined || to === undefined) return undefined;
  return { from: Math.min(from, to), to: Math.max(from, to) };
}

/** The depth, 1 to 10, at which lightened hair shows a stage: rough, for drawing a course of lift and not for a promise. */
export function stageDepth(word: string): number | undefined {
  const place = stageIndex(word);
  return place === undefined ? undefined : HALF_STEP_DEPTHS[place * 2];
}

import { UNDERCOAT, type Undercoat } from './depth.ts';
import { stageDepth } from './stages.ts';
import type { ToneColour, ToneFamily } from './tone.ts';

/** The undercoat at a depth, one half way between two taken as the lighter; held at 1 and 10. */
export function undercoatAt(depth: number): Undercoat {
  return UNDERCOAT[Math.min(Math.max(Math.round(depth), 1), 10)] as Undercoat;
}

/** The colours that neutralise what hair shows at a depth, by chart C of `depth.ts`. */
export function neutralisersAt(depth: number): readonly ToneColour[] {
  return undercoatAt(depth).neutraliser.split('-') as ToneColour[];
}

/** The colours that neutralise a stage of lift; none when the word is not a stage. */
export function neutralisersOf(stage: string): readonly ToneColour[] {
  const depth = stageDepth(stage);
  return depth === undefined ? [] : neutralisersAt(depth);
}

/**
 * Whether a tone takes warmth out of hair at a depth. Wider than the chart, so that sound work passes: blue counts at every
 * depth, since ash is made with blue or with green and is used from orange to pale yellow, and green counts down from
 * orange (common practice, no source). What is left is plain: violet below gold-orange, green above orange.
 */
export function neutralisesAt(family: ToneFamily, depth: number): boolean {
  const chart: readonly string[] = neutralisersAt(depth);
  return family === 'blue' || chart.includes(family) || (family === 'green' && !chart.includes('violet'));
}

/** Whether a tone takes the warmth out of a stage of lift; undefined when the word is not a stage. */
export function neutralisesStage(family: ToneFamily, stage: string): boolean | undefined {
  const depth = stageDepth(stage);
  return depth === undefined ? undefined : neutralisesAt(family, depth);
}

export type Temperature = 'warm' | 'cool';

const TEMPERATURES: Readonly<Record<ToneFamily, Temperature | undefined>> = {
  yellow: 'warm',
  orange: 'warm',
  red: 'warm',
  warm: 'warm',
  violet: 'cool',
  blue: 'cool',
  green: 'cool',
  cool: 'cool',
  neutral: undefined,
};

/** Whether a tone family is warm or cool: trade usage, no source. Undefined for the neutral ones. */
export function temperatureOf(family: ToneFamily): Temperature | undefined {
  return TEMPERATURES[family];
}

import { formatHex, modeLab65, modeRgb, useMode } from 'culori/fn';
import { undercoatAt } from './neutralise.ts';
import { stageDepth } from './stages.ts';
import type { ToneFamily } from './tone.ts';

/** A colour in CIELAB under D65: lightness 0 to 100, green to red, blue to yellow. */
export type Lab = { readonly l: number; readonly a: number; readonly b: number };

useMode(modeRgb);
useMode(modeLab65);

const asColour = ({ l, a, b }: Lab) => ({ mode: 'lab65', l, a, b }) as const;

/** The nearest `#rrggbb` that a screen can show. */
export function hexOf(colour: Lab): string {
  return formatHex(asColour(colour));
}

/**
 * Colours to draw depths 1 to 10 with. No free table of hair by depth was found, so these are choices: black and dark
 * brown stand near the measured tresses of the Journal of Cosmetic Science 51(5), 2000, page 293, and the rest rise
 * evenly to a pale straw.
 */
const DEPTH_LABS: readonly Lab[] = [
  { l: 18, a: 0, b: -1 },
  { l: 20, a: 3, b: 3 },
  { l: 23, a: 4, b: 5 },
  { l: 28, a: 6, b: 8 },
  { l: 34, a: 8, b: 12 },
  { l: 41, a: 9, b: 17 },
  { l: 49, a: 9, b: 22 },
  { l: 58, a: 8, b: 25 },
  { l: 68, a: 5, b: 26 },
  { l: 78, a: 2, b: 22 },
];

/** How a tone moves a swatch: directions chosen to be told apart on a page, no source. */
const TONE_SHIFTS: Readonly<Record<ToneFamily, readonly [a: number, b: number]>> = {
  yellow: [0, 14],
  orange: [12, 12],
  red: [18, 2],
  violet: [6, -18],
  blue: [-5, -16],
  green: [-12, -4],
  neutral: [0, 0],
  warm: [5, 7],
  cool: [-3, -9],
};

/** Parts of yellow, red and blue in an undercoat as a move of the swatch: choices, no source. */
const WARMTH_SHIFTS = { yellow: [0, 9], red: [9, 2], blue: [-2, -3] } as const;

const depthLab = (depth: number): Lab => {
  const place = Math.min(Math.max(depth, 1), DEPTH_LABS.length) - 1;
  const [low, high] = [DEPTH_LABS[Math.floor(place)] as Lab, DEPTH_LABS[Math.ceil(place)] as Lab];
  const share = place - Math.floor(place);
  const mixed = (from: number, to: number): number => from + (to - from) * share;
  return { l: mixed(low.l, high.l), a: mixed(low.a, high.a), b: mixed(low.b, high.b) };
};

/** A colour to draw hair of a depth with, and of a tone where one is seen; depths are held at 1 and 10. For pages only. */
export function swatch(depth: number, tone?: ToneFamily): string {
  const { l, a, b } = depthLab(depth);
  const [red, yellow] = TONE_SHIFTS[tone ?? 'neutral'];
  return hexOf({ l, a: a + red, b: b + yellow });
}

/** A colour to draw a stage of lift with; undefined when the word is not a stage. For pages only. */
export function stageSwatch(stage: string): string | undefined {
  const depth = stageDepth(stage);
  if (depth === undefined) return undefined;
  const [yellow, red, blue] = undercoatAt(depth).parts;
  const { l, a, b } = depthLab(depth);
  const move = (axis: 0 | 1): number =>
    yellow * WARMTH_SHIFTS.yellow[axis] + red * WARMTH_SHIFTS.red[axis] + blue * WARMTH_SHIFTS.blue[axis];
  return hexOf({ l, a: a + move(0), b: b + move(1) });
}

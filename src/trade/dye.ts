import { type Kind, kindFacts } from './kinds.ts';

/** What shades without any dye are called. The trade's words; what else a range calls them is not known. */
const CLEAR: ReadonlySet<string> = new Set([
  'clear',
  'colourless',
  'colorless',
  'transparent',
  'transparente',
  'klar',
  'farblos',
  'incolore',
  'incolor',
]);

/** Whether a shade, by its name in small letters, holds no dye: it gives shine, or thins another shade. */
export function isClear(shade: string | undefined): boolean {
  return shade !== undefined && CLEAR.has(shade);
}

/**
 * Whether something of a kind, in a shade where it has one, brings dye: oxidative dyes, or direct ones. Common practice,
 * no source. What is not on the shelf may be anything, so it counts as dye.
 */
export function bringsDye(kind: Kind | undefined, shade: string | undefined): boolean {
  return kind === undefined || (kindFacts(kind).colours && !isClear(shade));
}

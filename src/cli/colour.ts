import type { Severity } from '../text/finding.ts';

/** Colours a text for a terminal, or leaves it as it is. Colour never stands alone: the word is always there too. */
export type Paint = Readonly<Record<Severity | 'strong' | 'quiet', (text: string) => string>>;

const CODES: Readonly<Record<keyof Paint, readonly [number, number]>> = {
  stop: [91, 39],
  fix: [33, 39],
  mind: [36, 39],
  strong: [1, 22],
  quiet: [2, 22],
};

/** Whether a stream takes colour: `NO_COLOR` forbids it, `FORCE_COLOR` asks for it, else a terminal does. */
const takesColour = (stream: { readonly isTTY?: boolean }): boolean => {
  const { NO_COLOR: no, FORCE_COLOR: force, TERM: term } = process.env;
  if (no !== undefined && no !== '') return false;
  if (force !== undefined && force !== '') return force !== '0';
  return stream.isTTY === true && term !== 'dumb';
};

/** The paint for a stream. */
export const paintFor = (stream: { readonly isTTY?: boolean }): Paint => {
  const coloured = takesColour(stream);
  const paint = (name: keyof Paint) => (text: string) =>
    coloured && text !== '' ? `\x1b[${CODES[name][0]}m${text}\x1b[${CODES[name][1]}m` : text;
  return {
    stop: paint('stop'),
    fix: paint('fix'),
    mind: paint('mind'),
    strong: paint('strong'),
    quiet: paint('quiet'),
  };
};

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

/** Each of the codes that paint: what is between two of them, and the codes, where a text is split by it. */
export const PAINT = new RegExp(`(\x1b\\[(?:${[...new Set(Object.values(CODES).flat())].join('|')})m)`);

/** Where a text is written. */
export type Stream = 'stdout' | 'stderr';

/** Whether a stream takes colour: `NO_COLOR` forbids it, `FORCE_COLOR` asks for it, else a terminal does. */
const takesColour = (stream: Stream): boolean => {
  const { NO_COLOR: no, FORCE_COLOR: force, TERM: term } = process.env;
  if (no !== undefined && no !== '') return false;
  if (force !== undefined && force !== '') return force !== '0';
  return process[stream].isTTY === true && term !== 'dumb';
};

/** The paint for a stream. */
export const paintFor = (stream: Stream): Paint => {
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

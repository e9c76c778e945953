import type { Part } from './grammar-rules.ts';

/**
 * Draws a grammar rule as a static SVG: a line runs from left to right through what may stand there. Rounded boxes are
 * tokens, square ones other rules, a branch is a choice, a line above skips, a line below comes round again.
 */

type Shape = {
  readonly width: number;
  /** How far it reaches above and below its line. */
  readonly up: number;
  readonly down: number;
  readonly draw: (x: number, y: number) => string[];
};

const LETTER = 8;
const PAD = 10;
const HALF = 14;
const GAP = 14;
const TURN = 8;

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const rail = (path: string): string => `<path d="${path}"/>`;
const across = (x: number, y: number, width: number): string[] => (width > 0 ? [rail(`M${x} ${y}h${width}`)] : []);

const box = (text: string, round: boolean): Shape => {
  const width = [...text].length * LETTER + 2 * PAD;
  return {
    width,
    up: HALF,
    down: HALF,
    draw: (x, y) => [
      `<rect x="${x}" y="${y - HALF}" width="${width}" height="${2 * HALF}" rx="${round ? HALF : 2}"/>`,
      `<text x="${x + width / 2}" y="${y + 4.5}">${escaped(text)}</text>`,
    ],
  };
};

const inSequence = (shapes: readonly Shape[]): Shape => ({
  width: shapes.reduce((sum, { width }) => sum + width, 0) + GAP * (shapes.length - 1),
  up: Math.max(...shapes.map(({ up }) => up)),
  down: Math.max(...shapes.map(({ down }) => down)),
  draw: (x, y) => {
    let at = x;
    return shapes.flatMap((shape, index) => {
      const join = index === 0 ? [] : across(at, y, GAP);
      at += index === 0 ? 0 : GAP;
      const drawn = shape.draw(at, y);
      at += shape.width;
      return [...join, ...drawn];
    });
  },
});

/** A branch line from the main line at `x` to the height `to`, and back to the main line at `end`. */
const branch = (x: number, end: number, y: number, to: number): string[] => {
  const turn = to > y ? TURN : -TURN;
  const far = to - y - 2 * turn;
  return [
    rail(`M${x} ${y}q${TURN} 0 ${TURN} ${turn}v${far}q0 ${turn} ${TURN} ${turn}`),
    rail(`M${end - 2 * TURN} ${to}q${TURN} 0 ${TURN} ${-turn}v${-far}q0 ${-turn} ${TURN} ${-turn}`),
  ];
};

const inChoice = (shapes: readonly Shape[]): Shape => {
  const inner = Math.max(...shapes.map(({ width }) => width));
  const width = inner + 4 * TURN;
  const offsets: number[] = [];
  let depth = 0;
  for (const [index, { up, down }] of shapes.entries()) {
    depth += index === 0 ? 0 : up + TURN;
    offsets.push(depth);
    depth += down;
  }
  return {
    width,
    up: shapes[0]?.up ?? 0,
    down: depth,
    draw: (x, y) =>
      shapes.flatMap((shape, index) => {
        const level = y + (offsets[index] ?? 0);
        const start = x + 2 * TURN;
        const drawn = shape.draw(start, level);
        const after = across(start + shape.width, level, inner - shape.width);
        const ends =
          index === 0
            ? [...across(x, y, 2 * TURN), ...across(x + width - 2 * TURN, y, 2 * TURN)]
            : branch(x, x + width, y, level);
        return [...ends, ...drawn, ...after];
      }),
  };
};

/** A line above (`skips`) or below (`comes round`) what it passes by. */
const bypassed = (shape: Shape, skips: boolean): Shape => {
  const width = shape.width + 4 * TURN;
  const reach = (skips ? shape.up : shape.down) + 2 * TURN;
  return {
    width,
    up: skips ? reach : shape.up,
    down: skips ? shape.down : reach,
    draw: (x, y) => {
      const level = skips ? y - reach + TURN / 2 : y + reach - TURN / 2;
      return [
        ...across(x, y, 2 * TURN),
        ...shape.draw(x + 2 * TURN, y),
        ...across(x + width - 2 * TURN, y, 2 * TURN),
        ...(skips
          ? [...branch(x, x + width, y, level), ...across(x + 2 * TURN, level, shape.width)]
          : [rail(round(x + 2 * TURN, x + width - 2 * TURN, y, level))]),
      ];
    },
  };
};

/** The line that leaves behind what it repeats, and comes back before it. */
const round = (start: number, end: number, y: number, level: number): string => {
  const far = level - y - 2 * TURN;
  return `M${end} ${y}q${TURN} 0 ${TURN} ${TURN}v${far}q0 ${TURN} ${-TURN} ${TURN}H${start}q${-TURN} 0 ${-TURN} ${-TURN}v${-far}q0 ${-TURN} ${TURN} ${-TURN}`;
};

const shapeOf = (part: Part): Shape => {
  switch (part.kind) {
    case 'token':
    case 'text':
      return box(part.kind === 'token' ? part.name.toUpperCase() : part.text, true);
    case 'rule':
      return box(part.name, false);
    case 'option':
      return bypassed(shapeOf(part.part), true);
    case 'repeat':
      return bypassed(bypassed(shapeOf(part.part), false), true);
    case 'choice':
      return inChoice(part.parts.map(shapeOf));
    case 'sequence':
      return inSequence(part.parts.map(shapeOf));
  }
};

const STYLE = `path{fill:none;stroke:#55606b;stroke-width:1.5}rect{fill:#f4f1ea;stroke:#55606b}text{font:13px ui-monospace,monospace;fill:#1d2730;text-anchor:middle}@media (prefers-color-scheme:dark){path,rect{stroke:#9aa7b2}rect{fill:#27313a}text{fill:#e8ecef}}`;

/** One rule as an SVG document. `says` describes it to whoever does not see it. */
export const drawRails = (name: string, says: string, part: Part): string => {
  const shape = shapeOf(part);
  const margin = 12;
  const lead = 20;
  const width = shape.width + 2 * (margin + lead);
  const height = Math.ceil(shape.up + shape.down) + 2 * margin;
  const y = margin + Math.ceil(shape.up);
  const end = margin + lead + shape.width;
  const marks = [rail(`M${margin} ${y - 6}v12M${end + lead} ${y - 6}v12`)];
  const lines = [...across(margin, y, lead), ...shape.draw(margin + lead, y), ...across(end, y, lead), ...marks];
  // Boxes come after the lines, so that no line crosses a box.
  const paths = lines.filter((line) => line.startsWith('<path'));
  const boxes = lines.filter((line) => !line.startsWith('<path'));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="name says">`,
    `<title id="name">${escaped(name)}</title>`,
    `<desc id="says">${escaped(says)}</desc>`,
    `<style>${STYLE}</style>`,
    ...paths,
    ...boxes,
    '</svg>',
    '',
  ].join('\n');
};

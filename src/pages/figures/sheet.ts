/** Where figures go while a page is put together as Markdown. */

/** Draws a figure under an id that is its own on the page; undefined when there is nothing to draw. */
export type Draw = (id: string) => string | undefined;

/** Takes figures and gives the blocks of Markdown that stand for them: none on a page that has no figures. */
export type Sheet = (draws: readonly Draw[]) => string[];

/** A page of text alone. */
export const noFigures: Sheet = () => [];

/** The word that opens a block standing for figures. A note opens no block, so none can be forged. */
export const FIGURE_WORD = 'bowlbook-figure';

/** Keeps the figures of a page beside its Markdown; each block holds the numbers of its figures. */
export const figureSheet = (): { readonly sheet: Sheet; readonly figures: readonly string[] } => {
  const figures: string[] = [];
  const sheet: Sheet = (draws) => {
    const numbers = draws.flatMap((draw) => {
      const drawn = draw(`figure-${figures.length + 1}`);
      return drawn === undefined ? [] : [figures.push(drawn) - 1];
    });
    return numbers.length === 0 ? [] : [`\`\`\`${FIGURE_WORD}\n${numbers.join(' ')}\n\`\`\``];
  };
  return { sheet, figures };
};

/** The figures of a block beside each other, or none where the block is not one of `figureSheet`. */
export const figuresAt = (figures: readonly string[], numbers: string): string => {
  const drawn = numbers.split(/\s+/).flatMap((number) => (/^\d+$/.test(number) ? (figures[Number(number)] ?? []) : []));
  return drawn.length < 2 ? drawn.join('') : `<div class="beside">${drawn.join('')}</div>\n`;
};

const BLOCK = new RegExp(`^\`\`\`${FIGURE_WORD}\\n([\\d ]+)\\n`, 'gmu');

/** All figures that the blocks of some Markdown stand for, one after another: with the Markdown they say all that is drawn. */
export const figuresIn = (markdown: string, figures: readonly string[]): string =>
  [...markdown.matchAll(BLOCK)].map(([, numbers = '']) => figuresAt(figures, numbers)).join('');

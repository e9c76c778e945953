import type { Line } from './span.ts';

/**
 * A sentence that names lines of the notes: its words, and between each two of them a line. Where a line stands is put in
 * when the sentence is printed, so that it stays true when lines are typed above.
 */
export type Citing = { readonly words: readonly string[]; readonly lines: readonly Line[] };

/** What is said of the notes: plain words, or words that name lines. */
export type Sentence = string | Citing;

/** A line by its name, to be put into a sentence. */
export const lineName = (line: Line): Citing => ({ words: ['', ''], lines: [line] });

/** Tag of a template that names lines; plain text where none is put in. */
export const sentence = (texts: TemplateStringsArray, ...parts: readonly (Sentence | number)[]): Sentence => {
  const words = [texts[0] ?? ''];
  const lines: Line[] = [];
  const add = (text: string): void => {
    words.push((words.pop() ?? '') + text);
  };
  for (const [index, part] of parts.entries()) {
    if (typeof part === 'object') {
      add(part.words[0] ?? '');
      words.push(...part.words.slice(1));
      lines.push(...part.lines);
    } else add(String(part));
    add(texts[index + 1] ?? '');
  }
  return lines.length === 0 ? words.join('') : { words, lines };
};

/** A sentence in full, each line by the name that it is given. */
export const written = (said: Sentence, nameOf: (line: Line) => string): string =>
  typeof said === 'string'
    ? said
    : said.words.map((text, index) => (index === 0 ? text : nameOf(said.lines[index - 1] as Line) + text)).join('');

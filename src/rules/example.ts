/** The day on which the examples are checked: the end of the year they tell of. */
export const EXAMPLE_DAY = '2026-12-31';

/** An example as text to compile, and where its carets point: a line from 0, first character and one past the last. */
export type Example = {
  readonly lines: readonly string[];
  readonly carets: { readonly line: number; readonly from: number; readonly to: number } | undefined;
};

const CARETS = /^ *\^+ *$/;

/** The lines of an example without the indentation they share and without blank ones at either end, carets kept. */
export const exampleLines = (example: string): string[] => {
  const lines = example.split('\n');
  while (lines.length > 0 && lines[0]?.trim() === '') lines.shift();
  while (lines.length > 0 && lines.at(-1)?.trim() === '') lines.pop();
  const filled = lines.filter((line) => line.trim() !== '' && !CARETS.test(line));
  const shared = Math.min(...filled.map((line) => line.length - line.trimStart().length));
  return lines.map((line) => line.slice(Math.min(shared, line.length)));
};

/** Parts an example into the note and its carets, which mark the line above them. */
export const readExample = (example: string): Example => {
  const kept: string[] = [];
  let carets: Example['carets'];
  for (const line of exampleLines(example)) {
    if (CARETS.test(line)) carets = { line: kept.length - 1, from: line.indexOf('^'), to: line.lastIndexOf('^') + 1 };
    else kept.push(line);
  }
  return { lines: kept, carets };
};

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Source } from './imports.ts';
import { circles, unasked } from './rooms.ts';

const filesOf = (root: string): Source[] =>
  readdirSync(root, { recursive: true, encoding: 'utf8' })
    .map((name) => `${root}/${name.replaceAll('\\', '/')}`)
    .filter((path) => /\.(?:ts|mjs)$/u.test(path))
    .sort()
    .map((path) => ({ path, text: readFileSync(path, 'utf8') }));

const src = filesOf('src');
const scripts = filesOf('.scripts');
const ROOTS = ['src/cli/main.ts', 'src/cli/start.ts', ...scripts.map(({ path }) => path)];

/** What no command asks for and stays all the same, each with its reason. */
const SEAMS: Readonly<Record<string, string>> = {
  'src/journal/name-index.ts: createNameIndex': 'going to a name and giving it another: for an editor server',
  'src/journal/thing-at.ts: thingAt': 'what is pointed at in a file: for an editor server',
  'src/pages/on-file.ts: CLIENT_PARTS': 'the test of the card holds every word of a client to a part by it',
  'src/records/entry-json.ts: entryJson': 'what grammar/schema/ describes: for whoever reads records from outside',
  'src/records/print-entry.ts: printEntry': 'a whole entry made from a record: commands print lines of one so far',
  'src/trade/cautions.ts: CAUTION_TOPICS': 'tests go through every caution by it, and hold its words to the facts',
};

describe('the rooms', () => {
  test('no file imports itself by way of others, types counted', () => {
    expect(circles(src)).toEqual([]);
  });

  test('whatever src offers is asked for by a command or a script, or is a seam with a reason', () => {
    expect(unasked([...src, ...scripts], ROOTS)).toEqual(Object.keys(SEAMS));
  });
});

describe('the checks see what they are for', () => {
  const file = (path: string, text: string): Source => ({ path, text });

  test('a circle of types', () => {
    const a = file('src/a/a.ts', "import type { B } from './b.ts';");
    const b = file('src/a/b.ts', "import { c } from '../c/c.ts';");
    const c = file('src/c/c.ts', "export type { A } from '../a/a.ts';");
    expect(circles([a, b, c])).toEqual(['src/a/a.ts > src/a/b.ts > src/c/c.ts > src/a/a.ts']);
    expect(circles([a, b])).toEqual([]);
  });

  test('an export that nothing asks for, and one that only such a file asks for', () => {
    const all = [
      file('src/cli/main.ts', "import { run } from '../a/a.ts';\nexport const main = run;"),
      file('src/a/a.ts', 'export const run = 1;\nexport const own = 2;\nexport function lost() {}\nconst x = own;'),
      file('src/a/b.ts', "import { mine } from './c.ts';\nexport const b = mine;"),
      file('src/a/c.ts', 'export const mine = 1;'),
    ];
    expect(unasked(all, ['src/cli/main.ts'])).toEqual(['src/a/a.ts: lost', 'src/a/b.ts: b', 'src/a/c.ts: mine']);
  });

  test('what is imported late, as a whole, or passed on is asked for', () => {
    const all = [
      file('src/cli/main.ts', "const { a } = await import('../a/a.ts');\nimport * as b from '../a/b.ts';"),
      file('src/a/a.ts', "export { c } from './c.ts';\nexport const a = 1;"),
      file('src/a/b.ts', 'export const b = 1;'),
      file('src/a/c.ts', 'export const c = 1;'),
    ];
    expect(unasked(all, ['src/cli/main.ts'])).toEqual([]);
  });
});

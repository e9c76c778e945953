import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Source } from './imports.ts';
import { allowances, topLevelName } from './layout.ts';
import {
  confinementOffences,
  DOOR,
  directionOffences,
  doorOffences,
  leakOffences,
  PRINT,
  printOffences,
} from './offences.ts';

const sources: readonly Source[] = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((name) => `src/${name.replaceAll('\\', '/')}`)
  .filter((path) => path.endsWith('.ts'))
  .sort()
  .map((path) => ({ path, text: readFileSync(path, 'utf8') }));

describe('the source keeps its layout', () => {
  test('there is source to read', () => {
    expect(sources.length).toBeGreaterThan(0);
  });

  test('no folder imports against the dependency table', () => {
    expect(sources.flatMap(directionOffences)).toEqual([]);
  });

  test('every folder of the table is there', () => {
    const there = new Set(sources.map(({ path }) => path.split('/')[1]));
    expect(Object.keys(allowances).filter((folder) => !there.has(folder))).toEqual([]);
  });

  test('packages and built-ins stay in the files they are confined to', () => {
    expect(sources.flatMap(confinementOffences)).toEqual([]);
  });

  test('the disk is changed through one door', () => {
    expect(sources.map(({ path }) => path)).toContain(DOOR);
    expect(sources.flatMap(doorOffences)).toEqual([]);
  });

  test('the terminal is written to through one door', () => {
    expect(sources.map(({ path }) => path)).toContain(PRINT);
    expect(sources.flatMap(printOffences)).toEqual([]);
  });

  test('no clock, locale or chance outside the command line', () => {
    expect(sources.flatMap(leakOffences)).toEqual([]);
  });
});

describe('the layout checks see what they are for', () => {
  test('an upward import is named with the allowed list', () => {
    const text = "import {\n  a,\n  b,\n} from '../rules/run.ts';";
    expect(directionOffences({ path: 'src/reckon/visit.ts', text })).toEqual([
      'src/reckon/visit.ts: imports ../rules/run.ts; reckon may import reckon, text, journal, records, trade',
    ]);
  });

  test('type-only imports count, except where the table lets types through', () => {
    const text = "import type { Visit } from '../records/visit.ts';";
    expect(directionOffences({ path: 'src/trade/lift.ts', text })).toHaveLength(1);
    expect(directionOffences({ path: 'src/rules/off-range.ts', text })).toEqual([]);
    expect(directionOffences({ path: 'src/rules/off-range.ts', text: text.replace(' type', '') })).toHaveLength(1);
  });

  test.each([
    "export { run } from '../rules/run.ts';",
    "import '../rules/run.ts';",
    "const run = await import('../rules/run.ts');",
    "type Run = import('../rules/run.ts').Run;",
    'const run = await import(name);',
    "import manifest from '../../package.json' with { type: 'json' };",
  ])('an import in any form is seen: %s', (text) => {
    expect(directionOffences({ path: 'src/journal/store.ts', text })).toHaveLength(1);
  });

  test('text, the own folder and comments are free', () => {
    const text = "import { a } from '../text/span.ts';\nimport { b } from './read.ts';\n// import '../cli/main.ts';";
    expect(directionOffences({ path: 'src/journal/store.ts', text })).toEqual([]);
  });

  test.each([
    "import { writeFileSync } from 'node:fs';",
    "import { readFileSync, rmSync as away } from 'fs';",
    "import { openSync } from 'node:fs';",
    "import fs from 'node:fs';",
    "import * as fs from 'node:fs';",
    "import { readFile } from 'node:fs/promises';",
    "export { rmSync } from 'node:fs';",
    "export * from 'node:fs';",
    "const fs = await import('node:fs');",
    "const fs = process.getBuiltinModule('fs');",
    "import { spawnSync } from 'node:child_process';",
    "const { rmSync } = createRequire(import.meta.url)('x'), y = require('fs');",
  ])('another door is seen: %s', (text) => {
    expect(doorOffences({ path: 'src/cli/check.ts', text })).not.toEqual([]);
    expect(doorOffences({ path: DOOR, text })).toEqual([]);
  });

  test('looking at the disk is no door', () => {
    const text = "import {\n  readFileSync,\n  type Stats,\n} from 'node:fs';\n// import { rmSync } from 'node:fs';";
    expect(doorOffences({ path: 'src/cli/check.ts', text })).toEqual([]);
  });

  test.each([
    'process.stdout.write(text);',
    'process . stderr?.write(text);',
    "process['stdout'].write(text);",
    'const { stdout } = process;',
    'const { stderr: out, argv } = process;',
    'console.log(text);',
    'new WriteStream(1).write(text);',
    'process.emitWarning(text);',
  ])('writing to the terminal past the door is seen: %s', (text) => {
    expect(printOffences({ path: 'src/cli/check.ts', text })).toHaveLength(1);
    expect(printOffences({ path: PRINT, text })).toEqual([]);
    expect(printOffences({ path: 'src/cli/check.ts', text: `// ${text}\nconst { env } = process;` })).toEqual([]);
  });

  test('a file outside the table is an offence', () => {
    expect(directionOffences({ path: 'src/misc/odd.ts', text: '' })).toHaveLength(1);
  });

  test.each([
    ['node:fs', 'src/journal/store.ts', 'src/journal/find.ts'],
    ['node:fs/promises', 'src/pages/html.ts', 'src/cli/pages.ts'],
    ['chevrotain', 'src/records/bind/bowl.ts', 'src/notation/lexer.ts'],
    ['commander', 'src/rules/run.ts', 'src/cli/main.ts'],
    ['chokidar', 'src/journal/store.ts', 'src/journal/watch.ts'],
    ['zod', 'src/records/bind/bowl.ts', 'src/records/schema/bowl.ts'],
    ['markdown-it', 'src/exchange/csv.ts', 'src/pages/html.ts'],
  ])('%s is confined: not in %s, but in %s', (specifier, outside, inside) => {
    const text = `import { x } from '${specifier}';`;
    expect(confinementOffences({ path: outside, text })).toHaveLength(1);
    expect(confinementOffences({ path: inside, text })).toEqual([]);
  });

  test.each([
    'const t = Date.now();',
    'const d = new Date(0);',
    'const f = new Intl.NumberFormat();',
    `const s = \`on \${n.toLocaleString()}\`;`,
    'names.sort((a, b) => a.localeCompare(b));',
    'const r = Math.random();',
  ])('a leak is seen outside the command line only: %s', (text) => {
    expect(leakOffences({ path: 'src/reckon/ahead/due.ts', text })).toHaveLength(1);
    expect(leakOffences({ path: 'src/cli/check.ts', text })).toEqual([]);
    expect(leakOffences({ path: 'src/reckon/ahead/due.ts', text: `// ${text}\n/* ${text} */` })).toEqual([]);
  });
});

/** The names at the top: of tracked files in a checkout, else of the folder without what is installed or built. */
function topLevelNames(): readonly string[] {
  if (existsSync('.git')) {
    const tracked = execFileSync('git', ['ls-files', '-z'], { encoding: 'utf8' }).split('\0').filter(Boolean);
    return [...new Set(tracked.map((path) => path.split('/')[0] ?? path))];
  }
  const made = ['node_modules', 'dist', 'coverage', 'reports'];
  return readdirSync('.').filter((name) => !made.includes(name));
}

test('the top of the repository holds the agreed names only', () => {
  expect(topLevelNames().filter((name) => !topLevelName.test(name))).toEqual([]);
});

test('the agreed names leave out strays', () => {
  const strays = ['notes.md', 'utils', 'dist', 'node_modules', 'package.json.orig', 'TODO'];
  expect(strays.filter((name) => topLevelName.test(name))).toEqual([]);
});

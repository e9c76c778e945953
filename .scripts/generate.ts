// npm run generate: writes every generated file, and takes out those that nothing generates any more.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { grammarFiles, ruleFiles } from './grammar-files.ts';

/** Folders that hold generated files and nothing else. */
const WHOLE = ['grammar/schema', 'grammar/diagrams'];

const read = (path: string): string | undefined => {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
};

let changed = 0;
const write = (files: ReadonlyMap<string, string>): void => {
  for (const [path, text] of files) {
    if (read(path) === text) continue;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    console.log(`wrote ${path}`);
    changed++;
  }
};

const rules = ruleFiles();
const stale = [...rules].some(([path, text]) => read(path) !== text);
write(rules);
// What is made through them is made by a program that has the new ones.
if (stale) {
  const { status } = spawnSync(process.execPath, ['.scripts/run.mjs', '.scripts/generate.ts'], { stdio: 'inherit' });
  process.exitCode = status ?? 1;
} else {
  const files = grammarFiles();
  write(files);
  for (const folder of WHOLE)
    for (const name of readdirSync(folder)) {
      const path = join(folder, name).replaceAll('\\', '/');
      if (files.has(path)) continue;
      rmSync(path);
      console.log(`took out ${path}`);
      changed++;
    }
  console.log(changed === 0 ? 'Every generated file is up to date.' : `${changed} files changed.`);
}

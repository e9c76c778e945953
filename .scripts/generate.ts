// npm run generate: writes every generated file, and takes out those that nothing generates any more.
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
if (stale) console.log('The list of rules has changed: run npm run generate once more.');
else {
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

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { load as loadJsYaml } from 'js-yaml';
import MarkdownIt from 'markdown-it';
import { parse as parseYaml } from 'yaml';

/** What the check is held against: each reads the files of a folder and does one thing with every one of them. */
const readEach = (folder: string, ending: string, work: (text: string) => unknown): number => {
  let kept = 0;
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()) {
    if (!name.endsWith(ending)) continue;
    // What comes out is counted, so that no work is left undone as useless.
    if (work(readFileSync(join(folder, name), 'utf8')) !== undefined) kept++;
  }
  return kept;
};

/** The jobs by name: `folder` is the journal, `facts` the same facts in another notation. */
export const JOBS: Readonly<Record<string, (folder: string, facts: string) => number>> = {
  'read and split': (folder) => readEach(folder, '.bowl', (text) => text.split('\n').length),
  'JSON.parse, same facts': (_folder, facts) => readEach(facts, '.json', (text) => JSON.parse(text)),
  'js-yaml, same facts': (_folder, facts) => readEach(facts, '.yaml', (text) => loadJsYaml(text)),
  'yaml, same facts': (_folder, facts) => readEach(facts, '.yaml', (text) => parseYaml(text, { logLevel: 'error' })),
  'markdown-it, same bytes': (folder) => {
    const markdown = new MarkdownIt();
    return readEach(folder, '.bowl', (text) => markdown.parse(text, {}));
  },
};

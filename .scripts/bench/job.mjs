// One job that the check is held against, alone in its process: node .scripts/bench/job.mjs NAME JOURNAL FACTS
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const [name = '', journal = '', facts = ''] = process.argv.slice(2);

/** @type {(folder: string, ending: string, work: (text: string) => unknown) => number} */
const readEach = (folder, ending, work) => {
  let kept = 0;
  for (const path of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()) {
    if (!path.endsWith(ending)) continue;
    // What comes out is counted, so that no work is left undone as useless.
    if (work(readFileSync(join(folder, path), 'utf8')) !== undefined) kept++;
  }
  return kept;
};

// Each brings in its own library and no other's, so that what it took is its own.
/** @type {Record<string, () => Promise<number>>} */
const JOBS = {
  'read and split': async () => readEach(journal, '.bowl', (text) => text.split('\n').length),
  'JSON.parse': async () => readEach(facts, '.json', (text) => JSON.parse(text)),
  'js-yaml': async () => {
    const { load } = await import('js-yaml');
    return readEach(facts, '.yaml', (text) => load(text));
  },
  yaml: async () => {
    const { parse } = await import('yaml');
    return readEach(facts, '.yaml', (text) => parse(text, { logLevel: 'error' }));
  },
  'markdown-it': async () => {
    const { default: MarkdownIt } = await import('markdown-it');
    const markdown = new MarkdownIt();
    return readEach(journal, '.bowl', (text) => markdown.parse(text, {}));
  },
};

const job = JOBS[name];
if (job === undefined) throw new Error(`there is no job ${name}`);
if ((await job()) === 0) throw new Error(`${name} found no file`);

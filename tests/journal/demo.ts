import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readSource } from '../../src/journal/source.ts';

const ROOT = 'journals/harbour-row';

/** The files of the demo journal, read. */
export const DEMO = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.bowl'))
  .sort()
  .map((path) => readSource(path, readFileSync(join(ROOT, path))));

#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';
import { optimiseLater } from './optimise.ts';

/** The file of the program, beside this one; the build puts its name here. */
declare const PROGRAM: string;

const program = fileURLToPath(new URL(PROGRAM, import.meta.url));

/** What Node made of the program at the build; it is made anew by a Node of another version, and where it is missing. */
const compiled = (): Buffer | undefined => {
  try {
    return readFileSync(`${program}.compiled`);
  } catch {
    return undefined;
  }
};

const cachedData = compiled();
const script = new Script(readFileSync(program, 'utf8'), { filename: PROGRAM, ...(cachedData && { cachedData }) });
// Not before: what Node made of the program is refused where flags differ from those at the build.
optimiseLater();
script.runInThisContext()(createRequire(program), {});

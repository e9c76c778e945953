#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';

/** The file of the program, beside this one; the build puts its name here. */
declare const PROGRAM: string;

// What is read stays to the end, so collections free little of it; left alone, V8 lets as much garbage pile up beside it.
setFlagsFromString('--heap-growing-percent=30');

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
const script = new Script(readFileSync(program, 'latin1'), { filename: program, ...(cachedData && { cachedData }) });
script.runInThisContext()(createRequire(program), {});

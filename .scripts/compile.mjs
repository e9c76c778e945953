// Keeps what Node makes of the program when it runs, so that later runs need not make it again: node compile.mjs PROGRAM
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, resolve } from 'node:path';
import { Script } from 'node:vm';

const program = resolve(process.argv[2] ?? '');
// What is kept holds this name, which then stands in every stack trace: never the path of the build. It is copied letter by
// letter, because a name cut out of a path keeps that path in memory, and so in what is kept.
const filename = Buffer.from(basename(program)).toString();
const script = new Script(readFileSync(program, 'utf8'), { filename });

// Whatever a command calls is compiled by then, and nothing else.
const COMMANDS = [
  ['check', 'journals/harbour-row'],
  ['card', 'orla-finch', 'journals/harbour-row'],
  ['prep', 'orla-finch', 'journals/harbour-row'],
  ['clients', 'journals/harbour-row'],
  ['mix', '40 clay + 20vol 1:2'],
];

const write = process.stdout.write;
process.stdout.write = () => true;
for (const command of COMMANDS) {
  process.argv = [process.execPath, program, ...command];
  await script.runInThisContext()(createRequire(program), {}).ended;
  if (Number(process.exitCode) > 1) throw new Error(`${command.join(' ')} ended with ${process.exitCode}`);
}
process.stdout.write = write;
process.exitCode = 0;
writeFileSync(`${program}.compiled.new`, script.createCachedData());
renameSync(`${program}.compiled.new`, `${program}.compiled`);

// npm run thresholds [-- PATH…]: what the tests reach, and what they would notice, against the bars of vitest.config.ts and
// .stryker.config.json. PATH is a file or a folder of src/trade, src/reckon or src/rules, held to the tests of its room;
// without one it is all of them, held to every test.
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';

const PATHS = process.argv.slice(2);

/** @param {string} path */
const glob = (path) => (statSync(path).isDirectory() ? `${path.replace(/\/$/u, '')}/**/*.ts` : path);

/** @param {readonly string[]} args */
const run = (args) => {
  const began = Date.now();
  const { status } = spawnSync('npx', args, { stdio: 'inherit' });
  console.log(`${args.slice(0, 2).join(' ')}: ${((Date.now() - began) / 1000).toFixed(0)} s`);
  return status ?? 1;
};

const asked = PATHS.map(glob);
const rooms = [...new Set(PATHS.map((path) => `tests/${path.split('/')[1]}`))];
const reached = run([
  'vitest',
  'run',
  '--reporter=dot',
  '--coverage',
  ...asked.map((path) => `--coverage.include=${path}`),
  ...rooms,
]);
const noticed = run([
  'stryker',
  'run',
  '.stryker.config.json',
  ...(asked.length > 0 ? ['--mutate', asked.join(',')] : []),
]);
process.exitCode = reached || noticed;

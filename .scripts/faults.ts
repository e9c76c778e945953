// Brings about every state that notes and pages are known to come into under a watcher, with the system's events and
// without, and holds all pages and findings against a cold build: npm run faults -- [--only WORDS] [--at-once 6].
// Exit code 1 on a difference.
import { parseArgs } from 'node:util';
import { type State, tryState } from './faults/place.ts';
import { STATES } from './faults/states.ts';

const { values } = parseArgs({
  options: { only: { type: 'string', default: '' }, 'at-once': { type: 'string', default: '6' } },
});

const start = performance.now();
const states = STATES.filter(({ name }) => name.includes(values.only));
const runs = states.flatMap((state) => [true, false].map((events) => ({ state, events })));
const came = new Map<State, Map<boolean, string | undefined>>(states.map((state) => [state, new Map()]));

let next = 0;
const work = async (): Promise<void> => {
  for (let run = runs[next++]; run !== undefined; run = runs[next++]) {
    const { state, events } = run;
    came.get(state)?.set(events, await tryState(state, events));
    process.stderr.write(`${next} of ${runs.length}\r`);
  }
};
await Promise.all(Array.from({ length: Number(values['at-once']) }, work));

const widest = Math.max(...states.map(({ name }) => name.length));
const differences: string[] = [];
process.stdout.write(`${'state'.padEnd(widest)}  events    none\n`);
for (const [{ name }, ways] of came) {
  const said = [true, false].map((events) => (ways.get(events) === undefined ? 'as cold ' : 'DIFFERS '));
  process.stdout.write(`${name.padEnd(widest)}  ${said.join('  ')}\n`);
  for (const [events, why] of ways)
    if (why !== undefined) differences.push(`${name}, ${events ? 'with' : 'without'} events: ${why}`);
}
for (const one of differences) process.stdout.write(`${one}\n`);
process.stdout.write(
  `${states.length} states, each in 2 ways, in ${Math.round((performance.now() - start) / 1_000)} s: ${differences.length} differ\n`,
);
process.exitCode = differences.length > 0 || states.length === 0 ? 1 : 0;

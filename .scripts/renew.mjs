// npm run renew: writes everything that is expected of the program anew, for a person to read the difference and judge.
import { spawnSync } from 'node:child_process';

/** @param {string} command @param {readonly string[]} args */
const run = (command, args) => {
  const { status } = spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, UPDATE: '1' } });
  if (status !== 0) process.exit(status ?? 1);
};

run(process.execPath, ['.scripts/run.mjs', '.scripts/generate.ts']);
run('npx', ['vitest', 'run', '--reporter=dot', 'tests/rules/messages.test.ts', 'tests/examples']);

// Shows the demo journal: what the check says of it, then one client's card.
import { spawnSync } from 'node:child_process';

const journal = 'journals/harbour-row';
const client = 'wren-abbott';

/**
 * Prints the command line, runs it, and ends the demo when the exit code is none of `expected`.
 * @param {string[]} words the words after `node dist/bowlbook.js`
 * @param {number[]} expected exit codes that are part of the show
 */
function show(words, expected) {
  const args = ['dist/bowlbook.js', ...words];
  console.log(`\n$ node ${args.join(' ')}\n`);
  const { status, signal, error } = spawnSync(process.execPath, args, { stdio: 'inherit' });
  if (error) throw error;
  if (status === null || !expected.includes(status)) {
    console.error(`The demo stops here: exit ${status ?? signal}.`);
    process.exit(status || 2);
  }
}

// The journal holds a few honest mistakes, so the check is expected to find something (exit 1).
show(['check', journal], [0, 1]);
show(['card', client, journal], [0]);

// Shows the demo journal: what the check says of it, then one client's card.
import { spawnSync } from 'node:child_process';

const journal = 'journals/harbour-row';
const client = 'wren-abbott';
// The demo has a day of its own, so that it looks the same on every day.
const day = ['--on', '2026-11-25'];

/**
 * Prints what is shown and the command line, runs it, and ends the demo when the exit code is none of `expected`.
 * @param {string} title what the command shows
 * @param {string[]} words the words after `node dist/bowlbook.js`
 * @param {number[]} expected exit codes that are part of the show
 */
function show(title, words, expected) {
  const args = ['dist/bowlbook.js', ...words];
  console.log(`\n${'='.repeat(title.length)}\n${title}\n${'='.repeat(title.length)}\n$ node ${args.join(' ')}\n`);
  const { status, signal, error } = spawnSync(process.execPath, args, { stdio: 'inherit' });
  if (error) throw error;
  if (status === null || !expected.includes(status)) {
    console.error(`The demo stops here: exit ${status ?? signal}.`);
    process.exit(status || 2);
  }
}

// The journal holds a few honest mistakes, so the check is expected to find something (exit 1).
show('The check finds the honest mistakes of two years', ['check', journal, ...day], [0, 1]);
show('One client: what to know first, then every visit', ['card', client, journal, ...day], [0]);

const next = [
  [`check ${journal} --only stop`, 'what someone could be hurt by, alone'],
  ['mix "40 clay + 20vol 1:2"', 'a bowl worked out, without any notes'],
  ['--help', 'everything else; README.md begins a journal of your own'],
];
console.log('\n=========\nType next\n=========');
for (const [words = '', says] of next) console.log(`node dist/bowlbook.js ${words.padEnd(42)}${says}`);

// Runs a program under seal: whatever changes a disk, opens a connection or starts another program fails, is told of on
// standard error, and makes the exit code 99. SEALED=net seals the connections and programs alone,
// SEALED=warm is for a process in which the program runs again and again.
import childProcess from 'node:child_process';
import dgram from 'node:dgram';
import dns from 'node:dns';
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import net from 'node:net';

/** @type {string[]} */
const broken = [];

// The pipes of a process that runs the program again and again are its own.
const pipes = process.env.SEALED === 'warm' ? process.argv.slice(3) : [];

/** @param {object} holder @param {readonly string[]} names @param {(given: unknown[]) => boolean} [isBroken] */
const seal = (holder, names, isBroken = () => true) => {
  const own = /** @type {Record<string, (...given: unknown[]) => unknown>} */ (holder);
  for (const name of names) {
    const real = own[name];
    own[name] = function (...given) {
      if (!isBroken(given)) return real?.apply(this, given);
      broken.push(`${name} ${String(given[0])}`);
      // Where the program runs again and again, each run is told of its own.
      if (process.env.SEALED === 'warm') process.stderr.write(`under seal: ${broken.at(-1)}\n`);
      throw new Error(`under seal: ${name} ${String(given[0])}`);
    };
  }
};

const CHANGES = [
  ...['writeFile', 'appendFile', 'rename', 'unlink', 'rm', 'rmdir', 'mkdir', 'mkdtemp', 'truncate', 'ftruncate'],
  ...['chmod', 'fchmod', 'lchmod', 'chown', 'fchown', 'lchown', 'utimes', 'futimes', 'lutimes', 'link', 'symlink'],
  ...['copyFile', 'cp'],
];

/** Whether flags of opening are for anything but reading. @param {unknown} flags */
const writes = (flags) =>
  flags !== undefined && flags !== 'r' && flags !== fs.constants.O_RDONLY && typeof flags !== 'function';

if (process.env.SEALED !== 'net') {
  seal(fs, [...CHANGES, ...CHANGES.map((name) => `${name}Sync`), 'createWriteStream']);
  seal(fs, ['open', 'openSync'], ([path, flags]) => writes(flags) && !pipes.includes(String(path)));
  seal(fs.promises, CHANGES);
  seal(fs.promises, ['open'], ([, flags]) => writes(flags));
  seal(net.Server.prototype, ['listen']);
}
seal(net.Socket.prototype, ['connect']);
seal(dgram, ['createSocket']);
// A server that listens looks its own address up, which asks nobody.
seal(dns, ['lookup', 'resolve', 'resolve4', 'resolve6'], ([name]) => net.isIP(String(name)) === 0);
seal(dns.promises, ['lookup', 'resolve']);
seal(childProcess, ['spawn', 'spawnSync', 'exec', 'execSync', 'execFile', 'execFileSync', 'fork']);
seal(globalThis, ['fetch']);
syncBuiltinESMExports();

process.on('exit', () => {
  if (broken.length === 0 || process.env.SEALED === 'warm') return;
  fs.writeSync(2, `under seal: ${broken.join(', ')}\n`);
  process.exitCode = 99;
});

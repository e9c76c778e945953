// Runs the built program several times at once, and prints what each came to as JSON. Its argument: { entry, runs }, each
// run { words, cwd, env, until }; one with `until` is interrupted when that text stands in what it printed.
import { spawn } from 'node:child_process';

/** Milliseconds after which a run is ended: it hangs. */
const LIMIT = 60_000;

const { entry, runs } = JSON.parse(process.argv[2] ?? '');

const run = (/** @type {any} */ { words, cwd, env, until }) =>
  new Promise((done) => {
    const child = spawn(process.execPath, [entry, ...words], { cwd, env: { ...process.env, ...env } });
    let [out, err] = ['', ''];
    const timer = setTimeout(() => child.kill('SIGKILL'), LIMIT);
    child.stdout.on('data', (chunk) => {
      out += chunk;
      if (until !== undefined && out.includes(until)) child.kill('SIGTERM');
    });
    child.stderr.on('data', (chunk) => {
      err += chunk;
    });
    child.on('close', (code, signal) => {
      clearTimeout(timer);
      done({ code, signal, out, err });
    });
  });

process.stdout.write(JSON.stringify(await Promise.all(runs.map(run))));

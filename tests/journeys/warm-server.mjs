// Runs the built program again and again in one process, each time from its first line, as warm.ts asks for.
import { openSync, readdirSync, readFileSync, readSync, writeSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Writable } from 'node:stream';
import { Script } from 'node:vm';

const [entry = '', asking = '', answering = ''] = process.argv.slice(2);
const folder = dirname(entry);
const program = join(folder, readdirSync(folder).find((name) => /^program-.*\.js$/.test(name)) ?? '');
const script = new Script(readFileSync(program, 'utf8'), {
  filename: program,
  cachedData: readFileSync(`${program}.compiled`),
});
const require = createRequire(program);
const asked = openSync(asking, 'r');
const answered = openSync(answering, 'w');

// A run has an exit of its own.
const leave = process.exit.bind(process, 0);

/** @param {number} length */
const take = (length) => {
  const bytes = Buffer.alloc(length);
  for (let had = 0; had < length; ) {
    const now = readSync(asked, bytes, had, length - had, null);
    // Whoever asks has gone.
    if (now === 0) leave();
    had += now;
  }
  return bytes;
};

/** @param {unknown} value */
const give = (value) => {
  const bytes = Buffer.from(JSON.stringify(value), 'utf8');
  const head = Buffer.alloc(4);
  head.writeUInt32LE(bytes.length);
  for (const part of [head, bytes]) for (let at = 0; at < part.length; ) at += writeSync(answered, part, at);
};

/**
 * A stream that is no terminal, and keeps what is written.
 * @param {'stdout' | 'stderr'} name
 */
const kept = (name) => {
  /** @type {Buffer[]} */
  const chunks = [];
  const stream = new Writable({
    write: (chunk, _encoding, done) => {
      chunks.push(chunk);
      done();
    },
  });
  Object.defineProperty(process, name, { value: stream, configurable: true });
  return () => Buffer.concat(chunks).toString('utf8');
};

const Exit = class extends Error {};

for (;;) {
  const { words, cwd, env } = JSON.parse(take(take(4).readUInt32LE()).toString('utf8'));
  const [out, err] = [kept('stdout'), kept('stderr')];
  process.argv = [process.execPath, entry, ...words];
  process.chdir(cwd);
  Object.assign(process.env, env);
  const before = new Map(process.eventNames().map((name) => [name, process.listeners(/** @type {any} */ (name))]));
  const gone = new Promise((resolve) => {
    process.exit = (code) => {
      process.exitCode = code ?? process.exitCode;
      resolve(undefined);
      throw new Exit();
    };
  });
  const { ended } = script.runInThisContext()(require, {});
  await Promise.race([ended, gone]);
  const code = process.exitCode ?? 0;
  process.exitCode = undefined;
  for (const name of Object.keys(env)) delete process.env[name];
  for (const name of process.eventNames())
    for (const listener of process.listeners(/** @type {any} */ (name)))
      if (!before.get(name)?.includes(listener)) process.off(name, /** @type {any} */ (listener));
  give({ code, out: out(), err: err() });
}

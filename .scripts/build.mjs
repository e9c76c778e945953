// Makes the program in dist/: one file, what Node makes of it (compiled), the entry that runs it, and the licences of what
// is in it.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmod, mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'esbuild';
import { licencesOf } from './licences.mjs';

// Tests build into a folder of their own.
const dist = process.argv[2] ?? 'dist';
const entry = 'bowlbook.js';
const licences = 'licences-of-packages.txt';

/** @type {import('esbuild').BuildOptions & { write: false, metafile: true }} */
const common = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  minifyWhitespace: true,
  minifySyntax: true,
  write: false,
  metafile: true,
  logLevel: 'warning',
};

/** @param {{ outputFiles: { text: string }[] }} result */
const textOf = ({ outputFiles: [file] }) => file?.text ?? '';

const bundle = await build({
  ...common,
  entryPoints: ['src/cli/main.ts'],
  format: 'cjs',
  // The entry calls it with these; and it is run as a script, which cannot import.
  banner: { js: '(function(require,module){' },
  footer: { js: 'return module.exports})' },
  supported: { 'dynamic-import': false },
});
const text = textOf(bundle);
// Named by its content: whatever else a build leaves behind, compiled code never meets another program than its own.
const program = `program-${createHash('sha256').update(text).digest('hex').slice(0, 12)}.js`;
const start = await build({
  ...common,
  entryPoints: ['src/cli/start.ts'],
  format: 'esm',
  define: { PROGRAM: JSON.stringify(program) },
});

/** @param {string} name @param {string} content */
const put = async (name, content) => {
  await writeFile(join(dist, `${name}.new`), content);
  await rename(join(dist, `${name}.new`), join(dist, name));
};

// The entry is written last and old files go after it, so a build never leaves an entry without its program.
await mkdir(dist, { recursive: true });
await put(program, text);
const made = spawnSync(process.execPath, ['.scripts/compile.mjs', join(dist, program)], { stdio: 'inherit' });
if (made.status !== 0) throw new Error(`compiling ended with ${made.status}`);
await put(licences, licencesOf([...Object.keys(bundle.metafile.inputs), ...Object.keys(start.metafile.inputs)]));
await put(entry, textOf(start));
await chmod(join(dist, entry), 0o755);

const kept = new Set([entry, licences, program, `${program}.compiled`]);
for (const name of await readdir(dist)) if (!kept.has(name)) await rm(join(dist, name), { recursive: true });

// Bundles src/cli/main.ts into dist/: one entry, and a chunk for each dynamically imported command.
import { chmod, mkdir, readdir, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { build } from 'esbuild';

// Tests build into a folder of their own.
const dist = process.argv[2] ?? 'dist';
const entry = 'bowlbook.js';
const shebang = '#!/usr/bin/env node\n';

// A CommonJS dependency inside an ES module chunk asks Node for its built-in modules through `require`.
const requireBanner =
  "import { createRequire as bowlbookCreateRequire } from 'node:module';const require = bowlbookCreateRequire(import.meta.url);\n";

const result = await build({
  entryPoints: { bowlbook: 'src/cli/main.ts' },
  outdir: dist,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  chunkNames: '[name]-[hash]',
  minifyWhitespace: true,
  minifySyntax: true,
  write: false,
  logLevel: 'warning',
});

const outputs = result.outputFiles.map((file) => {
  const name = basename(file.path);
  const banner = /\brequire\b/.test(file.text) ? requireBanner : '';
  // The bundler carries over the entry's own shebang, which must stay on the first line.
  const body = file.text.replace(/^#!.*\n/, '');
  return { name, text: (name === entry ? shebang : '') + banner + body };
});

// The entry is written last and stale chunks go after it, so a build never leaves an entry without its chunks.
await mkdir(dist, { recursive: true });
outputs.sort((a, b) => Number(a.name === entry) - Number(b.name === entry));
for (const { name, text } of outputs) await writeFile(join(dist, name), text);
await chmod(join(dist, entry), 0o755);

const kept = new Set(outputs.map((output) => output.name));
for (const name of await readdir(dist)) if (!kept.has(name)) await rm(join(dist, name), { recursive: true });

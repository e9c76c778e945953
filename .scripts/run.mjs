// Runs a TypeScript script of this folder: node .scripts/run.mjs .scripts/generate.ts [arguments…]
import { mkdirSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const script = process.argv[2];
if (!script) throw new Error('run.mjs needs the path of a .ts script');

// Under node_modules, so that the bundle's imports of packages resolve.
const folder = join('node_modules', '.cache', 'bowlbook');
const outfile = join(folder, `${basename(script, '.ts')}-${process.pid}.mjs`);
mkdirSync(folder, { recursive: true });
await build({
  entryPoints: [script],
  outfile,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  packages: 'external',
  sourcemap: 'inline',
  logLevel: 'warning',
});

// The script sees its own path and arguments where it would without this wrapper.
process.argv.splice(1, 1);
try {
  await import(pathToFileURL(outfile).href);
} finally {
  rmSync(outfile, { force: true });
}

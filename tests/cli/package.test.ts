import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, readdirSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join } from 'node:path';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { DEMO, useProgram } from '../journeys/program.ts';

const program = await useProgram();
const BUILT = dirname(program.entry());

test('nothing that is built holds a path of the machine that built it', () => {
  const paths = [BUILT, process.cwd(), `${homedir()}/`].filter((path) => path.length > 3);
  const names = readdirSync(BUILT);
  expect(names.some((name) => name.endsWith('.compiled'))).toBe(true);
  for (const name of names)
    for (const path of paths)
      expect([name, path, readFileSync(join(BUILT, name)).includes(path)]).toEqual([name, path, false]);
});

test('a stack trace holds no path, of the build or of the program', () => {
  const folder = program.folder();
  cpSync(BUILT, folder, { recursive: true });
  const weak = `const { get } = Map.prototype;
    Map.prototype.get = function (key) { if (key === 'clay') throw new Error('weak'); return get.call(this, key); };`;
  const { status, stderr } = spawnSync(
    process.execPath,
    [join(folder, 'bowlbook.js'), 'mix', '40 clay', '--no-shelf'],
    {
      encoding: 'utf8',
      env: { ...process.env, NODE_OPTIONS: `--import "data:text/javascript,${encodeURIComponent(weak)}"` },
    },
  );
  expect(status).toBe(3);
  expect(stderr).toMatch(/Error: weak\n(?: {4}at .*\n)+/);
  expect(stderr).toMatch(/^ {4}at \w+ \(program-[0-9a-f]+\.js:\d+:\d+\)$/m);
  for (const path of [BUILT, folder, process.cwd()]) expect(stderr).not.toContain(path);
});

test('the licence of every package that is in the program is beside it, with its text', async () => {
  const text = readFileSync(join(BUILT, 'licences-of-packages.txt'), 'utf8');
  const told = [
    ...text.matchAll(/^-{78}\n(\S+) (\S+)\n(\S.*)\n-{78}\n\n(\S[\s\S]*?)(?=\n-{78}\n\S+ \S+\n|(?![\s\S]))/gm),
  ];
  const { metafile } = await build({
    entryPoints: ['src/cli/main.ts', 'src/cli/start.ts'],
    outdir: 'dist',
    bundle: true,
    platform: 'node',
    write: false,
    metafile: true,
    define: { PROGRAM: '""' },
    logLevel: 'silent',
  });
  const bundled = new Set(
    Object.keys(metafile.inputs).flatMap((file) => /^.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(file)?.[1] ?? []),
  );
  expect(bundled.size).toBeGreaterThan(10);
  expect(told.map(([, name]) => name).toSorted()).toEqual([...bundled].toSorted());
  for (const [, name = '', version, licence, words = ''] of told) {
    const own = JSON.parse(readFileSync(join('node_modules', name, 'package.json'), 'utf8'));
    expect([version, licence]).toEqual([own.version, own.license]);
    expect(words, name).toMatch(/permi|licen[cs]ed/i);
    expect(words.length, name).toBeGreaterThan(500);
  }
});

test('the packed program installs alone, without a network, and runs with no packages beside it', () => {
  expect(Object.keys(manifest)).not.toContain('dependencies');
  const folder = program.folder();
  for (const name of ['package.json', 'README.md', 'LICENSE']) cpSync(name, join(folder, 'made', name));
  cpSync(BUILT, join(folder, 'made', 'dist'), { recursive: true });
  const npm = (cwd: string, ...words: string[]) => {
    const { status, stdout, stderr } = spawnSync(
      'npm',
      [...words, '--offline', '--ignore-scripts', '--no-audit', '--no-fund'],
      {
        cwd: join(folder, cwd),
        encoding: 'utf8',
        env: { ...process.env, npm_config_cache: join(folder, 'cache') },
      },
    );
    expect([status, stderr]).toEqual([0, expect.any(String)]);
    return stdout;
  };
  const [packed] = JSON.parse(npm('made', 'pack', '--json'));
  expect(packed.files.map(({ path }: { path: string }) => path)).toContain('dist/licences-of-packages.txt');
  npm('.', 'install', '--prefix', join(folder, 'user'), join(folder, 'made', packed.filename));
  const installed = readdirSync(join(folder, 'user', 'node_modules')).filter((name) => !name.startsWith('.'));
  expect(installed).toEqual(['bowlbook']);
  expect(existsSync(join(folder, 'user', 'node_modules', 'bowlbook', 'node_modules'))).toBe(false);
  const bin = join(folder, 'user', 'node_modules', '.bin', 'bowlbook');
  const { status, stdout } = spawnSync(bin, ['check', DEMO, '--on', '2026-11-25'], { encoding: 'utf8', cwd: folder });
  expect([status, stdout]).toEqual([1, expect.stringMatching(/\d+ findings: /)]);
});

import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, vi } from 'vitest';
import { builtEntry } from './built.ts';
import { canBeWarm, runWarm } from './warm.ts';

/** What a run of the program came to. */
export type Ran = { readonly code: number | null; readonly out: string; readonly err: string };

export type Program = {
  /**
   * Runs the built program; no colour and no terminal unless the environment given says so. With more in its
   * environment than colour and width it runs in a process of its own, else in one that ran it before.
   */
  readonly run: (words: readonly string[], options?: { cwd?: string; env?: Record<string, string> }) => Ran;
  /** A new temporary folder holding the files given, by path. */
  readonly folder: (files?: Readonly<Record<string, string | Uint8Array>>) => string;
  /** The built entry, for tests that need the running process. */
  readonly entry: () => string;
};

export const DEMO = resolve('journals/harbour-row');

export const read = (...path: string[]): string => readFileSync(join(...path), 'utf8');

/** The built program, and temporary folders for the tests of one file, which are taken away at the end. */
export const useProgram = async (): Promise<Program> => {
  const entry = await builtEntry();
  const root = mkdtempSync(join(tmpdir(), 'bowlbook-journey-'));
  let made = 0;
  // Each run is a process of its own, and a busy machine starts them slowly.
  vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });
  afterAll(() => rmSync(root, { recursive: true, force: true }));
  return {
    entry: () => entry,
    run: (words, { cwd = root, env } = {}) => {
      if (canBeWarm(env)) return runWarm(entry, words, cwd, env);
      const { NO_COLOR: _no, FORCE_COLOR: _force, ...inherited } = process.env;
      const { status, stdout, stderr } = spawnSync(process.execPath, [entry, ...words], {
        cwd,
        env: { ...inherited, ...env },
        encoding: 'utf8',
        maxBuffer: 1 << 28,
      });
      return { code: status, out: stdout, err: stderr };
    },
    folder: (files = {}) => {
      made += 1;
      const folder = join(root, `folder-${made}`);
      mkdirSync(folder);
      for (const [path, content] of Object.entries(files)) {
        mkdirSync(dirname(join(folder, path)), { recursive: true });
        writeFileSync(join(folder, path), content);
      }
      return folder;
    },
  };
};

/** A small journal that checks clean: a salon, a shelf, two clients. */
export const SALON = `salon quay "Quay"
  money GBP
  hours 9:00-19:00
  policy skin-test 48h every 26w
stylist io "Io" at quay
stylist nia "Nia" at quay
`;

export const SHELF = `product clay "Grey clay" lightener
  mix 1:2
  uses dev-6
  strength to 9%
  time 20-50 min from first-on, check every 10 min
  pack 500 g 24.00
product dev-6 "Cream developer" developer 6%
  pack 1 l 7.50
  density 1.01
`;

export const CLIENTS = `client wren-abbott "Wren Abbott"
  natural 6
client wren-tarn "Wren Tarn"
  natural 5
client otto-lund "Otto Lund"
  natural 7

visit 2026-09-04 14:00 wren-abbott by io at quay
  aim brighter at the front
  start roots 6
  bowl A 40 clay + 20vol 1:2
  place A hairline slice x2 gap 0 off-scalp 1cm foil
  leave crown "stands up"
  on 14:20-14:28 A hairline
  check 14:30 A hairline orange
  check 14:40 A hairline yellow
  off 14:50 A
  left A 14 binned
  result lengths 9
  charge foils 95.00
  next 8w roots, A -20% "bring a picture"
`;

export const JOURNAL = { 'salon.bowl': SALON, 'shelf.bowl': SHELF, 'clients.bowl': CLIENTS };

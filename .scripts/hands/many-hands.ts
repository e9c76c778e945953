import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { appendFileSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** What is tried: so many runs of `now` at a time, for so long, on one visit. */
export type Trial = {
  /** The built program. */
  readonly entry: string;
  readonly writers: number;
  readonly seconds: number;
  /** Kills runs at random, as a power cut would. */
  readonly kill?: boolean;
  /** An editor saves the file by a rename, when it finds it as it read it. */
  readonly editor?: boolean;
  /** The disk is small, and full half of the time; needs a system that lets a disk in memory be mounted. */
  readonly full?: boolean;
  /** A number from 0 up to 1. */
  readonly chance: () => number;
};

/** What came of it. */
export type Outcome = {
  /** Lines that runs said to have written, and those that were refused or killed. */
  readonly said: number;
  readonly refused: number;
  readonly killed: number;
  /** What the editor saved. */
  readonly saved: number;
  /** Lines that were said to be written and are not there; lines that stand twice; what the editor saved and is gone. */
  readonly missing: readonly string[];
  readonly twice: readonly string[];
  readonly unsaved: readonly string[];
  /** Lines of the file that nobody typed: halves of lines. */
  readonly strange: readonly string[];
  /** Why runs were refused, and how often. */
  readonly reasons: ReadonlyMap<string, number>;
};

const DAY = '2026-11-25';
const BEFORE = [`client wren "Wren"`, `visit ${DAY} 14:00 wren`, '  note begun', ''].join('\n');

const sleep = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

const ended = (child: ChildProcess): Promise<number | null> => new Promise((done) => child.on('close', done));

/** A folder for the notes; of a disk of its own, of 256 KB, where that is asked for. Undefined where none can be mounted. */
const folderFor = (full: boolean): string | undefined => {
  const top = mkdtempSync(join(tmpdir(), 'bowlbook-hands-'));
  if (full && spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', top]).status !== 0) return undefined;
  return top;
};

/** Fills the disk to the last byte, and makes room again, in turns. */
const fillAndFree = async (top: string, isOver: () => boolean, chance: () => number): Promise<void> => {
  const filler = join(top, 'filler');
  while (!isOver()) {
    try {
      for (;;) appendFileSync(filler, Buffer.alloc(512));
    } catch {
      // Full.
    }
    await sleep(chance() * 600);
    rmSync(filler, { force: true });
    await sleep(chance() * 600);
  }
};

/** Reads, thinks, and saves by a rename unless the file has changed meanwhile, as editors do that ask before they save. */
const edit = async (path: string, isOver: () => boolean, chance: () => number): Promise<string[]> => {
  const saved: string[] = [];
  while (!isOver()) {
    await sleep(50 + chance() * 100);
    try {
      const was = readFileSync(path, 'utf8');
      await sleep(chance() * 30);
      const line = `  note saved-${saved.length}-end`;
      writeFileSync(`${path}~`, `${was}${line}\n`);
      if (readFileSync(path, 'utf8') !== was) continue;
      renameSync(`${path}~`, path);
      saved.push(line);
    } catch {
      // The disk is full; it tries again.
    }
  }
  rmSync(`${path}~`, { force: true });
  return saved;
};

/** Runs one trial; undefined where the system cannot have it. */
export const tryHands = async (trial: Trial): Promise<Outcome | undefined> => {
  const { entry, writers, seconds, chance } = trial;
  const top = folderFor(trial.full === true);
  if (top === undefined) return undefined;
  const folder = join(top, 'notes');
  const path = join(folder, 'day.bowl');
  mkdirSync(folder);
  writeFileSync(path, BEFORE);
  const until = performance.now() + seconds * 1_000;
  const isOver = (): boolean => performance.now() > until;
  const said: string[] = [];
  const typed = new Set<string>();
  const reasons = new Map<string, number>();
  let killed = 0;
  let refused = 0;

  const write = async (writer: number): Promise<void> => {
    for (let turn = 0; !isOver() || turn === 0; turn++) {
      const line = `note hand-${writer}-${turn}-end`;
      typed.add(`  ${line}`);
      const child = spawn(process.execPath, [entry, 'now', line, folder, '--on', DAY, '--at', '14:40'], { cwd: top });
      let out = '';
      let err = '';
      child.stdout.on('data', (chunk: Buffer) => {
        out += chunk.toString();
      });
      child.stderr.on('data', (chunk: Buffer) => {
        err += chunk.toString();
      });
      const timer = trial.kill && chance() < 0.3 ? setTimeout(() => child.kill('SIGKILL'), chance() * 600) : undefined;
      const code = await ended(child);
      clearTimeout(timer);
      if (out.includes(`  ${line}  (`)) said.push(`  ${line}`);
      else if (code === null) killed++;
      else {
        refused++;
        const why = (err.split('\n')[0] ?? '').replaceAll(path, 'FILE').replace(/process \d+/, 'process N');
        reasons.set(why, (reasons.get(why) ?? 0) + 1);
      }
    }
  };

  try {
    const others = [
      ...(trial.editor ? [edit(path, isOver, chance)] : []),
      ...(trial.full ? [fillAndFree(top, isOver, chance).then((): string[] => [])] : []),
    ];
    await Promise.all(Array.from({ length: writers }, (_, writer) => write(writer)));
    const saved = (await Promise.all(others)).flat();
    const lines = readFileSync(path, 'utf8').split('\n');
    const count = new Map<string, number>();
    for (const line of lines) count.set(line, (count.get(line) ?? 0) + 1);
    const known = new Set([...BEFORE.split('\n'), ...typed, ...saved]);
    return {
      said: said.length,
      refused,
      killed,
      saved: saved.length,
      missing: said.filter((line) => !count.has(line)),
      twice: [...count].flatMap(([line, times]) => (times > 1 && line !== '' ? [line] : [])),
      unsaved: saved.filter((line) => !count.has(line)),
      strange: lines.filter((line) => !known.has(line)),
      reasons,
    };
  } finally {
    if (trial.full) spawnSync('umount', ['-l', top]);
    rmSync(top, { recursive: true, force: true });
  }
};

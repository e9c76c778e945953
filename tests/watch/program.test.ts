import { type ChildProcess, spawn } from 'node:child_process';
import { chmodSync, existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { CLIENTS, JOURNAL, useProgram } from '../journeys/program.ts';
import { pagesIn, sleep, until } from './watching.ts';

const program = useProgram();

type Running = {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly err: () => string;
  readonly ended: Promise<number | string | null>;
};

const running = new Set<ChildProcess>();

afterEach(() => {
  for (const child of running) child.kill('SIGKILL');
});

/** Starts `bowlbook watch` in a folder, as another user where one is given. */
const start = (cwd: string, words: readonly string[] = [], user?: number): Running => {
  const who = user === undefined ? {} : { uid: user, gid: user };
  const child = spawn(process.execPath, [program.entry(), 'watch', '--on', '2026-11-25', ...words], { cwd, ...who });
  running.add(child);
  let [out, err] = ['', ''];
  child.stdout.on('data', (chunk: Buffer) => {
    out += chunk.toString();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    err += chunk.toString();
  });
  const ended = new Promise<number | string | null>((done) => {
    child.on('close', (code, signal) => {
      running.delete(child);
      done(code ?? signal);
    });
  });
  return { child, out: () => out, err: () => err, ended };
};

const begun = (one: Running): Promise<void> =>
  until(`the start\n${one.err()}`, () => one.out().includes('Ctrl-C ends it.'));

const MARKED = `${CLIENTS.trimEnd()}\n  note mark-1-end\n`;
const marked = (mark: number): string => MARKED.replace('mark-1-end', `mark-${mark}-end`);

const cardIn = (cwd: string): string => {
  try {
    return readFileSync(join(cwd, 'pages', 'clients', 'wren-abbott.html'), 'utf8');
  } catch {
    return '';
  }
};

/** The pages that a watch begun now would make. */
const cold = async (cwd: string): Promise<Record<string, string>> => {
  const out = program.folder();
  const one = start(cwd, ['--out', out]);
  await begun(one);
  one.child.kill('SIGINT');
  await one.ended;
  return pagesIn(out);
};

describe('watch', () => {
  test('says what is watched and how, then a line a change, and ends clean', async () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MARKED });
    const one = start(cwd);
    await begun(one);
    expect(one.out()).toBe(
      'No findings in 1 visit of 3 clients.\n3 files of notes in ., 3 clients; 5 pages written. Open pages/index.html\n' +
        'Changes are told by the system, and all files are looked through beside that. Ctrl-C ends it.\n',
    );
    writeFileSync(join(cwd, 'clients.bowl'), `${marked(2)}  chekc A gold\n`);
    await until('the change', () => one.out().includes('chekc'));
    expect(one.out()).toMatch(/^\d\d:\d\d clients\.bowl: 3 pages in \d+ ms; gained 1 fix$/m);
    expect(one.out()).toMatch(/^ {2}clients\.bowl:\d+:3 fix unknown-word {2}`chekc`/m);
    writeFileSync(join(cwd, 'clients.bowl'), marked(2));
    await until('the mending', () => one.out().includes('lost 1 fix'));
    one.child.kill('SIGINT');
    expect(await one.ended).toBe(0);
    expect(one.out()).toMatch(/\nEnded; the pages stand as the notes were last seen\.\n$/);
    expect(one.err()).toBe('');
    expect(pagesIn(join(cwd, 'pages'))).toEqual(await cold(cwd));
  });

  test.each(['SIGTERM', 'SIGHUP'] as const)('%s ends it clean too, while a burst of saves goes on', async (signal) => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MARKED });
    const one = start(cwd);
    await begun(one);
    for (let mark = 2; mark < 12; mark += 1) {
      writeFileSync(join(cwd, 'clients.bowl'), marked(mark));
      await sleep(20);
    }
    one.child.kill(signal);
    expect(await one.ended).toBe(0);
    expect(readdirSync(join(cwd, 'pages')).filter((name) => name.endsWith('.new'))).toEqual([]);
  });

  test('without events the files are looked through', async () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MARKED });
    const one = start(cwd, ['--no-events']);
    await begun(one);
    expect(one.out()).toContain('All files are looked through every 0.5 s, as asked.');
    writeFileSync(join(cwd, 'clients.bowl'), marked(2));
    await until('the change', () => cardIn(cwd).includes('mark-2-end'));
  });

  test('killed at any moment it leaves whole pages, and a new run makes them those of the notes', async () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MARKED });
    for (let times = 0; times < 8; times += 1) {
      const one = start(cwd);
      // From before the first page to the middle of a burst of saves.
      await sleep(60 * times);
      for (let save = 0; save < 5; save += 1) {
        writeFileSync(join(cwd, 'clients.bowl.tmp'), marked(10 * times + save));
        renameSync(join(cwd, 'clients.bowl.tmp'), join(cwd, 'clients.bowl'));
        await sleep(15);
      }
      one.child.kill('SIGKILL');
      await one.ended;
      const pages = existsSync(join(cwd, 'pages')) ? Object.entries(pagesIn(join(cwd, 'pages'))) : [];
      for (const [name, html] of pages) expect([name, html.slice(-8)]).toEqual([name, '</html>\n']);
    }
    const last = start(cwd);
    await begun(last);
    last.child.kill('SIGINT');
    await last.ended;
    expect(pagesIn(join(cwd, 'pages'))).toEqual(await cold(cwd));
    const files = readdirSync(join(cwd, 'pages'), { recursive: true, encoding: 'utf8' });
    expect(files.filter((name) => name.endsWith('.new'))).toEqual([]);
  });

  test('two processes on the same notes and pages both see every change', async () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MARKED });
    const both = [start(cwd), start(cwd)];
    for (const one of both) await begun(one);
    for (const mark of [2, 3]) {
      writeFileSync(join(cwd, 'clients.bowl'), marked(mark));
      await until(`mark ${mark}`, () => cardIn(cwd).includes(`mark-${mark}-end`));
      await until('both lines', () =>
        both.every((one) => (one.out().match(/clients\.bowl: /g)?.length ?? 0) >= mark - 1),
      );
    }
    for (const one of both) one.child.kill('SIGINT');
    expect(await Promise.all(both.map(({ ended }) => ended))).toEqual([0, 0]);
    expect(both.map((one) => one.err())).toEqual(['', '']);
    expect(pagesIn(join(cwd, 'pages'))).toEqual(await cold(cwd));
  });

  test('a file and a folder that it may not read are left out or kept, and told of', async () => {
    const cwd = program.folder({
      'salon.bowl': JOURNAL['salon.bowl'],
      'more/shelf.bowl': JOURNAL['shelf.bowl'],
      'clients.bowl': MARKED,
    });
    // The owner of the system may read anything, so the program runs as somebody else where the tests run as that one.
    const nobody = process.getuid?.() === 0 ? 65_534 : undefined;
    for (const folder of [join(cwd, '..'), join(cwd, '..', 'built'), cwd]) chmodSync(folder, 0o755);
    const out = program.folder();
    chmodSync(out, 0o777);
    chmodSync(join(cwd, 'salon.bowl'), 0);
    const one = start(cwd, ['--out', out], nobody);
    await begun(one);
    expect(one.err()).toBe('`salon.bowl` cannot be read: the system does not allow it. It is left out.\n');
    chmodSync(join(cwd, 'more'), 0);
    await until('the folder is told of', () => one.err().includes('`more`'));
    writeFileSync(join(cwd, 'clients.bowl'), marked(2));
    const card = (): string => readFileSync(join(out, 'clients', 'wren-abbott.html'), 'utf8');
    await until('the change', () => card().includes('mark-2-end'));
    expect(card()).toContain('Grey clay');
    chmodSync(join(cwd, 'salon.bowl'), 0o644);
    chmodSync(join(cwd, 'more'), 0o755);
    await until('the salon', () => readFileSync(join(out, 'index.html'), 'utf8').includes('Quay'));
    expect(one.err().trim().split('\n')).toEqual([
      expect.stringContaining('`salon.bowl`'),
      '`more` cannot be read: the system does not allow it. What was read of it last stands.',
    ]);
  });

  test('notes are told from what is no folder of notes', () => {
    const cwd = program.folder({ ...JOURNAL, 'empty/x.txt': '', 'other/letter.txt': '' });
    const refused = (words: readonly string[]): string => {
      const { code, out, err } = program.run(['watch', ...words], { cwd });
      expect([words, code, out]).toEqual([words, 2, '']);
      return err;
    };
    expect(refused(['empty'])).toContain('There are no notes');
    expect(refused(['nowhere'])).toContain('`nowhere` cannot be read: it is not there.');
    expect(refused(['clients.bowl'])).toContain('`clients.bowl` is a file, and a folder is watched.');
    expect(refused(['.', '--out', 'other'])).toContain('`other` holds other files (`letter.txt`)');
    expect(refused(['.', '--out', '.'])).toContain('`.` holds the notes themselves');
    expect(refused(['.', '--on', 'today'])).toContain('is not a date');
    rmSync(join(cwd, 'empty'), { recursive: true });
    expect(existsSync(join(cwd, 'pages'))).toBe(false);
  });
});

import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { CLIENTS, JOURNAL, useProgram } from '../journeys/program.ts';
import { ask } from './asking.ts';
import { pagesIn, sleep, until } from './watching.ts';

const program = await useProgram();

type Running = {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly err: () => string;
  readonly ended: Promise<number | string | null>;
};

const running = new Set<ChildProcess>();

afterAll(() => {
  for (const child of running) child.kill('SIGKILL');
});

/** Starts `bowlbook watch` in a folder, as another user where one is given, under another command where one is. */
const start = (
  cwd: string,
  words: readonly string[] = [],
  { user, under = [] }: { readonly user?: number | undefined; readonly under?: readonly string[] } = {},
): Running => {
  const who = user === undefined ? {} : { uid: user, gid: user };
  const own = [process.execPath, program.entry(), 'watch', '--on', '2026-11-25', ...words];
  const [command = '', ...rest] = [...under, ...own];
  const child = spawn(command, rest, { cwd, ...who });
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

const withoutMarks = (pages: Record<string, string>): Record<string, string> =>
  Object.fromEntries(Object.entries(pages).map(([name, html]) => [name, html.replaceAll(/mark-\d+-end/g, 'mark')]));

/** Numbers from 0 to 1 that are the same in every run. */
const seeded = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
};

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
  test.concurrent('says what is watched and how, then a line a change, and ends clean', async () => {
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

  test.concurrent.each(['SIGTERM', 'SIGHUP'] as const)(
    '%s ends it clean too, while a burst of saves goes on',
    async (signal) => {
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
    },
  );

  test.concurrent('without events the files are looked through', async () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MARKED });
    const one = start(cwd, ['--no-events']);
    await begun(one);
    expect(one.out()).toContain('All files are looked through every 0.5 s, as asked.');
    writeFileSync(join(cwd, 'clients.bowl'), marked(2));
    await until('the change', () => cardIn(cwd).includes('mark-2-end'));
  });

  test.concurrent('killed at any moment it leaves whole pages, and a new run makes them those of the notes', async () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MARKED });
    const pages = join(cwd, 'pages');
    const random = seeded(20_261_125);
    const whole = withoutMarks(await cold(cwd));
    let [saved, least] = [1, 1];
    for (let times = 0; times < 8; times += 1) {
      const one = start(cwd);
      // From before the first page, and from when all stand; then at a moment of a burst of saves.
      if (times % 2 === 1) await begun(one);
      for (let left = random() * (times % 2 === 1 ? 300 : 900); left > 0; left -= 12) {
        saved += 1;
        writeFileSync(join(cwd, 'clients.bowl.tmp'), marked(saved));
        renameSync(join(cwd, 'clients.bowl.tmp'), join(cwd, 'clients.bowl'));
        await sleep(Math.min(left, 12));
      }
      one.child.kill('SIGKILL');
      await one.ended;
      const left = existsSync(pages) ? pagesIn(pages) : {};
      const names = Object.keys(left);
      expect(withoutMarks(left)).toEqual(Object.fromEntries(names.map((name) => [name, whole[name]])));
      const mark = Number(/mark-(\d+)-end/.exec(cardIn(cwd))?.[1] ?? least);
      expect(mark).toBeGreaterThanOrEqual(least);
      expect(mark).toBeLessThanOrEqual(saved);
      least = mark;
    }
    const last = start(cwd);
    await begun(last);
    last.child.kill('SIGINT');
    await last.ended;
    expect(cardIn(cwd)).toContain(`mark-${saved}-end`);
    expect(pagesIn(pages)).toEqual(await cold(cwd));
    const files = readdirSync(pages, { recursive: true, encoding: 'utf8' });
    expect(files.filter((name) => name.endsWith('.new'))).toEqual([]);
  });

  test.concurrent('where the system takes no more watching, it says once that it looks through the files', async () => {
    // A limit of its own for the process, where the system lets the tests set one; elsewhere the option says as much.
    const limited = ['-Ur', 'sh', '-c', 'echo 3 >/proc/sys/user/max_inotify_watches && exec "$@"', 'sh'];
    const isLimited = spawnSync('unshare', [...limited, 'true']).status === 0;
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MARKED });
    const one = isLimited ? start(cwd, [], { under: ['unshare', ...limited] }) : start(cwd, ['--no-events']);
    await begun(one);
    for (const mark of [2, 3]) {
      writeFileSync(join(cwd, 'clients.bowl'), marked(mark));
      await until(`mark ${mark}`, () => cardIn(cwd).includes(`mark-${mark}-end`));
    }
    await until('it is said', () => `${one.out()}${one.err()}`.includes('looked through every 0.5 s'));
    one.child.kill('SIGINT');
    expect(await one.ended).toBe(0);
    expect(one.err()).toBe(
      isLimited
        ? 'The system tells of no more changes (ENOSPC). The files are looked through every 0.5 s instead.\n'
        : '',
    );
  });

  test.concurrent('two processes on the same notes and pages both see every change', async () => {
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

  test.concurrent('a file and a folder that it may not read are left out or kept, and told of', async () => {
    const cwd = program.folder({
      'salon.bowl': JOURNAL['salon.bowl'],
      'more/shelf.bowl': JOURNAL['shelf.bowl'],
      'clients.bowl': MARKED,
    });
    // The owner of the system may read anything, so the program runs as somebody else where the tests run as that one.
    const nobody = process.getuid?.() === 0 ? 65_534 : undefined;
    for (const folder of [join(cwd, '..'), cwd]) chmodSync(folder, 0o755);
    const out = program.folder();
    chmodSync(out, 0o777);
    chmodSync(join(cwd, 'salon.bowl'), 0);
    const one = start(cwd, ['--out', out], { user: nobody });
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

  test.concurrent('shared, it warns, lets a device in, notes a press, and still ends clean', async () => {
    const cwd = program.folder({
      ...JOURNAL,
      'clients.bowl': `${CLIENTS}visit 2026-11-25 14:00 otto-lund\n  bowl A 40 clay + 20vol 1:2\n  on 14:20 A\n`,
    });
    const one = start(cwd, ['--share']);
    await until(`the end of the start\n${one.err()}`, () => /can read it too/.test(one.out()));
    const said = one.out().slice(one.out().indexOf('Shared'));
    expect(said).toMatch(
      /^Shared on the network, for a phone or tablet at the chair: http:\/\/\S+:\d+\/[a-z2-9]{12}\//,
    );
    expect(said).toContain('Anyone on that network with the code sees clients’ notes, and can note times.\n');
    expect(said).not.toContain('127.0.0.1');
    const [address = ''] = /http:\S+/.exec(said) ?? [];
    const { origin } = new URL(address);
    const { headers } = await ask(address);
    await until('the next code', () => /A device at \S+ has opened .* For another one: http/.test(one.out()));
    const cookie = String(headers['set-cookie']).split(';')[0] ?? '';
    const pressed = JSON.stringify({ client: 'otto-lund', line: 'off A' });
    const sent = { cookie, origin, 'content-type': 'application/json' };
    const { status, body } = await ask(`${origin}/stamp`, sent, 'POST', pressed);
    expect([status, body]).toEqual([200, expect.stringMatching(/^Noted: off \d\d:\d\d A\n$/)]);
    await until('the change', () => /^\d\d:\d\d clients\.bowl: /m.test(one.out()));
    expect(one.out()).toMatch(/^Noted from \S+: off \d\d:\d\d A \(clients\.bowl:\d+\)$/m);
    one.child.kill('SIGINT');
    expect(await one.ended).toBe(0);
    expect(one.out()).toMatch(/\nEnded; the pages stand as the notes were last seen\.\n$/);
    expect(one.err()).toBe('');
  });

  test.concurrent('notes are told from what is no folder of notes', () => {
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

import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { isRefusal, type Refusal } from '../../src/cli/refusal.ts';
import { useProgram } from '../journeys/program.ts';
import { systemError, watchDisk } from './preload/disk.mjs';
import { contentOf, WRITING, type Writing } from './writing.ts';

const program = await useProgram();

beforeAll(() => {
  for (const stream of [process.stdout, process.stderr]) vi.spyOn(stream, 'write').mockReturnValue(true);
});
afterAll(() => vi.restoreAllMocks());

/** The system's errors, and the words in which the program tells them. */
const CODES = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'no more room on the disk is allowed',
  EACCES: 'the system does not allow it',
  EROFS: 'the disk is read-only',
  EIO: 'the disk reports a fault',
  EXDEV: 'it stands on a disk of its own',
  EBUSY: 'another program holds it',
} as const;
type Code = keyof typeof CODES;

type Step = { readonly name: string; readonly path: string };
type Ended = { readonly thrown: unknown; readonly steps: readonly Step[] };

/** Runs a command here, with an error at some of its steps of writing. */
const runWith = async (
  writing: Writing,
  folder: string,
  errorAt: (step: number) => Code | undefined = () => undefined,
): Promise<Ended> => {
  const steps: Step[] = [];
  const restore = watchDisk(folder, ({ name, path }) => {
    const code = errorAt(steps.push({ name, path }) - 1);
    return code && systemError(code, name, path);
  });
  let thrown: unknown;
  try {
    await run(writing.words(folder));
  } catch (error) {
    thrown = error;
  } finally {
    restore();
  }
  return { thrown, steps };
};

/** What stood before and what stands after a run in which nothing fails, and the steps it takes. */
const fairRun = async (writing: Writing) => {
  const folder = program.folder(writing.files);
  const before = contentOf(folder);
  const { thrown, steps } = await runWith(writing, folder);
  expect(thrown).toBeUndefined();
  return { before, after: contentOf(folder), steps };
};

/** Every file is as before or as after, and nothing else stands there but folders that have something new in them. */
const isOldOrNew = (
  now: Readonly<Record<string, string>>,
  { before, after }: { before: Readonly<Record<string, string>>; after: Readonly<Record<string, string>> },
): void => {
  for (const [name, content] of Object.entries(now)) expect([before[name], after[name]], name).toContain(content);
  for (const name of Object.keys(before)) expect(now).toHaveProperty([name]);
};

const EVERY = Object.keys(CODES) as readonly Code[];

/**
 * The errors to try at a step. What is done after one hangs on the step, and on the error its name in words alone: one
 * command has every error at every step, the others a different one at each.
 */
const codesAt = ({ says }: Writing, step: number): readonly Code[] =>
  says === 'neaten' ? EVERY : EVERY.slice(step % EVERY.length).slice(0, 1);

describe.each(WRITING)('on a full or failing disk the file is old or new, never partial: $says', (writing) => {
  test('writes what it says and nothing else', async () => {
    const { before, after } = await fairRun(writing);
    const changed = Object.keys(after).filter((name) => after[name] !== before[name] && after[name] !== 'a folder');
    for (const name of writing.writes) expect(changed).toContain(name);
    if (writing.says !== 'new') expect(changed).toEqual(writing.writes);
  });

  test('that fails at any step leaves every file old or new and nothing beside them', async () => {
    const fair = await fairRun(writing);
    expect(fair.steps.length).toBeGreaterThan(3);
    for (const [step, { name, path }] of fair.steps.entries())
      for (const code of codesAt(writing, step)) {
        const folder = program.folder(writing.files);
        const { thrown } = await runWith(writing, folder, (at) => (at === step ? code : undefined));
        const now = contentOf(folder);
        const where = `${code} at step ${step}, ${name} ${path}`;
        isOldOrNew(now, fair);
        if (thrown === undefined) {
          // Taking away what is not there, and seeing the folder itself to the disk, are not needed.
          expect(now, where).toEqual(fair.after);
          continue;
        }
        expect(isRefusal(thrown), `${where}: ${thrown}`).toBe(true);
        const { message, todo } = thrown as Refusal;
        expect(message, where).toMatch(new RegExp(`cannot be (?:written|made): ${CODES[code]}\\.$`));
        expect(message, where).toContain(`${folder}/`);
        expect(todo, where).toMatch(/\S/);
        if (writing.writes.length === 1 || writing.says === 'new') expect(now, where).toEqual(fair.before);
      }
  });

  test('that fails twice over leaves every file old or new', async () => {
    const fair = await fairRun(writing);
    for (let first = 0; first < fair.steps.length; first++) {
      const folder = program.folder(writing.files);
      const { thrown } = await runWith(writing, folder, (at) => (at >= first ? 'EIO' : undefined));
      const left = Object.entries(contentOf(folder)).filter(([name]) => !/\.new$/.test(name));
      isOldOrNew(Object.fromEntries(left), fair);
      if (thrown === undefined) {
        expect(Object.fromEntries(left)).toEqual(fair.after);
        continue;
      }
      // Once the disk works again, the same command does its work, and takes away what had to be left.
      if (writing.says === 'new') continue;
      expect((await runWith(writing, folder)).thrown).toBeUndefined();
      expect(contentOf(folder)).toEqual(fair.after);
    }
  });
});

const KILLED = WRITING.filter(({ says }) => ['now', 'neaten', 'card -o over an older page'].includes(says));

test.each(KILLED)(
  'killed at each step the file is old or new, never partial, and the next run leaves nothing behind: $says',
  async (writing) => {
    const fair = await fairRun(writing);
    for (let step = 1; step <= fair.steps.length; step++) {
      const folder = program.folder(writing.files);
      const env = {
        KILL_AT: `${step}`,
        KILL_BELOW: folder,
        NODE_OPTIONS: `--import ${new URL('./preload/kill-at.mjs', import.meta.url)}`,
      };
      const { code } = program.run(writing.words(folder), { env });
      expect(code).toBe(null);
      const left = Object.entries(contentOf(folder));
      expect(left.filter(([name]) => name.endsWith('.new')).length).toBeLessThan(3);
      isOldOrNew(Object.fromEntries(left.filter(([name]) => !name.endsWith('.new'))), fair);
      const again = await runWith(writing, folder);
      if (writing.says === 'now') continue;
      expect(again.thrown).toBeUndefined();
      expect(contentOf(folder)).toEqual(fair.after);
    }
  },
);

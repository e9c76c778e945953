import { execFileSync } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { HintsOptions } from '../../src/journal/watch.ts';
import { endsCold, notesOf, SHELF, sleep, until, watchFolder, writeAt } from './watching.ts';

const FILES = { 'shelf.bowl': SHELF, 'a.bowl': notesOf('wren'), 'b.bowl': notesOf('otto') };

type Watch = NonNullable<HintsOptions['watch']>;

/** A file watcher that ends with an error of the system once it is begun. */
const failing = (code: string): Watch =>
  (() => {
    const watcher = Object.assign(new EventEmitter(), { close: () => Promise.resolve() });
    setTimeout(() => watcher.emit('error', Object.assign(new Error(code), { code })), 20);
    return watcher;
  }) as unknown as Watch;

const throwing: Watch = () => {
  throw Object.assign(new Error('too many open files'), { code: 'EMFILE' });
};

describe('when the system watches no more', () => {
  test.concurrent.each([
    ['ENOSPC', failing('ENOSPC')],
    ['EMFILE', failing('EMFILE')],
    ['EMFILE', throwing],
  ])('%s is told of once, and the files are looked through', async (code, watch) => {
    const watched = await watchFolder(FILES, { watch });
    for (const mark of [2, 3]) {
      watched.write('a.bowl', notesOf('wren', mark));
      await watched.shows('wren', mark);
    }
    expect(watched.troubles).toEqual([
      `The system tells of no more changes (${code}). The files are looked through every 0.5 s instead.`,
    ]);
    await endsCold(watched);
  });
});

test.concurrent('a watcher that hears nothing at all loses no change', async () => {
  const deaf = (() => Object.assign(new EventEmitter(), { close: () => Promise.resolve() })) as unknown as Watch;
  const watched = await watchFolder(FILES, { watch: deaf });
  watched.write('c/d/e.bowl', notesOf('nia'));
  await watched.shows('nia', 1);
  watched.write('c/d/e.bowl', notesOf('nia', 2));
  await watched.shows('nia', 2);
  rmSync(join(watched.root, 'c'), { recursive: true });
  await until('her card goes', () => watched.page('clients/nia.html') === '');
  await endsCold(watched);
});

test.concurrent('quick git checkouts away and back, and an edit after them', async () => {
  const files = Object.fromEntries(
    Array.from({ length: 20 }, (_, index) => [`y/2025/c${index}.bowl`, notesOf(`c${index}`)]),
  );
  const watched = await watchFolder({ 'shelf.bowl': SHELF, ...files });
  const git = (...words: string[]): void => {
    const who = ['-c', 'user.name=t', '-c', 'user.email=t@example.invalid', '-c', 'commit.gpgsign=false'];
    execFileSync('git', [...who, ...words], { cwd: watched.root, stdio: 'pipe' });
  };
  git('init', '-q', '-b', 'main');
  git('add', '-A');
  git('commit', '-qm', 'a');
  git('checkout', '-qb', 'other');
  rmSync(join(watched.root, 'y'), { recursive: true });
  writeAt(join(watched.root, 'y/2026/n.bowl'), notesOf('nia'));
  git('add', '-A');
  git('commit', '-qm', 'b');
  await watched.shows('nia', 1);
  await until('the others go', () => watched.page('clients/c3.html') === '');
  git('checkout', '-q', 'main');
  await watched.shows('c3', 1);
  for (let times = 0; times < 3; times += 1) {
    git('checkout', '-q', 'other');
    git('checkout', '-q', 'main');
  }
  await sleep(300);
  writeFileSync(join(watched.root, 'y/2025/c3.bowl'), notesOf('c3', 2));
  await watched.shows('c3', 2);
  watched.write('y/2025/new.bowl', notesOf('new'));
  await watched.shows('new', 1);
  await until('she of the other branch goes', () => watched.page('clients/nia.html') === '');
  await endsCold(watched);
});

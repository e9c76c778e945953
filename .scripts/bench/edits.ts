import { spawn } from 'node:child_process';
import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

/** Milliseconds from a file's saving until its page holds what was typed. */
export type Edits = { readonly edits: number; readonly middle: number; readonly p95: number; readonly first: number };

const isDrawn = (page: string, mark: string, before: number): boolean => {
  try {
    const { mtimeMs, ino } = statSync(page);
    return mtimeMs + ino !== before && readFileSync(page, 'utf8').includes(mark);
  } catch {
    return false;
  }
};

/** Watches a journal and types a line into one client’s file after another; each edit waits for its page. */
export const editsToPages = async (folder: string, edits: number): Promise<Edits> => {
  const out = mkdtempSync(join(tmpdir(), 'bench-pages-'));
  const began = performance.now();
  const watch = spawn(process.execPath, ['dist/bowlbook.js', 'watch', folder, '--out', out], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  try {
    await new Promise<void>((ready, failed) => {
      let said = '';
      watch.stdout.on('data', (chunk: Buffer) => {
        said += chunk;
        if (said.includes('Ctrl-C')) ready();
      });
      watch.on('exit', (code) => failed(new Error(`watch ended with ${code}`)));
    });
    const first = performance.now() - began;
    const files = readdirSync(join(folder, 'clients')).sort();
    const times: number[] = [];
    for (let index = 0; index < edits; index++) {
      const file = join(folder, 'clients', files[(index * 97) % files.length] as string);
      const client = /^client (\S+)/m.exec(readFileSync(file, 'utf8'))?.[1] ?? '';
      const page = join(out, 'clients', `${client}.html`);
      const { mtimeMs, ino } = statSync(page);
      const mark = `mark-${index}-typed`;
      const saved = performance.now();
      appendFileSync(file, `  note ${mark}\n`);
      while (!isDrawn(page, mark, mtimeMs + ino)) await pause(1);
      times.push(performance.now() - saved);
      // As between two saves of a hand: the lists of clients and findings are drawn after the card, and done by then.
      await pause(900);
    }
    times.sort((a, b) => a - b);
    const at = (share: number): number => times[Math.min(times.length - 1, Math.floor(share * times.length))] as number;
    return { edits, middle: at(0.5), p95: at(0.95), first };
  } finally {
    watch.kill('SIGKILL');
    rmSync(out, { recursive: true, force: true });
  }
};

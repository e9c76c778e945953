import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openSession } from '../../src/rules/session.ts';

/** Milliseconds from a keystroke until its findings are known, and the most clients that one of them worked out. */
export type Keystrokes = {
  readonly where: string;
  readonly middle: number;
  readonly p95: number;
  readonly worked: number;
};

const DAY = '2026-11-25';

/** A day file in which thirty clients of the journal come. */
const dayFile = (clients: readonly string[]): string =>
  clients
    .map(
      (name, index) =>
        `visit ${DAY} 1${index % 8}:00 ${name} by io at quay\n  bowl A 40 cream 6/0 + 6% 1:1.5\n  on 1${index % 8}:10 A roots\n  off 1${index % 8}:50 A\n`,
    )
    .join('\n');

type Typing = readonly [where: string, path: string, type: (text: string, stroke: number) => string];

const enter = (text: string, stroke: number): string => '\n'.repeat(1 + (stroke % 3)) + text;

/** Types in a client's file, a day file and the shelf of a made journal, in one process that keeps it checked. */
export const keystrokes = (folder: string, strokes: number): Keystrokes[] => {
  const shelf = join(folder, 'shelf.bowl');
  const own = readdirSync(join(folder, 'clients'))
    .sort()
    .map((name) => join(folder, 'clients', name));
  const files = new Map([shelf, ...own].map((path) => [path, readFileSync(path, 'utf8')]));
  const names = own.slice(0, 30).map((path) => /^client (\S+)/m.exec(files.get(path) ?? '')?.[1] ?? '');
  const day = join(folder, 'day.bowl');
  files.set(day, dayFile(names));
  const session = openSession();
  const put = (path: string, text: string): ReadonlySet<string> => {
    session.put(path, Buffer.from(text));
    const settled = session.settle(DAY);
    settled.all();
    return settled.redone;
  };
  for (const [path, text] of files) session.put(path, Buffer.from(text));
  session.settle(DAY).all();
  const [client = ''] = own;
  const typings: readonly Typing[] = [
    ['a client’s file, a figure', client, (text, at) => text.replace(/left A \d+/, `left A ${1 + (at % 9)}`)],
    ['a client’s file, Enter at its top', client, enter],
    ['a day file, a figure', day, (text, at) => text.replace('A 40', `A ${41 + (at % 9)}`)],
    ['a day file, Enter at its top', day, enter],
    ['the shelf, a comment', shelf, (text, at) => text.replace('  mix', `  # tube ${at}\n  mix`)],
    ['the shelf, a price nobody used', shelf, (text, at) => text.replace('32.00', `32.${10 + (at % 90)}`)],
  ];
  return typings.map(([where, path, type]) => {
    const text = files.get(path) ?? '';
    let worked = 0;
    const times = Array.from({ length: strokes }, (_, at) => {
      const typed = type(text, at);
      const began = performance.now();
      worked = Math.max(worked, put(path, typed).size);
      return performance.now() - began;
    }).sort((a, b) => a - b);
    put(path, text);
    const at = (share: number): number => times[Math.min(strokes - 1, Math.floor(share * strokes))] ?? 0;
    return { where, middle: at(0.5), p95: at(0.95), worked };
  });
};

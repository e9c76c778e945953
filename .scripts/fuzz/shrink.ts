import type { Case } from './cases.ts';

/** What a failing case is known by, whatever its figures and texts are. */
export const classOf = (message: string): string =>
  message
    .replace(/"(?:[^"\\]|\\.)*"?|`[^`]*`/g, '…')
    .replace(/\d+/g, 'n')
    .slice(0, 80);

type Text = { readonly text: string; readonly coding: 'utf8' | 'latin1' };

const textOf = (bytes: Buffer): Text => {
  const text = bytes.toString('utf8');
  return Buffer.from(text).equals(bytes)
    ? { text, coding: 'utf8' }
    : { text: bytes.toString('latin1'), coding: 'latin1' };
};

/** The pieces without runs of them, the longest runs first. */
function* without<T>(pieces: readonly T[]): Generator<T[]> {
  for (let size = pieces.length; size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2))
    for (let at = 0; at < pieces.length; at += size) yield pieces.toSpliced(at, size);
}

function* smaller(one: Case): Generator<Case> {
  const { kind, files } = one;
  if (files.length > 1 && (kind === 'journal' || kind === 'chain'))
    for (const fewer of without(files)) yield { kind, files: fewer };
  for (const [index, bytes] of files.entries()) {
    const { text, coding } = textOf(bytes);
    const put = (short: string): Case => ({ kind, files: files.with(index, Buffer.from(short, coding)) });
    for (const lines of without(text.split('\n'))) yield put(lines.join('\n'));
    for (const characters of without([...text])) yield put(characters.join(''));
  }
}

/** Longest time that is spent on making one case small, in milliseconds. */
const PATIENCE = 20_000;

/**
 * A smaller case that fails in the same way, as small as the time makes it. `failsWith` gives the message of a case that
 * fails.
 */
export const shrink = (one: Case, failsWith: (one: Case) => string | undefined): Case => {
  const way = classOf(failsWith(one) ?? '');
  let best = one;
  const end = performance.now() + PATIENCE;
  for (let found = true; found; ) {
    found = false;
    for (const next of smaller(best)) {
      if (performance.now() > end) return best;
      const message = failsWith(next);
      if (message === undefined || classOf(message) !== way) continue;
      best = next;
      found = true;
      break;
    }
  }
  return best;
};

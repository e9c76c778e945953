import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const TEXT = readFileSync('DEVELOPERS.md', 'utf8');
const ROOMS = ['src', 'tests', '.scripts', 'grammar', 'journals', '.ci'];
const paths = ROOMS.flatMap((room) =>
  readdirSync(room, { recursive: true, encoding: 'utf8' }).map((name) => `${room}/${name.replaceAll('\\', '/')}`),
);
const tops = readdirSync('.');

const links = [...TEXT.matchAll(/\]\(([^)#]+)[^)]*\)/gu)].map(([, to = '']) => to);
const spans = [...new Set([...TEXT.matchAll(/`([^`\n]+)`/gu)].map(([, span = '']) => span))];
/** Names of files and folders: what is written with a slash at its end, or an ending. */
const named = spans.filter((span) => /^[\w./-]+(?:\.(?:ts|mjs|md|json|bowl)|\/)$/u.test(span));
/** What the build makes and the repository does not hold. */
const MADE = /^dist\//u;

const isThere = (name: string): boolean => {
  const own = name.replace(/\/$/u, '');
  return tops.includes(own) || paths.some((path) => path === own || path.endsWith(`/${own}`));
};

test('every link of DEVELOPERS.md leads somewhere', () => {
  expect(links.length).toBeGreaterThan(10);
  expect(links.filter((to) => !existsSync(to))).toEqual([]);
});

test('every file and folder that it names is there', () => {
  expect(named.length).toBeGreaterThan(30);
  expect(named.filter((name) => !MADE.test(name) && !isThere(name))).toEqual([]);
});

test('every command of the work is in it, and none that is not one', () => {
  const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };
  const said = new Set([...TEXT.matchAll(/\bnpm (?:run )?([a-z:]+)/gu)].map(([, name = '']) => name));
  // Parts of `npm test`, and what npm itself does before packing.
  const within = ['build', 'check:types', 'lint', 'prepack'];
  expect(Object.keys(scripts).filter((name) => !said.has(name) && !within.includes(name))).toEqual([]);
  expect([...said].filter((name) => name !== 'pack' && !(name in scripts))).toEqual([]);
});

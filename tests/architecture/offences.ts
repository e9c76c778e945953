import { folderOf, importsOf, onlyCode, type Source, targetOf } from './imports.ts';
import { allowances, confinements, leaks } from './layout.ts';

/** One line for each import of the file that goes against the dependency table. */
export function directionOffences({ path, text }: Source): readonly string[] {
  const folder = folderOf(path);
  const allowance = folder === undefined ? undefined : allowances[folder];
  if (folder === undefined || allowance === undefined) return [`${path}: its folder is not in the dependency table`];
  const { may, types = [] } = allowance;
  const allowed = [folder, 'text', ...may, ...types.map((name) => `${name} (types only)`)].join(', ');
  return importsOf(text).flatMap(({ specifier, typeOnly }) => {
    const target = targetOf(path, specifier);
    if (specifier === '(computed)') return [`${path}: computed import(); a specifier is written out in full`];
    if (target === undefined) return [];
    const to = folderOf(target);
    if (to === undefined)
      return folder === 'cli' ? [] : [`${path}: imports ${specifier}; ${folder} may import ${allowed}`];
    if (to === folder || to === 'text' || may.includes(to) || (typeOnly && types.includes(to))) return [];
    return [`${path}: imports ${specifier}; ${folder} may import ${allowed}`];
  });
}

/** One line for each package or built-in that the file imports outside the files it is confined to. */
export function confinementOffences({ path, text }: Source): readonly string[] {
  return importsOf(text).flatMap(({ specifier, typeOnly }) =>
    confinements
      .filter((rule) => rule.specifier.test(specifier) && !rule.within.test(path) && !(typeOnly && rule.typesAnywhere))
      .map((rule) => `${path}: imports ${specifier}; allowed in ${rule.allowed}`),
  );
}

const DISK = /^(?:node:)?fs(?:\/promises)?$/;

/** What of the disk's module only looks; whatever is not among these could change it. */
const LOOKING = new Set([
  ...['accessSync', 'constants', 'existsSync', 'lstatSync', 'readdirSync', 'readFileSync', 'realpathSync', 'statSync'],
  ...['watch', 'BigIntStats', 'Dirent', 'FSWatcher', 'Stats'],
]);

/** The one file that may change a disk. */
export const DOOR = 'src/cli/write/door.ts';

/** One line for each way in which a file could change a disk without going through the door. */
export const doorOffences = ({ path, text }: Source): readonly string[] => {
  if (path === DOOR) return [];
  const code = text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
  const offences: string[] = [];
  for (const [, clause = '', specifier = ''] of code.matchAll(
    /\b(?:import|export)\b([^'"`;]*?)\bfrom\s*['"]([^'"]+)['"]/g,
  )) {
    if (!DISK.test(specifier)) continue;
    const names = /^\s*(?:type\s+)?\{([^}]*)\}\s*$/.exec(clause)?.[1];
    if (names === undefined || specifier.endsWith('promises')) offences.push(`${path}: all of ${specifier}`);
    for (const name of (names ?? '').split(',').map((one) => one.trim().replace(/^type\s+|\s+as\s+.*$/g, '')))
      if (name !== '' && !LOOKING.has(name)) offences.push(`${path}: ${name} of ${specifier}`);
  }
  if (/\bimport\s*(?:\(\s*)?['"](?:node:)?fs\b/.test(code)) offences.push(`${path}: fs, not by names`);
  for (const [way] of code.matchAll(
    /['"](?:node:)?(?:child_process|worker_threads|sqlite)['"]|\bgetBuiltinModule\b|\bprocess\.binding\b|\brequire\(/g,
  ))
    offences.push(`${path}: ${way}`);
  return offences;
};

/** The one file that writes to standard output and standard error. */
export const PRINT = 'src/cli/print.ts';

/** One line for each way in which a file could write to the terminal past the one door. */
export const printOffences = ({ path, text }: Source): readonly string[] =>
  path === PRINT
    ? []
    : [
        ...onlyCode(text).matchAll(
          /\bconsole\b|\bprocess\s*\??\.\s*(?:stdout|stderr|report|emitWarning)\b|\bstd(?:out|err)\b[^{}]*\}\s*=\s*process\b|\bWriteStream\b|\bprocess\s*\[(?!stream\]\.isTTY)/g,
        ),
      ].map(([way]) => `${path}: ${way}`);

/** One line for each use of the clock, the locale or chance outside src/cli/. */
export function leakOffences({ path, text }: Source): readonly string[] {
  if (path.startsWith('src/cli/')) return [];
  return onlyCode(text)
    .split('\n')
    .flatMap((line, index) =>
      leaks.flatMap((leak) => {
        const found = leak.exec(line)?.[0];
        return found === undefined ? [] : [`${path}:${index + 1}: ${found}; allowed in src/cli/**`];
      }),
    );
}

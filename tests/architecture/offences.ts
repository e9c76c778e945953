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

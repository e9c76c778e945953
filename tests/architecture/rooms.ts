import { importsOf, type Source, targetOf, withoutComments } from './imports.ts';

/** The circles of files, each once, as the paths along it; imports of types count. */
export const circles = (sources: readonly Source[]): readonly string[] => {
  const known = new Map(sources.map(({ path, text }) => [path, importedBy(path, text)]));
  const found: string[] = [];
  const done = new Set<string>();
  const along: string[] = [];
  const walk = (path: string): void => {
    const met = along.indexOf(path);
    if (met >= 0) found.push([...along.slice(met), path].join(' > '));
    if (met >= 0 || done.has(path)) return;
    along.push(path);
    for (const next of known.get(path) ?? []) walk(next);
    along.pop();
    done.add(path);
  };
  for (const path of known.keys()) walk(path);
  return found;
};

const importedBy = (path: string, text: string): readonly string[] =>
  importsOf(text).flatMap(({ specifier }) => targetOf(path, specifier) ?? []);

/** Names that a file imports or passes on, by the file they come from; `*` for all of it. */
const namesFrom = ({ path, text }: Source): readonly (readonly [string, string])[] => {
  const code = withoutComments(text);
  const found: [string, string][] = [];
  for (const [, clause = '', specifier = ''] of code.matchAll(
    /^\s*(?:import|export)\b([^'"`;]*?)\bfrom\s*['"]([^'"]+)['"]/gm,
  )) {
    const target = targetOf(path, specifier);
    if (target === undefined) continue;
    const named = /\{([^}]*)\}/.exec(clause)?.[1];
    const outer = clause.replace(/\{[^}]*\}/, '').replace(/\btype\b|,/g, '');
    if (outer.includes('*')) found.push([target, '*']);
    else if (outer.trim() !== '') found.push([target, 'default']);
    for (const one of named?.split(',') ?? []) {
      const name = /^\s*(?:type\s+)?([\w$]+)/.exec(one)?.[1];
      if (name !== undefined) found.push([target, name]);
    }
  }
  // What is imported late is taken apart at once or asked by its name: all of it counts as asked for.
  for (const [, specifier = ''] of code.matchAll(/\bimport\(\s*['"]([^'"]+)['"]/g)) {
    const target = targetOf(path, specifier);
    if (target !== undefined) found.push([target, '*']);
  }
  return found;
};

const exported = (code: string): readonly string[] =>
  [...code.matchAll(/^export\s+(?:async\s+)?(?:const|let|function\*?|class)\s+([\w$]+)/gm)].map(
    ([, name = '']) => name,
  );

/**
 * Values that a file offers and nothing asks for: no file that a command or script reaches imports them, and their own
 * uses them no further. `path: name`, in order. `roots`: the paths of commands and scripts.
 */
export const unasked = (sources: readonly Source[], roots: readonly string[]): readonly string[] => {
  const isRoot = new Set(roots);
  const byPath = new Map(sources.map((source) => [source.path, source]));
  const reached = new Set<string>();
  const asked = new Set<string>();
  const reach = (path: string): void => {
    const source = byPath.get(path);
    if (source === undefined || reached.has(path)) return;
    reached.add(path);
    for (const [target, name] of namesFrom(source)) {
      asked.add(`${target}: ${name}`);
      reach(target);
    }
    for (const target of importedBy(path, source.text)) reach(target);
  };
  for (const path of roots) reach(path);
  return sources
    .filter(({ path }) => path.startsWith('src/'))
    .flatMap(({ path, text }) => {
      if (isRoot.has(path) || asked.has(`${path}: *`)) return [];
      const code = withoutComments(text);
      return exported(code)
        .filter((name) => !asked.has(`${path}: ${name}`))
        .filter(
          (name) =>
            !reached.has(path) ||
            (code.match(new RegExp(`(?:(?<![\\w$.'])|\\.\\.\\.)${name}\\b`, 'g')) ?? []).length < 2,
        )
        .map((name) => `${path}: ${name}`);
    });
};

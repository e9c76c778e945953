import { posix } from 'node:path';

/** One source file: its path from the top of the repository, with forward slashes, and its text. */
export type Source = { readonly path: string; readonly text: string };

/** One import: the specifier as written, and whether the whole statement is type-only. */
export type Import = { readonly specifier: string; readonly typeOnly: boolean };

const commentOrText = /\/\*[\s\S]*?\*\/|\/\/[^\n]*|`(?:\\[\s\S]|[^`\\])*`|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"/g;

/** The text without its comments; line breaks stay. */
export function withoutComments(text: string): string {
  return text.replace(commentOrText, (match) => (/^\/[/*]/.test(match) ? match.replace(/[^\n]/g, ' ') : match));
}

/** The text without comments and without the content of quoted strings; templates stay, since they hold code. */
export function onlyCode(text: string): string {
  return withoutComments(text).replace(commentOrText, (match) => (/^['"]/.test(match) ? "''" : match));
}

/** Every import and re-export of a text: static, side-effect and dynamic. */
export function importsOf(text: string): readonly Import[] {
  const code = withoutComments(text);
  const found: Import[] = [];
  for (const match of code.matchAll(/^\s*(?:import|export)\b(\s+type\b)?[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]/gm)) {
    found.push({ specifier: match[2] ?? '', typeOnly: match[1] !== undefined });
  }
  for (const match of code.matchAll(/^\s*import\s*['"]([^'"]+)['"]/gm)) {
    found.push({ specifier: match[1] ?? '', typeOnly: false });
  }
  for (const match of code.matchAll(/\bimport\(\s*(?:['"]([^'"]+)['"])?/g)) {
    found.push({ specifier: match[1] ?? '(computed)', typeOnly: false });
  }
  return found;
}

/** The folder of src/ a path stands in; `undefined` for a path outside src/ or directly in it. */
export function folderOf(path: string): string | undefined {
  return /^src\/([^/]+)\//.exec(path)?.[1];
}

/** The path a relative specifier names, from the top of the repository; `undefined` for a package or built-in. */
export function targetOf(from: string, specifier: string): string | undefined {
  return specifier.startsWith('.') ? posix.join(posix.dirname(from), specifier) : undefined;
}

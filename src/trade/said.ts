import { saidUndenied } from './denial.ts';

/**
 * The words by which a text says something, as `pattern` (with the flag `g`) knows it, in small letters; undefined
 * without them, and where all are denied.
 */
export function said(text: string, pattern: RegExp): string | undefined {
  return saidUndenied(text, pattern)?.[0].toLowerCase();
}

const NO =
  /^\s*(?:none|nil|no|nope|never|nothing|n\/a|nein|keine?|nichts|nie|non|aucune?|rien|jamais|não|nao|nada|nunca|ninguno|ninguna|nenhuma?)(?!\p{L})[^\p{L}]*(?:(?:that (?:she|he|they) knows? of|known|new|change(?:s|d)?|at all)[^\p{L}]*)?$/iu;

/** Whether an answer is a bare no: `none`, `nothing new`, `nein`. */
export function isNo(text: string): boolean {
  return NO.test(text);
}

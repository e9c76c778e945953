import { said } from './said.ts';

/** Words for hair that was straightened for good by alkali: the trade's, no source; `relaxed about it` is none. */
const RELAXED =
  /(?<!\p{L})(?:relaxers?|(?:chemically|lye|alkali) (?:straightened|relaxed)|(?:no-?)lye|sodium hydroxide|guanidine|texlax(?:ed)?|relaxed (?:hair|lengths?|ends?|roots?|mids|curls?|top|sides?|nape|in|since|every|twice|last|\d)|(?:hair|lengths?|ends?|roots?|curls?) (?:is|are|was|were|been|all)?\s?relaxed|entkrausung|entkraust|chemisch geglättet|chemische glättung|défris(?:age|ée?s?|ant)|relaxamento (?:químico|capilar|nas|no|na|com|a cada|desde)|alisamento químico|guanidina|desriz(?:ado|ante)|alisado químico|hidróxido de s[oó]dio)(?!\p{L})/giu;

/** The word by which a text says that the hair was relaxed; undefined without one, and where it is denied. */
export function relaxedTold(text: string): string | undefined {
  return said(text, RELAXED);
}

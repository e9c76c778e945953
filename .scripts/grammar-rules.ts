import type { ISerializedGast } from 'chevrotain';
import { TOKENS } from '../src/notation/lexer.ts';
import { makeGrammar } from '../src/notation/line-grammar.ts';

/** The line grammar as plain data, from the parser itself. */
export type Part =
  | { readonly kind: 'token'; readonly name: string }
  | { readonly kind: 'rule'; readonly name: string }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'sequence' | 'choice'; readonly parts: readonly Part[] }
  | { readonly kind: 'option' | 'repeat'; readonly part: Part };

export type GrammarRule = { readonly name: string; readonly part: Part };

/** A node of the parser's own description; the published type leaves out what some nodes hold. */
type Gast = ISerializedGast & { readonly name?: string };

const joined = (nodes: readonly Gast[]): Part => {
  const parts = nodes.map(partOf);
  const [only] = parts;
  return parts.length === 1 && only !== undefined ? only : { kind: 'sequence', parts };
};

const partOf = (node: Gast): Part => {
  const inside = (node.definition ?? []) as Gast[];
  switch (node.type) {
    case 'Terminal':
      return { kind: 'token', name: node.name ?? '' };
    case 'NonTerminal':
      return { kind: 'rule', name: node.name ?? '' };
    case 'Alternation':
      return { kind: 'choice', parts: inside.map(partOf) };
    case 'Option':
      return { kind: 'option', part: joined(inside) };
    case 'Repetition':
      return { kind: 'repeat', part: joined(inside) };
    case 'Rule':
    case 'Alternative':
      return joined(inside);
    default:
      throw new Error(`the grammar holds a ${node.type}, which has no drawing yet`);
  }
};

/** Every rule of the line grammar, in the parser's order. */
export const grammarRules = (): readonly GrammarRule[] =>
  makeGrammar()
    .getSerializedGastProductions()
    .map((rule) => ({ name: (rule as Gast).name ?? '', part: partOf(rule as Gast) }));

/** Every kind of token with its pattern, in the order in which the lexer tries them. */
export const tokenPatterns = (): readonly { readonly name: string; readonly pattern: string }[] =>
  TOKENS.map(({ name, PATTERN, LABEL }) => ({
    name,
    pattern: PATTERN instanceof RegExp ? PATTERN.source : (LABEL ?? ''),
  }));

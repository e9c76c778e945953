import { jsonSchemas } from '../src/records/json-schema.ts';
import { drawRails } from './draw-rails.ts';
import { ruleNames, rulesIndex } from './generate-rules.ts';
import { grammarEbnf } from './grammar-ebnf.ts';
import { type GrammarRule, grammarRules, type Part } from './grammar-rules.ts';
import { nameFields } from './name-fields.ts';
import { rulePages } from './rule-pages.ts';
import { wordTable } from './word-table.ts';

const kebab = (name: string): string => name.replace(/(?<=[a-z])(?=[A-Z])/g, '-').toLowerCase();

/** A rule in words, for whoever does not see its drawing. */
const inWords = (part: Part): string => {
  switch (part.kind) {
    case 'token':
    case 'rule':
      return part.name;
    case 'text':
      return part.text;
    case 'option':
      return `${inWords(part.part)} or nothing`;
    case 'repeat':
      return `any number of: ${inWords(part.part)}`;
    case 'choice':
      return part.parts.map(inWords).join(' or ');
    case 'sequence':
      return part.parts.map(inWords).join(', then ');
  }
};

const diagrams = (): [string, string][] =>
  grammarRules()
    .filter(({ part }: GrammarRule) => part.kind !== 'token')
    .map(({ name, part }) => [`grammar/diagrams/${kebab(name)}.svg`, drawRails(name, inWords(part), part)]);

const schemas = (): [string, string][] =>
  [...jsonSchemas()].map(([name, schema]) => [`grammar/schema/${name}`, `${JSON.stringify(schema, undefined, 2)}\n`]);

/** The files of src/ that everything else is generated through. */
export const ruleFiles = (): ReadonlyMap<string, string> =>
  new Map([
    ['src/rules/all.ts', rulesIndex()],
    ['src/rules/rule-names.ts', ruleNames()],
    ['src/records/name-fields.ts', nameFields()],
  ]);

/** Every generated file of grammar/, by its path from the top of the repository. */
export const grammarFiles = (): ReadonlyMap<string, string> =>
  new Map([
    ['grammar/grammar.ebnf', grammarEbnf()],
    ['grammar/words.md', wordTable()],
    ['grammar/rules.md', rulePages()],
    ...schemas(),
    ...diagrams(),
  ]);

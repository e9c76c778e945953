/** What a folder of src/ may import: anything of `may`, only types of `types`. Every folder may import text/ and itself. */
export type Allowance = { readonly may: readonly string[]; readonly types?: readonly string[] };

const all = ['trade', 'notation', 'records', 'journal', 'reckon', 'rules', 'pages', 'exchange'];

/** The direction of dependencies, folder by folder. */
export const allowances: Readonly<Record<string, Allowance>> = {
  text: { may: [] },
  trade: { may: [] },
  notation: { may: ['trade'] },
  records: { may: ['notation', 'trade'] },
  journal: { may: ['records', 'trade'] },
  reckon: { may: ['journal', 'records', 'trade'] },
  // The session keeps a journal checked while its files change, so it puts them into the journal's store itself.
  rules: { may: ['reckon', 'journal', 'trade'], types: ['records'] },
  // A page shows what was noted as well as what was worked out, so it knows records and journal too.
  pages: { may: ['rules', 'reckon', 'journal', 'records', 'trade'] },
  exchange: { may: ['rules', 'reckon', 'journal', 'records', 'trade'] },
  cli: { may: all },
};

/** A package or built-in that only some files may import. `typesAnywhere`: a type-only import is free. */
export type Confinement = {
  readonly specifier: RegExp;
  readonly within: RegExp;
  readonly allowed: string;
  readonly typesAnywhere?: boolean;
};

/** Where packages and built-ins may be imported. */
export const confinements: readonly Confinement[] = [
  {
    specifier: /^(node:)?fs(\/promises)?$/,
    within: /^src\/(cli\/|journal\/find\.ts$)/,
    allowed: 'src/journal/find.ts, src/cli/**',
  },
  { specifier: /^@?chevrotain(\/|$)/, within: /^src\/notation\//, allowed: 'src/notation/**' },
  { specifier: /^commander(\/|$)/, within: /^src\/cli\//, allowed: 'src/cli/**' },
  {
    specifier: /^chokidar(\/|$)/,
    within: /^src\/(cli\/|journal\/watch\.ts$)/,
    allowed: 'src/cli/**, src/journal/watch.ts',
  },
  {
    specifier: /^zod(\/|$)/,
    within: /^src\/records\/(schema\/|json-schema\.ts$)/,
    allowed: 'src/records/schema/**, src/records/json-schema.ts (type-only imports anywhere)',
    typesAnywhere: true,
  },
  { specifier: /^markdown-it(-|\/|$)/, within: /^src\/pages\//, allowed: 'src/pages/**' },
];

/** Code through which the clock, the locale or chance would leak into the output; src/cli/ alone may hold it. */
export const leaks: readonly RegExp[] = [
  /\bDate\.now\b/,
  /\bnew Date\b/,
  /\bIntl\./,
  /\.toLocale\w*/,
  /\.localeCompare\b/,
  /\bMath\.random\b/,
];

/** The names that may stand at the top of the repository. */
export const topLevelName =
  /^(README\.md|DEVELOPERS\.md|package\.json|package-lock\.json|tsconfig[^/]*\.json|LICENSE|src|grammar|journals|tests|\..+|(vitest|biome)[^/]*)$/;

import type { ClientFile, Journal } from '../src/journal/journal.ts';
import { joinSources } from '../src/journal/journal.ts';
import { readSource } from '../src/journal/source.ts';
import type { BodyWord } from '../src/notation/words.ts';
import { cardMarkdown } from '../src/pages/card.ts';
import { usageMarkdown } from '../src/pages/usage-page.ts';
import { cautionsOn, holdsOn, reactionsOf, testsFor } from '../src/reckon/client/state.ts';
import type { VisitReckoned } from '../src/reckon/model.ts';
import { reckonAll } from '../src/reckon/visit.ts';
import { RULES } from '../src/rules/all.ts';
import { judge } from '../src/rules/judging.ts';

/** What one word changes, as measured on its example: a journal compiled with its line and without. */
export type WordEffects = {
  /** Headings of the card, of the product report, parts of the shelf or the stock that differ. */
  readonly shown: readonly string[];
  /** Parts of the reckoning that differ. */
  readonly reckoned: readonly string[];
  /** Rules that the line makes fire or fall silent, those about the typing of any line apart. */
  readonly rules: readonly string[];
  /** Rules that fire when the line stands twice, or has words left over. */
  readonly typing: readonly string[];
};

/** Rules about the typing of a line, whatever it says. */
const TYPING: ReadonlySet<string> = new Set(
  RULES.filter(({ family }) => family === 'reading' || family === 'typing').map(({ name }) => name),
);

const DAY = '2026-10-01';
const CLIENT = 'ada-quill';

type Compiled = {
  readonly journal: Journal;
  readonly client: ClientFile;
  readonly visits: readonly VisitReckoned[];
  readonly rules: ReadonlySet<string>;
  readonly card: string;
  readonly usage: string;
};

const compile = (text: string): Compiled => {
  const journal = joinSources([readSource('example.bowl', Buffer.from(text))]);
  const client = journal.clients.get(CLIENT);
  if (client === undefined) throw new Error(`an example has no client ${CLIENT}:\n${text}`);
  const reckoned = reckonAll(journal);
  const { findings, answered } = judge(journal).all();
  const visits = reckoned.get(CLIENT) ?? [];
  const own = [...findings, ...answered.filter((one) => !findings.includes(one))];
  return {
    journal,
    client,
    visits,
    rules: new Set(findings.map(({ rule }) => rule)),
    card: cardMarkdown(journal, client, visits, own, { on: DAY }),
    usage: usageMarkdown(journal, visits, { from: '2026-01-01', to: '2026-12-31' }),
  };
};

/** Where a thing stands and what it was made from is not what was worked out of it. */
const STANDS = new Set(['item', 'stood', 'visit', 'client', 'salon', 'component', 'place', 'in', 'policy', 'fact']);

const printed = (value: unknown): string =>
  JSON.stringify(value, (key, inner: unknown) => {
    if (STANDS.has(key)) return undefined;
    if (typeof inner === 'bigint') return String(inner);
    if (inner instanceof Map) return [...inner];
    return inner instanceof Set ? [...inner] : inner;
  }) ?? '';

/** What is worked out of a journal, part by part. */
const reckonings = ({ client, visits, journal }: Compiled): ReadonlyMap<string, string> => {
  const stood = client.visits;
  const { hours } = journal.salon;
  const parts: [string, unknown][] = [
    ['age', visits.map(({ age }) => age)],
    ['bowls', visits.map(({ bowls }) => bowls.map(({ cost: _cost, ...bowl }) => withoutCost(bowl)))],
    ['cost', visits.map(({ money }) => money.cost)],
    ['use of products', visits.map(({ uses }) => uses.map(withoutCost))],
    ['clock', visits.map(({ clock }) => clock)],
    ['money', visits.map(({ money: { cost: _cost, costMissing: _missing, ...money } }) => money)],
    ['growth', visits.map(({ growth }) => growth)],
    ['time since colour', visits.map(({ daysSinceColour, daysSinceRoots }) => [daysSinceColour, daysSinceRoots])],
    ['tests', testsFor(client, hours)],
    ['holds', holdsOn(DAY, client, stood)],
    ['cautions', cautionsOn(DAY, client)],
    ['reactions', reactionsOf(client, stood, hours)],
  ];
  return new Map(parts.map(([name, value]) => [name, printed(value)]));
};

const withoutCost = <T extends object>(value: T): object => {
  const { cost: _cost, ...rest } = value as T & { cost?: unknown; portions?: readonly object[] };
  return rest.portions === undefined ? rest : { ...rest, portions: rest.portions.map(withoutCost) };
};

const differing = (one: ReadonlyMap<string, string>, other: ReadonlyMap<string, string>): string[] =>
  [...new Set([...one.keys(), ...other.keys()])].filter((key) => one.get(key) !== other.get(key));

/** Each section of a page by its heading; a visit's heading is `visit`, whatever its day. */
const sections = (markdown: string): ReadonlyMap<string, string> => {
  const found = new Map<string, string>();
  let heading = 'top';
  for (const line of markdown.split('\n')) {
    const next = /^#+ (.*)$/.exec(line)?.[1];
    if (next !== undefined) heading = /\d{4}/.test(next) ? 'visit' : line.startsWith('# ') ? 'top' : next;
    found.set(heading, `${found.get(heading) ?? ''}${line}\n`);
  }
  return found;
};

const shelfParts = ({ journal }: Compiled): ReadonlyMap<string, string> =>
  new Map(
    [...journal.shelf.values()].flatMap((item) =>
      Object.entries(item).map(([key, value]): [string, string] => [`${item.name} ${key}`, printed(value)]),
    ),
  );

const shownIn = (withLine: Compiled, without: Compiled): string[] => {
  const card = differing(sections(withLine.card), sections(without.card)).map((name) => `card: ${name}`);
  const usage = withLine.usage === without.usage ? [] : ['product report'];
  if (card.length + usage.length > 0) return [...card, ...usage];
  const shelf = differing(shelfParts(withLine), shelfParts(without)).filter((name) => !name.endsWith(' stood'));
  if (shelf.length > 0) return ['shelf'];
  return printed(withLine.journal.stocks) === printed(without.journal.stocks) ? [] : ['stock'];
};

const MARKED = /^>(.*)$/m;

/** Measures what a word does, on its example. */
export const effectsOf = (word: BodyWord, example: string): WordEffects => {
  const line = MARKED.exec(example)?.[1];
  if (line === undefined || line.trim().split(' ')[0] !== word) throw new Error(`the example of ${word} marks no line`);
  const withLine = compile(example.replace(MARKED, ` ${line}`));
  // A comment in its place keeps every other line where it is.
  const without = compile(example.replace(MARKED, '#'));
  const twice = compile(example.replace(MARKED, ` ${line}\n ${line}`));
  const over = compile(example.replace(MARKED, ` ${line} /`));
  return {
    shown: shownIn(withLine, without),
    reckoned: differing(reckonings(withLine), reckonings(without)),
    rules: [...new Set([...withLine.rules, ...without.rules])].filter(
      (rule) => !TYPING.has(rule) && withLine.rules.has(rule) !== without.rules.has(rule),
    ),
    typing: [...TYPING].filter((rule) => (twice.rules.has(rule) || over.rules.has(rule)) && !withLine.rules.has(rule)),
  };
};

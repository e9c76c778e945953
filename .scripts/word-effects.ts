import type { ClientFile, Journal } from '../src/journal/journal.ts';
import { joinSources } from '../src/journal/journal.ts';
import { readSource } from '../src/journal/source.ts';
import type { BodyWord } from '../src/notation/words.ts';
import { cardMarkdown } from '../src/pages/card.ts';
import { dueMarkdown } from '../src/pages/due-page.ts';
import { moneyMarkdown } from '../src/pages/money-page.ts';
import { orderMarkdown } from '../src/pages/order-page.ts';
import { prepMarkdown } from '../src/pages/prep.ts';
import { shelfMarkdown } from '../src/pages/shelf-page.ts';
import { clientTraceMarkdown } from '../src/pages/trace-page.ts';
import { usageMarkdown } from '../src/pages/usage-page.ts';
import { dueClients } from '../src/reckon/ahead/due.ts';
import { lapsingTests } from '../src/reckon/ahead/lapsing.ts';
import { cautionsOn, holdsOn, reactionsOf, testsFor } from '../src/reckon/client/state.ts';
import type { VisitReckoned } from '../src/reckon/model.ts';
import { depositsHeld } from '../src/reckon/money/deposits.ts';
import { chargedNotTaken } from '../src/reckon/stock/charged-goods.ts';
import { expectedVisits } from '../src/reckon/stock/expected.ts';
import { stockLedger } from '../src/reckon/stock/ledger.ts';
import { type OrderRow, orderRows } from '../src/reckon/stock/order.ts';
import { daysNoted, PACE_LEAST_DAYS, shelfState } from '../src/reckon/stock/shelf-state.ts';
import { touchingVisits } from '../src/reckon/stock/touching.ts';
import { traceable, traceClient } from '../src/reckon/stock/trace.ts';
import { reckonAll } from '../src/reckon/visit.ts';
import { RULES } from '../src/rules/all.ts';
import { judge } from '../src/rules/judging.ts';
import { addDays } from '../src/text/dates.ts';
import type { Finding } from '../src/text/finding.ts';

/** What one word changes, as measured on its example: a journal compiled with its line and without. */
export type WordEffects = {
  /** Headings of the card, and reports, that differ. */
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
  /** Every report that a command makes, by its name. */
  readonly reports: ReadonlyMap<string, string>;
  readonly order: readonly OrderRow[];
};

const PERIOD = { from: '2026-01-01', to: '2026-12-31' };
const UNTIL = addDays(DAY, 28);

/** The reports of a journal but its card, for a day and the weeks after it. */
const reportsOf = (
  journal: Journal,
  client: ClientFile,
  all: ReadonlyMap<string, readonly VisitReckoned[]>,
  findings: readonly Finding[],
): Pick<Compiled, 'reports' | 'order'> => {
  const visits = [...all.values()].flat();
  const ledger = stockLedger(journal, visits, DAY);
  const rows = shelfState(ledger, DAY);
  const expected = expectedVisits(journal.shelf, all, DAY, UNTIL);
  const noted = daysNoted(ledger, DAY);
  const order = orderRows(rows, expected, DAY, UNTIL, noted >= PACE_LEAST_DAYS);
  const due = { ...dueClients(all, DAY, UNTIL), lapsing: lapsingTests(journal, all, DAY, UNTIL) };
  const charged = chargedNotTaken(journal, visits, rows, DAY);
  const traced = traceClient(traceable(journal, touchingVisits(journal)), client);
  const reports = new Map([
    ['product report', usageMarkdown(journal, visits, PERIOD)],
    ['money', moneyMarkdown(journal, visits, depositsHeld(visits, PERIOD.to), PERIOD)],
    ['shelf', shelfMarkdown(journal, ledger, rows, { on: DAY, charged })],
    ['order', orderMarkdown(journal, order, expected, { on: DAY, until: UNTIL, noted })],
    ['due', dueMarkdown(journal, due, { on: DAY, until: UNTIL })],
    ['trace', clientTraceMarkdown(journal, client, traced)],
    ['sheet of the day', prepMarkdown(journal, client, all.get(CLIENT) ?? [], findings, [], { on: DAY })],
  ]);
  return { reports, order };
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
    ...reportsOf(journal, client, reckoned, findings),
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
const reckonings = ({ client, visits, journal, order }: Compiled): ReadonlyMap<string, string> => {
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
    ['what to order', order.map(({ row, packs }) => [row.line.item.name, row.below, packs])],
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

/** What shows the line: parts of the card and reports; a line that none of them shows speaks through findings alone. */
const shownIn = (withLine: Compiled, without: Compiled): string[] => {
  const card = differing(sections(withLine.card), sections(without.card)).map((name) => `card: ${name}`);
  const shown = [...card, ...differing(withLine.reports, without.reports)];
  return shown.length > 0 ? shown : ['findings'];
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

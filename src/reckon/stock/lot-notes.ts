import { type Journal, joinSources } from '../../journal/journal.ts';
import { fold } from '../../text/fold.ts';
import type { ClientFault } from '../client-fault.ts';
import { compareText } from '../use/period.ts';
import { isLot } from './batches.ts';
import { type Bears, bearing } from './lot-bearing.ts';
import {
  type Chunk,
  type CutFile,
  clientIn,
  cutFile,
  dayIn,
  headOf,
  INDENT,
  isBefore,
  type NoteFile,
  namesIn,
  partOf,
  type Reads,
  WORD_END,
} from './note-chunks.ts';
import { type PlainTouches, plainTouches } from './plain-touches.ts';
import { plainVisit } from './plain-visit.ts';
import { type StockMove, stockMoves } from './stock-entries.ts';
import type { Touch } from './touch.ts';
import { touchingVisits } from './touching.ts';
import { type LotTrace, traceable, traceLot } from './trace.ts';

/**
 * The part of a large journal that can say where a lot went, cut out of the text before anything is read: a recall is
 * not to wait for ten years of notes. It leaves out only what cannot bear on the lot; the lines keep their numbers.
 *
 * Reads: the bytes of all files. Gives: the journal of the lines that matter, and what plain visits put on whom. Runs
 * again: when a file changes.
 */
export type LotNotes = { readonly journal: Journal; readonly plain: readonly Touch[] };

/** Words of lines that put nothing on anybody and mix nothing. A word that is not listed here stays. */
const IDLE_WORDS =
  'asked|letter|aim|want|start|regrowth|zone|place|leave|on|check|off|heat|reaction|stopped|declined|result|photo|care|note|charge|deposit|paid|split|redo|about|call|next|born|natural|grey|hair|pattern|history|allergy|caution|avoid|consent|hold|because';
const IDLE = new RegExp(`(^|\\n)${INDENT}(?:${IDLE_WORDS})(?=[\\s"“])[^\\n]*`, 'giu');

const SHARED = new Set(['salon', 'stylist', 'range', 'product', 'stock']);

/** The text with its idle lines blanked, so that the others keep their numbers. */
const withoutIdle = (text: string): string => text.replace(IDLE, '$1');

const MIXED_WORDS = 'bowl|plus|weighed|home|fit|wash|rinse|dry|cut|test|again';

/** A line under a header that mixes or uses something. */
const MIXED = new RegExp(`\\n${INDENT}(${MIXED_WORDS})${WORD_END}([^\\n]*)`, 'giu');

/** A first word that is none of these may be a header misspelt, and what follows belongs to nobody. */
const STRANGE = new RegExp(
  `(?:^|\\n)${INDENT}(?!(?:${IDLE_WORDS}|${MIXED_WORDS}|left|more|client|visit)${WORD_END})\\p{L}`,
  'iu',
);

/** What counts from before the lot came in: a lot that is named all the same, and a test dated on its own. */
const LOT_OR_TEST = /\b(?:lot|test)\b/i;

/** Words whose line speaks of a bowl of another line, so that no bowl of the visit can be left out. */
const REFERS = new Set(['plus', 'weighed', 'home', 'again']);
const MORE = new RegExp(`(?:^|\\n)${INDENT}more${WORD_END}`, 'iu');
const LEFT = new RegExp(`(^|\\n)${INDENT}left${WORD_END}[^\\n]*`, 'iu');
const LEFTS = new RegExp(LEFT, 'giu');
const FROM = /\bfrom\b/i;

/** A text without some runs of it. */
const cutOut = (text: string, runs: readonly (readonly [from: number, to: number])[]): string => {
  let own = text;
  for (const [from, to] of runs.toReversed()) own = own.slice(0, from) + own.slice(to);
  return own;
};

type Scanned = { readonly bears: boolean; readonly again: readonly string[]; readonly text: string };

const NOTHING: Scanned = { bears: false, again: [], text: '' };

/** One chunk line by line: whether any bears on the lot, the names of clients it repeats, and what is to be read. */
const scan = ({ kind, text }: Chunk, bears: Bears): Scanned => {
  const again: string[] = [];
  const others: [from: number, to: number][] = [];
  const bowls = new Set<string>();
  let found = false;
  let refers = false;
  let strays = false;
  MIXED.lastIndex = 0;
  for (let line = MIXED.exec(text); line !== null; line = MIXED.exec(text)) {
    const [whole, word = '', rest = ''] = line;
    const first = word.toLowerCase();
    if (REFERS.has(first)) refers = strays = true;
    if (first === 'bowl') {
      const [name = ''] = rest.trim().split(/\s/);
      // Two of one name are worked out together.
      refers ||= bowls.has(name.toUpperCase()) || FROM.test(rest);
      bowls.add(name.toUpperCase());
    }
    if (first === 'again') again.push(...namesIn(rest).map(fold), '');
    else if (bears(first, rest)) found = true;
    else others.push([line.index + 1, line.index + whole.length]);
  }
  // Lines that speak of a bowl which nothing mixes make one that can be anything.
  const isMixed = bowls.size > 0 || again.length > 0;
  const isStray = kind === 'visit' && !isMixed && (strays || LEFT.test(text) || MORE.test(text));
  if (isStray || STRANGE.test(text)) return { bears: true, again, text };
  if (!found && again.length === 0) return NOTHING;
  let own = text;
  if (!refers && others.length > 0 && !MORE.test(text))
    // What is left of a bowl that is not read would be a bowl that nothing mixes.
    own = cutOut(text, others).replace(LEFTS, '$1');
  return { bears: true, again, text: withoutIdle(own) };
};

/** What is to be read of the chunks of clients, and what needs no reading. */
type Kept = {
  readonly texts: ReadonlyMap<Chunk, string>;
  readonly plain: readonly Touch[];
  /** Full names of clients of whom nothing is read. */
  readonly names: ReadonlyMap<string, string>;
};

/** A client’s header with a plain full name, which needs no reading. */
const PLAIN_CLIENT = /^client [\p{L}\p{N}-]+ "(\p{L}[\p{L}\p{N}' -]*[\p{L}\p{N}])"\r?$/u;

type Visits = {
  readonly texts: Map<Chunk, string>;
  readonly plain: Map<Chunk, readonly Touch[]>;
  /** Clients with bowls that are made again, so that all of their visits are to be read. */
  readonly repeating: Set<string>;
};

/** Goes through what is said of clients: keeps what can bear on the lot, and works out plain visits. */
const goThrough = (cuts: readonly CutFile[], bears: Bears, arrived: string, touches: PlainTouches): Visits => {
  const texts = new Map<Chunk, string>();
  const plain = new Map<Chunk, readonly Touch[]>();
  const repeating = new Set<string>();
  const keep = (chunk: Chunk): void => {
    const scanned = scan(chunk, bears);
    if (scanned.bears) texts.set(chunk, scanned.text);
    if (scanned.again.length > 0)
      for (const name of [clientIn(headOf(chunk.text)), ...scanned.again]) repeating.add(name);
  };
  for (const { path, chunks } of cuts)
    for (const chunk of chunks) {
      if (chunk.kind === 'client') keep(chunk);
      if (chunk.kind !== 'visit') continue;
      const isEarly = isBefore(dayIn(chunk.text), arrived);
      if (isEarly && !LOT_OR_TEST.test(chunk.text)) continue;
      const visit = isEarly ? undefined : plainVisit(chunk.text, bears);
      if (visit?.bowls.length === 0) continue;
      const own = visit && touches(visit, path, chunk.line);
      if (own === undefined) keep(chunk);
      else plain.set(chunk, own);
    }
  return { texts, plain, repeating };
};

const keptOf = (cuts: readonly CutFile[], bears: Bears, arrived: string, touches: PlainTouches): Kept => {
  const { texts, plain, repeating } = goThrough(cuts, bears, arrived, touches);
  if (repeating.size > 0)
    for (const { chunks } of cuts)
      for (const chunk of chunks)
        if (chunk.kind === 'visit' && repeating.has(clientIn(headOf(chunk.text)))) {
          texts.set(chunk, withoutIdle(chunk.text));
          plain.delete(chunk);
        }
  const touched = [...plain.values()].flat();
  const named = new Set([...texts.keys()].map(({ text }) => clientIn(headOf(text))));
  const unread = new Map<string, string>();
  for (const { client } of touched) if (!named.has(client)) unread.set(client, client);
  const heads: { readonly chunk: Chunk; readonly client: string }[] = [];
  const odd = new Set(named);
  // A file that is read whole can hold visits of anybody.
  const anybody = cuts.some(({ whole }) => whole);
  for (const { chunks } of cuts)
    for (const chunk of chunks) {
      if (chunk.kind !== 'client' || texts.has(chunk)) continue;
      const client = clientIn(headOf(chunk.text));
      if (!anybody && !named.has(client) && !unread.has(client)) continue;
      heads.push({ chunk, client });
      if (anybody || !PLAIN_CLIENT.test(headOf(chunk.text))) odd.add(client);
    }
  for (const { chunk, client } of heads) {
    const head = headOf(chunk.text);
    const [, full = client] = PLAIN_CLIENT.exec(head) ?? [];
    // The header alone gives her full name, the first that is given.
    if (odd.has(client)) texts.set(chunk, head);
    else if (unread.get(client) === client) unread.set(client, full);
  }
  for (const client of odd) unread.delete(client);
  return { texts, plain: touched, names: unread };
};

/** All that can bear on a lot; undefined where no delivery names it, so that the whole journal must be read. */
export const lotNotes = (files: readonly NoteFile[], lot: string): LotNotes | undefined => {
  const cuts = files.map(cutFile);
  const sharedText: Reads = ({ kind, text }) => (SHARED.has(kind) ? text : undefined);
  const shared = joinSources(cuts.flatMap((cut) => partOf(cut, sharedText) ?? []));
  const moves = stockMoves(shared).moves.filter((move) => isLot(move.lot, lot));
  const deliveries = moves.filter(({ kind }) => kind === 'in');
  const arrived = deliveries.map(({ date }) => date).sort(compareText)[0];
  const isDelivered = ({ item, shade }: StockMove): boolean =>
    deliveries.some((delivery) => delivery.item === item && delivery.shade === shade);
  if (arrived === undefined || !moves.every(isDelivered)) return undefined;
  const slashed = moves.flatMap(({ shade }) => (shade?.includes('/') ? [shade] : []));
  const bears = bearing({
    lot: fold(lot),
    names: [...new Set(moves.map(({ item }) => item.name))],
    shades: slashed.length === moves.length ? new Set(slashed) : undefined,
    shelf: shared.shelf,
    developer: moves.some(({ item }) => item.kind === 'developer'),
    arrived,
  });
  const { texts, plain, names } = keptOf(cuts, bears, arrived, plainTouches(shared, deliveries));
  const journal = joinSources(
    cuts.flatMap((cut) => partOf(cut, (chunk) => sharedText(chunk) ?? texts.get(chunk)) ?? []),
  );
  const clients = new Map(journal.clients);
  for (const [name, full] of names) {
    const known = clients.get(name) ?? { name, full: name, entries: [], visits: [] };
    clients.set(name, { ...known, full });
  }
  return { journal: { ...journal, clients }, plain };
};

/**
 * Where a lot went, from the part of the notes that can say so; undefined where the whole journal must be read: no
 * delivery names the lot, or a bowl names it for another product than came in.
 */
export const traceNotes = (
  files: readonly NoteFile[],
  lot: string,
): { readonly journal: Journal; readonly trace: LotTrace; readonly faults: readonly ClientFault[] } | undefined => {
  const notes = lotNotes(files, lot);
  if (notes === undefined) return undefined;
  const { journal, plain } = notes;
  const faults: ClientFault[] = [];
  const visits = touchingVisits(journal, (fault) => faults.push(fault));
  const trace = traceLot(traceable(journal, visits, plain), lot);
  return trace.wares.every(({ deliveries }) => deliveries.length > 0) ? { journal, trace, faults } : undefined;
};

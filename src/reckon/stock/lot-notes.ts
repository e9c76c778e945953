import { type Journal, joinSources } from '../../journal/journal.ts';
import { readSource, type Source } from '../../journal/source.ts';
import { shadeOf } from '../../records/bind/component.ts';
import { decode } from '../../text/decode.ts';
import { fold } from '../../text/fold.ts';
import { nearNames } from '../../text/near.ts';
import { compareText } from '../period.ts';
import { isLot } from './batches.ts';
import { type StockMove, stockMoves } from './stock-entries.ts';

/**
 * The part of a large journal that can say where a lot went, cut out of the text before anything is read: a recall is
 * not to wait for ten years of notes. It leaves out only what cannot bear on the lot; the lines keep their numbers.
 *
 * Reads: the bytes of all files. Gives: the journal of the lines that matter. Runs again: when a file changes.
 */
export type NoteFile = { readonly path: string; readonly bytes: Uint8Array };

/** From one header to the next. */
type Chunk = { readonly kind: string; readonly text: string };

type Cut = { readonly path: string; readonly whole: boolean; readonly chunks: readonly Chunk[] };

const INDENT = '(?:[^\\S\\n]|\\u200b)*';
const HEADER = new RegExp(
  `(?:^|\\n)${INDENT}(salon|stylist|range|product|stock|client|visit)(?![\\p{L}\\p{N}_.'’‐‑–-])`,
  'giu',
);

/** Lines that put nothing on anybody and mix nothing. A word that is not listed here stays. */
const IDLE = new RegExp(
  `(^|\\n)${INDENT}(?:aim|want|start|regrowth|place|leave|on|check|off|heat|left|result|photo|care|note|charge|deposit|paid|split|redo|about|call|next|natural|grey|hair|pattern|history|allergy|caution|avoid|consent|hold|allow)(?=[\\s"“])[^\\n]*`,
  'giu',
);

/** Merge markers change what the lines between them mean. */
const MARKER = /(?:^|\n)<{7}/;

const cutFile = ({ path, bytes }: NoteFile): Cut => {
  const { text } = decode(bytes);
  if (MARKER.test(text)) return { path, whole: true, chunks: [{ kind: '', text }] };
  const chunks: Chunk[] = [];
  let start = 0;
  let kind = '';
  HEADER.lastIndex = 0;
  for (let found = HEADER.exec(text); found !== null; found = HEADER.exec(text)) {
    // The line feed before a header ends the chunk before it.
    const from = found.index === 0 && text[0] !== '\n' ? 0 : found.index + 1;
    if (from > start) chunks.push({ kind, text: text.slice(start, from) });
    start = from;
    kind = (found[1] ?? '').toLowerCase();
  }
  chunks.push({ kind, text: text.slice(start) });
  return { path, whole: false, chunks };
};

const SHARED = new Set(['salon', 'stylist', 'range', 'product', 'stock']);

const blank = (text: string): string => text.replace(/[^\n]+/g, '');

/** The text with its idle lines blanked, so that the others keep their numbers. */
const withoutIdle = (text: string): string => text.replace(IDLE, '$1');

/** What is to be read of a chunk; undefined for nothing. */
type Reads = (chunk: Chunk) => string | undefined;

const sourceOf = ({ path, whole, chunks }: Cut, reads: Reads): Source | undefined => {
  const kept = chunks.map(reads);
  if (!whole && kept.every((text) => text === undefined)) return undefined;
  const text = chunks.map((chunk, index) => (whole ? chunk.text : (kept[index] ?? blank(chunk.text)))).join('');
  return readSource(path, Buffer.from(text));
};

const MIXED = new RegExp(
  `(?:^|\\n)${INDENT}(bowl|plus|weighed|home|fit|wash|rinse|dry|cut|test|again)(?=\\s)([^\\n]*)`,
  'giu',
);
const NAMES = /\p{L}[\p{L}\p{M}\p{N}'’‐‑–_.-]*/gu;
const STRENGTH = /\d\s*(?:%|vol)/i;
/** What counts from before the lot came in: a lot that is named all the same, and a test dated on its own. */
const LOT_OR_TEST = /\b(?:lot|test)\b/i;
const DATE = /\d{4}-\d{2}-\d{2}/;

/** What decides whether a line can bear on the lot. */
type Sought = {
  readonly lot: string;
  readonly names: readonly string[];
  /** Its shades as records write them, where it came in as shades with a slash and no other. */
  readonly shades: ReadonlySet<string> | undefined;
  readonly shelf: Journal['shelf'];
  readonly developer: boolean;
  readonly arrived: string;
};

/** Whether a part plainly gives one shade, and none of these: `30 cream 7/0`. Whatever is less plain may be any. */
const isOtherShade = (part: string, shades: ReadonlySet<string>): boolean => {
  const figures = part.split(/\s+/).filter((word) => /\p{N}/u.test(word));
  const slashed = figures.filter((word) => /^\d+\/[\p{L}\d]+$/u.test(word));
  const [only, ...more] = slashed;
  const rest = figures.filter((word) => word !== only);
  return (
    only !== undefined &&
    more.length === 0 &&
    rest.every((word) => /^\d+g?$/.test(word)) &&
    !shades.has(shadeOf(only, 0).shade)
  );
};

/** Tells of a line after its first word whether it can bear on the lot; `again` is for the caller to follow. */
const bearing = ({ names, shades, shelf, developer, lot }: Sought): ((word: string, rest: string) => boolean) => {
  const known = new Map<string, boolean>();
  const isSought = (typed: string): boolean => {
    let found = known.get(typed);
    if (found === undefined) {
      const name = fold(typed);
      found = names.includes(name) || (!shelf.has(name) && names.some((one) => nearNames(name, [one]).length > 0));
      known.set(typed, found);
    }
    return found;
  };
  const words = (text: string): string[] => text.match(NAMES) ?? [];
  const partBears = (part: string): boolean => {
    const typed = words(part);
    if (typed.some(isSought)) return shades === undefined || !isOtherShade(part, shades);
    if (STRENGTH.test(part)) return developer;
    // A part that names nothing on the shelf can be anything, and so can one whose name is not there.
    return !typed.some((word) => shelf.has(fold(word)) || fold(word) === 'water');
  };
  const lines = new Map<string, boolean>();
  return (word, rest) => {
    const line = `${word} ${rest}`;
    let found = lines.get(line);
    if (found === undefined) {
      const isMix = word === 'bowl' || word === 'plus' || word === 'home' || word === 'weighed';
      found =
        fold(rest).includes(lot) ||
        (isMix ? rest.split(/[+,]/).some(partBears) : words(rest).some(isSought) || (developer && STRENGTH.test(rest)));
      lines.set(line, found);
    }
    return found;
  };
};

const headOf = (text: string): string => {
  const end = text.indexOf('\n');
  return end < 0 ? text : text.slice(0, end);
};

const namesIn = (text: string): string[] => (text.match(NAMES) ?? []).map(fold);

/** The client in a visit’s header: the first name that is nobody’s hand and no salon’s. */
const clientIn = (head: string): string => {
  const [, ...names] = namesIn(head);
  const isOther = (name: string | undefined): boolean => name === 'by' || name === 'at';
  return names.find((name, index) => !isOther(name) && !isOther(names[index - 1])) ?? '';
};

/** Words whose line speaks of a bowl of another line, so that no bowl of the visit can be left out. */
const REFERS = new Set(['plus', 'weighed', 'home', 'again']);
const REFERS_WITHIN = new RegExp(`(?:^|\\n)${INDENT}more(?=\\s)|\\bfrom\\b`, 'iu');

/** One chunk line by line: whether any bears on the lot, the names of clients it repeats, and what is to be read. */
const scan = (
  { text }: Chunk,
  bears: (word: string, rest: string) => boolean,
): { readonly bears: boolean; readonly again: readonly string[]; readonly text: string } => {
  const again: string[] = [];
  const others: [from: number, to: number][] = [];
  let found = false;
  let refers = false;
  MIXED.lastIndex = 0;
  for (let line = MIXED.exec(text); line !== null; line = MIXED.exec(text)) {
    const [whole, word = '', rest = ''] = line;
    const first = word.toLowerCase();
    refers ||= REFERS.has(first);
    if (first === 'again') again.push(...namesIn(rest), '');
    else if (bears(first, rest)) found = true;
    else others.push([line.index + (whole.startsWith('\n') ? 1 : 0), line.index + whole.length]);
  }
  const isKept = found || again.length > 0;
  if (!isKept) return { bears: false, again, text: '' };
  let own = text;
  if (!refers && others.length > 0 && !REFERS_WITHIN.test(text))
    for (const [from, to] of others.toReversed()) own = own.slice(0, from) + own.slice(to);
  return { bears: true, again, text: withoutIdle(own) };
};

/** What is to be read of the chunks of clients: what can bear on the lot, and earlier bowls that are made again. */
const keptChunks = (cuts: readonly Cut[], sought: Sought): ReadonlyMap<Chunk, string> => {
  const bears = bearing(sought);
  const kept = new Map<Chunk, string>();
  const repeating = new Set<string>();
  const visits: Chunk[] = [];
  const clients: Chunk[] = [];
  for (const { chunks } of cuts)
    for (const chunk of chunks) {
      if (chunk.kind !== 'visit' && chunk.kind !== 'client') continue;
      const head = headOf(chunk.text);
      if (chunk.kind === 'visit') {
        visits.push(chunk);
        const date = DATE.exec(head)?.[0];
        const isEarly = date !== undefined && date < sought.arrived;
        if (isEarly && !LOT_OR_TEST.test(chunk.text)) continue;
      } else clients.push(chunk);
      const scanned = scan(chunk, bears);
      if (scanned.bears) kept.set(chunk, scanned.text);
      if (scanned.again.length > 0) for (const name of [clientIn(head), ...scanned.again]) repeating.add(name);
    }
  if (repeating.size > 0)
    for (const chunk of visits)
      if (repeating.has(clientIn(headOf(chunk.text)))) kept.set(chunk, withoutIdle(chunk.text));
  const named = new Set([...kept.keys()].map(({ text }) => clientIn(headOf(text))));
  for (const chunk of clients) {
    const head = headOf(chunk.text);
    // The header alone gives her full name.
    if (!kept.has(chunk) && named.has(clientIn(head))) kept.set(chunk, head + blank(chunk.text.slice(head.length)));
  }
  return kept;
};

/** The journal of all that can bear on a lot; undefined where no delivery names it, so that all must be read. */
export const lotJournal = (files: readonly NoteFile[], lot: string): Journal | undefined => {
  const cuts = files.map(cutFile);
  const sharedText: Reads = ({ kind, text }) => (SHARED.has(kind) ? text : undefined);
  const shared = joinSources(cuts.flatMap((cut) => sourceOf(cut, sharedText) ?? []));
  const moves = stockMoves(shared).moves.filter((move) => isLot(move.lot, lot));
  const deliveries = moves.filter(({ kind }) => kind === 'in');
  const arrived = deliveries.map(({ date }) => date).sort(compareText)[0];
  const isDelivered = ({ item, shade }: StockMove): boolean =>
    deliveries.some((delivery) => delivery.item === item && delivery.shade === shade);
  if (arrived === undefined || !moves.every(isDelivered)) return undefined;
  const slashed = moves.flatMap(({ shade }) => (shade?.includes('/') ? [shade] : []));
  const kept = keptChunks(cuts, {
    lot: fold(lot),
    names: [...new Set(moves.map(({ item }) => item.name))],
    shades: slashed.length === moves.length ? new Set(slashed) : undefined,
    shelf: shared.shelf,
    developer: moves.some(({ item }) => item.kind === 'developer'),
    arrived,
  });
  return joinSources(cuts.flatMap((cut) => sourceOf(cut, (chunk) => sharedText(chunk) ?? kept.get(chunk)) ?? []));
};

import type { ClientFile, Journal } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import { readEntry } from '../../records/read-entry.ts';
import type { Fact, Visit } from '../../records/schema/entry.ts';
import { wholeFile } from '../../text/span.ts';
import { reckonBowls } from '../bowl/bowls.ts';
import { salonOf } from '../salon-of.ts';
import type { PlainBowl, PlainVisit } from './plain-visit.ts';
import { canBe, type Touch, type Ware } from './touch.ts';
import { tracedTouches } from './touching.ts';

/** The touches of a bowl, their lines counted from its own first; undefined where its lines alone do not tell. */
type BowlTouches = readonly Touch[] | undefined;

const NOBODY: ClientFile = { name: 'nobody', full: 'nobody', entries: [], visits: [] };

/** A pack’s weight can differ from day to day. */
const BY_DAY = /pack/i;

const readBowl = (shared: Journal, wares: readonly Ware[], tail: string, text: string): BowlTouches => {
  if (BY_DAY.test(text)) return undefined;
  const lines = [`visit 2000-01-01 nobody${tail}`, ...text.split('\n')];
  const { entry } = readEntry(lines, { start: 0, end: lines.length, opens: 'visit' });
  const facts: readonly Fact[] = entry.facts;
  const mixed = facts.filter(({ word }) => word === 'bowl');
  const isOwn = facts.every(
    (fact) =>
      (fact.word === 'bowl' || fact.word === 'plus' || fact.word === 'weighed') &&
      fact.parts.every(({ out }) => out === undefined),
  );
  const isAllRead = mixed.length === 1 && facts.length === lines.length - 1;
  if (entry.kind !== 'visit' || entry.client?.name !== NOBODY.name || !isOwn || !isAllRead) return undefined;
  const visit: Stood<Visit> = { file: '', entry, notices: [], cut: { opens: 'visit' } };
  const salon = salonOf(shared, visit);
  const bowls = reckonBowls(shared, salon, NOBODY, visit);
  const touches = tracedTouches(shared, { visit, client: NOBODY, salon, bowls });
  return touches.filter((touch) => touch.lot !== undefined || wares.some((ware) => canBe(touch, ware)));
};

/** Gives the touches of a plain visit as if it stood on a line of a file; undefined where its lines do not tell. */
export type PlainTouches = (visit: PlainVisit, file: string, line: number) => readonly Touch[] | undefined;

/**
 * Works out each bowl as typed once, however often it comes, and gives of it what names a lot or can be one of the wares.
 * `shared` holds the salons and the shelf.
 */
export const plainTouches = (shared: Journal, wares: readonly Ware[]): PlainTouches => {
  const worked = new Map<string, Map<string, BowlTouches>>();
  const ofBowl = (tail: string, { text }: PlainBowl): BowlTouches => {
    let bowls = worked.get(tail);
    if (bowls === undefined) {
      bowls = new Map();
      worked.set(tail, bowls);
    }
    if (!bowls.has(text)) bowls.set(text, readBowl(shared, wares, tail, text));
    return bowls.get(text);
  };
  const names = new Map<string, string>();
  return ({ client: typed, date, tail, bowls }, file, line) => {
    // One string a client, so that comparing names again and again costs nothing.
    const known = names.get(typed);
    if (known === undefined) names.set(typed, typed);
    const client = known ?? typed;
    const ground = wholeFile(file);
    const touches: Touch[] = [];
    for (const bowl of bowls) {
      const own = ofBowl(tail, bowl);
      if (own === undefined) return undefined;
      for (const { how, bowl: name, item, label, shade, lot, lotOf, amount, open, salon, place } of own) {
        const stands = line + Number(bowl.lines[place.line - 1]);
        // Field by field: copying an object is slow, and there are hundreds of thousands.
        touches.push({
          client,
          date,
          how,
          bowl: name,
          item,
          label,
          shade,
          lot,
          lotOf,
          amount,
          open,
          salon,
          place: { in: ground, line: stands, at: place.at },
        });
      }
    }
    return touches;
  };
};

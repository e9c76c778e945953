import type { ClientFile } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { ShelfItem } from '../../journal/shelf.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit, VisitFact } from '../../records/schema/entry.ts';
import type { Component } from '../../records/schema/values.ts';
import type { Exact } from '../../text/exact.ts';
import { nearNames } from '../../text/near.ts';
import type { Place } from '../../text/span.ts';
import { looseUses } from '../bowl/loose.ts';
import { dayOf } from '../bowl/plan.ts';
import { heldOf } from '../bowl/price.ts';
import { placeOf } from '../cite.ts';
import type { BowlReckoned, Portion } from '../model.ts';

/**
 * Every time that something off the shelf touched a client: what was mixed for her, washed with, fitted, sent home,
 * tested. Grams are what left the shelf, not what was used.
 *
 * Reads: a visit and its bowls. Gives: touches, in order of the lines. Runs again: when the visit changes.
 */
export type Touch = {
  readonly client: string;
  readonly date: string;
  readonly how: 'bowl' | 'home' | 'goods' | 'step' | 'test';
  /** The bowl’s name, where it was mixed. */
  readonly bowl: string | undefined;
  readonly item: ShelfItem | undefined;
  /** As a colourist says it, or as typed where it is not on the shelf. */
  readonly label: string;
  readonly shade: string | undefined;
  /** As typed, where the note names one. */
  readonly lot: string | undefined;
  /** The earlier day whose bowl names the lot, where the note only says that it is made again. */
  readonly lotOf: string | undefined;
  /** Grams, or pieces of goods sold by the piece; undefined where the note does not say. */
  readonly amount: Exact | undefined;
  /** What it can be, where the note does not settle it. */
  readonly open: 'developer' | 'anything' | undefined;
  /** Where it was; undefined where the notes do not say which salon of several. */
  readonly salon: string | undefined;
  readonly place: Place;
};

/** What touches are worked out from. */
export type TouchingVisit = {
  readonly visit: Stood<Visit>;
  readonly client: ClientFile;
  readonly salon: SalonSettings;
  readonly bowls: readonly BowlReckoned[];
};

type Shelf = ReadonlyMap<string, ShelfItem>;

const openOf = ({ item, role, label }: Portion): Touch['open'] => {
  if (item !== undefined) return undefined;
  if (role === 'developer') return 'developer';
  return label === '' ? 'anything' : undefined;
};

const ofBowls = ({ visit, client, salon, bowls }: TouchingVisit): Touch[] => {
  const date = dayOf(visit);
  const touches: Touch[] = [];
  const add = (
    bowl: BowlReckoned,
    what: Pick<Touch, 'item' | 'label' | 'shade' | 'lot' | 'lotOf' | 'amount' | 'open' | 'place'>,
  ) => {
    // Field by field: a large journal holds hundreds of thousands, and copying an object is slow.
    touches.push({
      client: client.name,
      date,
      how: 'bowl',
      bowl: bowl.name,
      item: what.item,
      label: what.label,
      shade: what.shade,
      lot: what.lot,
      lotOf: what.lotOf,
      amount: what.amount,
      open: what.open,
      salon: salon.name,
      place: what.place,
    });
  };
  const nothing = { item: undefined, shade: undefined, lot: undefined, lotOf: undefined, amount: undefined };
  for (const bowl of bowls) {
    if (bowl.portions.length === 0 && bowl.name !== '')
      add(bowl, { ...nothing, label: `bowl ${bowl.name}`, open: 'anything', place: bowl.place });
    for (const portion of bowl.held) {
      const { item, label, shade, component, place, role, lotOf } = portion;
      if (role === 'bowl' || role === 'water') continue;
      const [lot, amount, open] = [component.lot?.text, heldOf(portion), openOf(portion)];
      add(bowl, { item, label, shade, lot, lotOf, amount, open, place });
    }
  }
  return touches;
};

type LooseFact = { readonly fact: VisitFact; readonly name: string | undefined; readonly part?: Component };

/** The lines of a visit that use something outside a bowl, each as the one thing it uses. */
const looseFacts = (fact: VisitFact, shelf: Shelf): LooseFact[] => {
  switch (fact.word) {
    case 'home':
      return fact.parts
        .filter(({ out }) => out === undefined)
        .map((part) => ({ fact: { ...fact, parts: [part] }, name: part.product?.name, part }));
    case 'fit':
      return [{ fact, name: fact.product?.name }];
    case 'wash':
    case 'rinse':
    case 'dry':
    case 'cut':
      return [{ fact, name: fact.words.find(({ word }) => shelf.has(word))?.word }];
    default:
      return [];
  }
};

const HOW: Partial<Record<VisitFact['word'], Touch['how']>> = { home: 'home', fit: 'goods' };

const ofLines = (shelf: Shelf, { visit, client, salon }: TouchingVisit): Touch[] =>
  visit.entry.facts
    .flatMap((one) => looseFacts(one, shelf))
    .flatMap(({ fact, name, part }): Touch[] => {
      if (name === undefined) return [];
      // One line at a time, so that each use keeps its place and its lot.
      const [use] = looseUses(shelf, salon, { ...visit, entry: { ...visit.entry, facts: [fact] } });
      const shade = part?.shade?.shade ?? part?.second?.name ?? (fact.word === 'fit' ? fact.shade?.shade : undefined);
      return [
        {
          client: client.name,
          date: dayOf(visit),
          how: HOW[fact.word] ?? 'step',
          bowl: undefined,
          item: shelf.get(name),
          label: shade === undefined ? name : `${name} ${shade}`,
          shade,
          lot: part?.lot?.text,
          lotOf: undefined,
          amount: use?.mixed,
          open: undefined,
          salon: salon.name,
          place: placeOf(visit, fact, part?.at ?? 0),
        },
      ];
    });

/** Everything that touched the client at a visit, tests apart. */
export const touchesOf = (shelf: Shelf, visit: TouchingVisit): Touch[] => [...ofBowls(visit), ...ofLines(shelf, visit)];

/** What was put on the client’s skin or hair as a test, under her own entry and her visits. It weighs next to nothing. */
export const testTouches = (shelf: Shelf, { name, entries, visits }: ClientFile): Touch[] =>
  [...entries, ...visits].flatMap((stood) =>
    stood.entry.facts.flatMap((fact): Touch[] => {
      if (fact.word !== 'test' || !fact.made) return [];
      const visitDay = stood.entry.kind === 'visit' ? stood.entry.date?.date : undefined;
      const date = fact.date?.date ?? visitDay;
      if (date === undefined) return [];
      const named = [
        ...fact.products.map((product) => ({ product: product.name, lot: undefined })),
        ...(fact.mix ?? []).flatMap(({ product, lot }) =>
          product === undefined ? [] : [{ product: product.name, lot: lot?.text }],
        ),
      ];
      return named.map(({ product, lot }) => ({
        client: name,
        date,
        how: 'test',
        bowl: undefined,
        item: shelf.get(product),
        label: product,
        shade: undefined,
        lot,
        lotOf: undefined,
        amount: undefined,
        open: undefined,
        salon: undefined,
        place: placeOf(stood, fact, fact.test.at),
      }));
    }),
  );

/** A product, or one shade of a range. */
export type Ware = { readonly item: ShelfItem; readonly shade: string | undefined };

/** Whether what touched her can have been this product and shade, by all that the note leaves open. */
export const canBe = ({ item, shade, label, open }: Touch, ware: Ware): boolean => {
  if (open === 'anything') return true;
  if (open === 'developer') return ware.item.kind === 'developer';
  if (item === undefined) {
    const [word = ''] = label.split(' ');
    return nearNames(word, [ware.item.name]).length > 0;
  }
  return item.name === ware.item.name && (shade === undefined || ware.shade === undefined || shade === ware.shade);
};

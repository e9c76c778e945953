import { z } from 'zod';
import { KINDS } from '../../trade/kinds.ts';
import { Because, Caution, CLIENT_FACTS, Hold, Test } from './client.ts';
import { PRODUCT_FACTS, SALON_FACTS, STOCK_FACTS, Unread, ZoneLine } from './shelf.ts';
import { Clock, DateText, nameOf, Strength, Text, Word } from './values.ts';
import { Note, VISIT_FACTS } from './visit.ts';

const entry = <K extends string, T extends z.ZodRawShape, F extends z.ZodType>(
  kind: K,
  title: string,
  head: T,
  facts: F,
) => z.object({ kind: z.literal(kind), ...head, facts: z.array(facts) }).meta({ title });

const named = (of: 'salon' | 'stylist' | 'product' | 'client') => ({
  name: nameOf(of, 'gives').optional(),
  full: Text.optional(),
});

const SalonFact = z.discriminatedUnion('word', [...SALON_FACTS, Note, Unread]);
const ProductFact = z.discriminatedUnion('word', [...PRODUCT_FACTS, Note, Unread]);
const StockFact = z.discriminatedUnion('word', [...STOCK_FACTS, Note, Unread]);
const ClientFact = z.discriminatedUnion('word', [...CLIENT_FACTS, ZoneLine, Note, Unread]);
const VisitFact = z.discriminatedUnion('word', [...VISIT_FACTS, ZoneLine, Test, Caution, Hold, Because, Unread]);

export const Salon = entry('salon', 'Salon', named('salon'), SalonFact);
export const Stylist = entry(
  'stylist',
  'Stylist',
  { ...named('stylist'), salon: nameOf('salon').optional() },
  z.discriminatedUnion('word', [Note, Unread]),
);

const shelf = {
  ...named('product'),
  type: z.enum(KINDS).optional().meta({ title: 'Kind' }),
  kindWord: Word.optional(),
};
export const Range = entry('range', 'Range of shades', shelf, ProductFact);
export const Product = entry(
  'product',
  'Product',
  {
    ...shelf,
    strength: Strength.optional(),
    inRatio: z.boolean().meta({ description: 'an additive that counts in the ratio' }),
  },
  ProductFact,
);
export const Stock = entry(
  'stock',
  'Stock taken',
  { date: DateText.optional(), time: Clock.optional(), salon: nameOf('salon').optional(), says: Text.optional() },
  StockFact,
);
export const Client = entry('client', 'Client', named('client'), ClientFact);
export const Visit = entry(
  'visit',
  'Visit',
  {
    date: DateText.optional(),
    time: Clock.optional(),
    client: nameOf('client').optional(),
    more: z
      .array(nameOf('client-rest'))
      .optional()
      .meta({ description: 'words that follow the client’s name, which is one word' }),
    by: nameOf('stylist').optional(),
    salon: nameOf('salon').optional(),
    says: Text.optional(),
  },
  VisitFact,
);
/** Lines that belong to nobody until their header is mended: a misspelt header, or lines before any header. */
export const Orphan = entry(
  'orphan',
  'Lines without an entry',
  { header: Text.optional() },
  z.discriminatedUnion('word', [Unread]),
);

export const Entry = z.discriminatedUnion('kind', [Salon, Stylist, Range, Product, Stock, Client, Visit, Orphan]);

export type SalonFact = z.infer<typeof SalonFact>;
export type ProductFact = z.infer<typeof ProductFact>;
export type StockFact = z.infer<typeof StockFact>;
export type ClientFact = z.infer<typeof ClientFact>;
export type VisitFact = z.infer<typeof VisitFact>;
export type Salon = z.infer<typeof Salon>;
export type Stylist = z.infer<typeof Stylist>;
export type Range = z.infer<typeof Range>;
export type Product = z.infer<typeof Product>;
export type Stock = z.infer<typeof Stock>;
export type Client = z.infer<typeof Client>;
export type Visit = z.infer<typeof Visit>;
export type Orphan = z.infer<typeof Orphan>;
export type Entry = z.infer<typeof Entry>;
export type Fact = SalonFact | ProductFact | StockFact | ClientFact | VisitFact;

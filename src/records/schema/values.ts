import { z } from 'zod';

/** Where in its line a value was typed: inside the program one packed number (text/span.ts), in JSON `[from, to]`. */
export const Place = z.int().nonnegative().meta({
  title: 'Place',
  description: 'First character and one past the last, in UTF-16 units within the line',
});

const valued = <T extends z.ZodRawShape>(title: string, shape: T) => z.object({ ...shape, at: Place }).meta({ title });
const about = z
  .literal(true)
  .optional()
  .meta({ title: 'About', description: 'The note hedges it (~22 or 22?); reckoned as typed, shown as about' });

export const Text = valued('Text', { text: z.string() });
export type Text = z.infer<typeof Text>;

/** A name as compared: lower case, NFC, plain quotes and dashes. The characters as typed are at its place. */
export const Name = valued('Name', { name: z.string().min(1) });
export type Name = z.infer<typeof Name>;

/**
 * What names are of. Of `part-name`, the shelf tells whether it is the shade’s or the product’s; `held` is a product, a
 * kind or a word for all; `client-rest` are the words of a client’s name after its first; `other-bowl` is one of another
 * visit. A bowl is known in its visit, a measure at its product.
 */
export type Namespace =
  | ('client' | 'client-rest' | 'stylist' | 'salon' | 'zone' | 'rule' | 'lot')
  | ('product' | 'part-name' | 'held' | 'shade' | 'measure' | 'bowl' | 'other-bowl')
  | ('currency' | 'policy' | 'test');

/** A name of something; `gives` where the line is what gives the name, and not one that uses it. */
export const nameOf = (of: Namespace, gives?: 'gives') => Name.meta({ of, gives });

/** The number of a batch, as typed. */
export const Lot = Text.meta({ of: 'lot' });

/** A word of the trade as typed in a free slot (`warm`, `patchy`, `yellow?`), folded as names are. */
export const Word = valued('Word', { word: z.string().min(1), about });
export type Word = z.infer<typeof Word>;

export const DateText = valued('Date', { date: z.iso.date().meta({ description: 'ISO 8601 calendar date' }) });
export type DateText = z.infer<typeof DateText>;

/** A day, a month or a year, each as ISO 8601 writes it. */
export const When = valued('When', { when: z.string().regex(/^\d{4}(-\d{2}(-\d{2})?)?$/) });
export type When = z.infer<typeof When>;

export const Clock = valued('Clock time', {
  minutes: z.int().optional().meta({ title: 'Minutes since midnight', description: 'absent for a relative time' }),
  after: z.int().optional().meta({ title: 'Minutes after the first on', description: 'typed as +25' }),
  head: z.int().optional().meta({ title: 'Minutes after the zero of the head', description: 'typed as 0+25' }),
  other: z
    .int()
    .optional()
    .meta({ title: 'The other reading', description: 'twelve hours away, where only the salon’s hours can settle it' }),
  about,
});
export type Clock = z.infer<typeof Clock>;

export const Period = valued('Span of clock time', { from: Clock, to: Clock.optional() });
export type Period = z.infer<typeof Period>;

export const Duration = valued('Length of time', {
  value: z.number(),
  to: z.number().optional(),
  unit: z.enum(['min', 'h', 'd', 'w', 'mo']),
  about,
});
export type Duration = z.infer<typeof Duration>;

export const Amount = valued('Amount', {
  value: z.number(),
  to: z.number().optional().meta({ description: 'the far end, for a range' }),
  unit: z.string().meta({
    title: 'Unit',
    description:
      'g, kg, ml, l, oz-wt, floz-us, floz-uk, drop, p (parts), %, mm, cm, in, a product’s own measure, pack; empty: none typed',
  }),
  about,
});
export type Amount = z.infer<typeof Amount>;

export const Strength = valued('Peroxide strength', {
  value: z.number().nonnegative(),
  unit: z.enum(['%', 'vol']),
  about,
});
export type Strength = z.infer<typeof Strength>;

export const Ratio = valued('Mix ratio, colour to developer', {
  colour: z.number().positive(),
  developer: z.number().positive(),
  to: z.number().positive().optional().meta({ description: 'developer at the far end, for a range; same colour part' }),
  about,
});
export type Ratio = z.infer<typeof Ratio>;

export const Shade = valued('Shade', {
  shade: z.string().meta({ description: 'depth/tones with a slash, or the name that the range declares' }),
  depth: z.number().optional(),
  tones: z.string().optional().meta({ description: 'what stands after the separator or number, as typed, upper case' }),
});
export type Shade = z.infer<typeof Shade>;

export const Depth = valued('Depth', {
  value: z.number(),
  to: z.number().optional(),
  plus: z.literal(true).optional().meta({ description: 'typed 7+: a little lighter than 7' }),
  about,
});
export type Depth = z.infer<typeof Depth>;

/** Stages of lift, by name; `to` is the far end of a span typed with `to`. `gold-yellow` style names are half-way. */
export const Stage = valued('Stage of lift', { stage: z.string(), to: z.string().optional(), about });
export type Stage = z.infer<typeof Stage>;

/** A place on the head: one or two words, the second narrowing the first (`back left`, `ends top`). */
export const Zone = valued('Zone', { zone: z.string().min(1) }).meta({ of: 'zone' });
export type Zone = z.infer<typeof Zone>;

/** What is seen or wanted at some places: depth, stage of lift, grey share, tones and other words. */
export const Seen = valued('What is seen', {
  zones: z.array(Zone),
  depth: Depth.optional(),
  stage: Stage.optional(),
  grey: Amount.optional().meta({ description: 'per cent' }),
  words: z.array(Word),
});
export type Seen = z.infer<typeof Seen>;

/** One part of a mix: how much of what. Any of amount, product, shade, strength may be missing in an unfinished note. */
export const Component = valued('Component', {
  amount: Amount.optional(),
  product: nameOf('product').optional(),
  second: nameOf('part-name').optional().meta({
    description: 'a second name: the shade’s, or after a measure the product’s; the shelf tells which',
  }),
  shade: Shade.optional(),
  strength: Strength.optional(),
  ratio: Ratio.optional().meta({ description: 'typed after the developer: colour to this part' }),
  blend: z
    .array(nameOf('product'))
    .optional()
    .meta({ description: 'developers blended to the strength: 7.5% from dev-6 dev-9' }),
  out: nameOf('bowl').optional().meta({ description: 'the bowl it is taken out of: 40 from A' }),
  lot: Lot.optional(),
});
export type Component = z.infer<typeof Component>;

/** What every fact carries: the line it stands on within its entry, a closing remark, whose hand. */
export const factBase = {
  line: z.int().nonnegative().meta({ title: 'Line', description: 'counted from the entry’s header, which is 0' }),
  says: Text.optional().meta({ title: 'Remark' }),
  by: nameOf('stylist').optional().meta({ title: 'By', description: 'whose hand' }),
  rest: Text.optional().meta({ title: 'Not read', description: 'what of the line was not read, as typed' }),
};

/** A fact: one line of an entry, told apart by its first word. */
export const fact = <W extends string, T extends z.ZodRawShape>(word: W, title: string, shape: T) =>
  z.object({ word: z.literal(word), ...factBase, ...shape }).meta({ title });

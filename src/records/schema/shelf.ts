import { z } from 'zod';
import {
  Amount,
  Clock,
  DateText,
  Duration,
  fact,
  Lot,
  nameOf,
  Ratio,
  Shade,
  Strength,
  Text,
  When,
  Word,
  Zone,
} from './values.ts';

export const Money = fact('money', 'Currency', { currency: nameOf('currency').meta({ description: 'ISO 4217 code' }) });
export const Scale = fact('scale', 'What the scales can show', { step: Amount.meta({ description: 'grams' }) });
export const Hours = fact('hours', 'Opening hours', { from: Clock, to: Clock });
export const Growth = fact('growth', 'Growth until measured', {
  rate: z.number().meta({ title: 'Rate', description: 'mm a day' }),
});
export const Policy = fact('policy', 'The salon’s own policy', {
  topic: nameOf('policy').meta({ description: 'law, skin-test, under, ml, …' }),
  words: z.array(Word),
  numbers: z.array(z.number()).meta({ description: 'bare numbers, in order (under 16)' }),
  durations: z.array(Duration).meta({ description: 'skin-test: the lead first, then after `every` the interval' }),
});
export const ZoneLine = fact('zone', 'A place with a name of its own', {
  zone: nameOf('zone', 'gives'),
  zones: z.array(Zone).meta({ description: 'a salon’s group: the places it covers' }),
  where: Text.optional().meta({ description: 'this head’s own place, in words' }),
});

export const Mix = fact('mix', 'Mix ratio', {
  ratio: Ratio.optional().meta({ description: 'absent: used as it is (mix none)' }),
});
export const Uses = fact('uses', 'Its own developers', { products: z.array(nameOf('product')) });
export const StrengthLine = fact('strength', 'Strengths offered', {
  strengths: z.array(Strength),
  upTo: Strength.optional().meta({ description: 'strength to 9%' }),
});
export const TimeLine = fact('time', 'Time the product takes', {
  minutes: Duration,
  from: z.enum(['first-on', 'all-on']).optional(),
  checkEvery: Duration.optional(),
  when: z
    .discriminatedUnion('if', [
      z.object({ if: z.literal('grey'), percent: z.number() }),
      z.object({ if: z.literal('on-scalp') }),
      z.object({ if: z.literal('pre-lightened') }),
      z.object({ if: z.literal('with'), product: nameOf('product') }),
    ])
    .optional(),
});
export const Lift = fact('lift', 'The maker’s claim of lift', {
  claims: z.array(z.object({ strength: Strength, low: z.number(), high: z.number() })),
});
export const Tones = fact('tones', 'What the tone digits mean', {
  tones: z.array(z.object({ digit: z.string(), tone: Word })),
});
export const Shades = fact('shades', 'Shades that go by a name', { shades: z.array(nameOf('shade', 'gives')) });
export const Pack = fact('pack', 'Pack and price', {
  amount: Amount,
  price: z.number().optional().meta({ description: 'in the salon’s currency' }),
  from: DateText.optional(),
});
export const Reorder = fact('reorder', 'Reorder at', { at: Amount });
export const Density = fact('density', 'Density', {
  density: z.number().positive().meta({ description: 'grams a millilitre' }),
});
export const Keeps = fact('keeps', 'Keeps after opening', { keeps: Duration });
export const Measure = fact('measure', 'Its own measure', { measure: nameOf('measure', 'gives'), amount: Amount });
export const Scalp = fact('scalp', 'On the scalp', {
  upTo: Strength.optional().meta({ description: 'absent: never on the scalp' }),
});
export const Dose = fact('dose', 'Dose of an additive', { low: z.number(), high: z.number(), per: z.number() });
export const Over = fact('over', 'Hair a toner goes over', {
  depth: z.number().optional().meta({ description: 'over 8: this depth and lighter' }),
  darker: z.number().optional().meta({ description: 'over 3 darker: so many depths darker than the shade' }),
});

export const In = fact('in', 'Came in', {
  product: nameOf('product'),
  shade: Shade.optional(),
  amount: Amount.optional(),
  price: z.number().optional().meta({ description: 'for one pack' }),
  lot: Lot.optional(),
  useBy: When.optional(),
});
export const Count = fact('count', 'Counted', {
  product: nameOf('product'),
  shade: Shade.optional(),
  amount: Amount.optional(),
  lot: Lot.optional(),
});
export const Out = fact('out', 'Went out', {
  product: nameOf('product'),
  shade: Shade.optional(),
  amount: Amount.optional(),
  lot: Lot.optional(),
});

/** A line that could not be read: kept as typed, shown as typed. */
export const Unread = fact('unread', 'Kept as typed', { typed: z.string() });

export const SALON_FACTS = [Money, Scale, Hours, Growth, Policy, ZoneLine] as const;
export const PRODUCT_FACTS = [
  Mix,
  Uses,
  StrengthLine,
  TimeLine,
  Lift,
  Tones,
  Shades,
  Pack,
  Reorder,
  Density,
  Keeps,
  Measure,
  Scalp,
  Dose,
  Over,
] as const;
export const STOCK_FACTS = [In, Count, Out] as const;

export type Money = z.infer<typeof Money>;
export type Scale = z.infer<typeof Scale>;
export type Hours = z.infer<typeof Hours>;
export type Growth = z.infer<typeof Growth>;
export type Policy = z.infer<typeof Policy>;
export type ZoneLine = z.infer<typeof ZoneLine>;
export type Mix = z.infer<typeof Mix>;
export type Uses = z.infer<typeof Uses>;
export type StrengthLine = z.infer<typeof StrengthLine>;
export type TimeLine = z.infer<typeof TimeLine>;
export type Lift = z.infer<typeof Lift>;
export type Tones = z.infer<typeof Tones>;
export type Shades = z.infer<typeof Shades>;
export type Pack = z.infer<typeof Pack>;
export type Reorder = z.infer<typeof Reorder>;
export type Density = z.infer<typeof Density>;
export type Keeps = z.infer<typeof Keeps>;
export type Measure = z.infer<typeof Measure>;
export type Scalp = z.infer<typeof Scalp>;
export type Dose = z.infer<typeof Dose>;
export type Over = z.infer<typeof Over>;
export type In = z.infer<typeof In>;
export type Count = z.infer<typeof Count>;
export type Out = z.infer<typeof Out>;
export type Unread = z.infer<typeof Unread>;

import { z } from 'zod';
import {
  Amount,
  Clock,
  Component,
  DateText,
  Duration,
  fact,
  nameOf,
  Period,
  Seen,
  Shade,
  When,
  Word,
  Zone,
} from './values.ts';

const bowls = z.array(nameOf('bowl')).meta({ title: 'Bowls', description: 'names of bowls: one letter and digits' });
const zones = z.array(Zone).meta({ title: 'Zones' });
const money = z.number().meta({ description: 'in the salon’s currency' });

export const Asked = fact('asked', 'Asked that day', {
  about: z.array(Word),
  answer: z.enum(['yes', 'no']).optional().meta({ description: 'absent: the words in quotation marks are the answer' }),
});
export const Aim = fact('aim', 'What the client asks for', { text: z.string() });
export const Want = fact('want', 'Depth and tone to reach', { seen: z.array(Seen) });
export const Start = fact('start', 'Found before anything', { seen: z.array(Seen) });
export const Regrowth = fact('regrowth', 'New growth measured', {
  length: Amount.meta({ description: 'mm, cm or in' }),
  zones,
});

export const Bowl = fact('bowl', 'One mix', {
  bowl: nameOf('bowl', 'gives'),
  total: Amount.optional().meta({ description: 'bowl B 90 g of …: sets the total' }),
  parts: z.array(Component),
  claim: Amount.optional().meta({ description: '= 150: the total as typed, to compare' }),
});
export const Plus = fact('plus', 'A further component', { bowl: nameOf('bowl'), parts: z.array(Component) });
export const Weighed = fact('weighed', 'What the scales said', { bowl: nameOf('bowl'), parts: z.array(Component) });
export const Again = fact('again', 'An earlier bowl remade', {
  bowl: nameOf('bowl', 'gives'),
  from: z.object({
    client: nameOf('client').optional(),
    date: DateText.optional(),
    bowl: nameOf('other-bowl').optional(),
  }),
  share: Amount.optional().meta({ description: 'per cent of the earlier bowl' }),
});
export const More = fact('more', 'Another mix of the same bowl', {
  bowl: nameOf('bowl'),
  amount: Amount.optional(),
  time: Clock.optional(),
});

export const Placing = fact('place', 'Where a bowl goes', {
  bowls,
  zones,
  technique: Word.optional(),
  sections: z.int().optional(),
  gap: Amount.optional(),
  mirror: z.boolean(),
  scalp: z.enum(['on', 'off']).optional(),
  clear: Amount.optional().meta({ description: 'how far off the scalp' }),
  cover: Word.optional().meta({ description: 'foil, film, open' }),
  turn: bowls.optional(),
  words: z.array(Word),
});
export const Leave = fact('leave', 'Left out on purpose', { zones });
export const On = fact('on', 'Applied', {
  period: Period.optional().meta({ description: 'absent: put on without a clock, for the minutes that are typed' }),
  bowls,
  zones,
  minutes: Duration.optional(),
  last: z.literal(true).optional().meta({ description: 'last 2min: pulled through for the end of the bowl’s time' }),
});
export const Zero = fact('zero', 'Clock of the head begins', {
  time: Clock.meta({ description: 'what 0+25 counts from' }),
});
export const Check = fact('check', 'Looked at', { period: Period.optional(), bowls, seen: z.array(Seen) });
export const Off = fact('off', 'Taken off', {
  time: Clock.optional(),
  until: Clock.optional().meta({ description: 'the last section off, where they came off in the order they went on' }),
  bowls,
  zones,
  claim: Duration.optional().meta({ description: 'compared with the clock; without a time, how long it was on' }),
  sections: z.int().optional().meta({ description: 'how many of the sections placed came off; the rest is still in' }),
});
export const Heat = fact('heat', 'Heat', {
  period: Period.optional(),
  minutes: Duration.optional(),
  bowls,
  zones,
  words: z.array(Word),
});

/** `words` may hold a product’s name: the shelf tells. */
const step = {
  period: Period.optional(),
  minutes: Duration.optional(),
  amount: Amount.optional(),
  bowls,
  zones,
  words: z.array(Word),
};
export const Wash = fact('wash', 'Washed', step);
export const Rinse = fact('rinse', 'Rinsed', step);
export const Dry = fact('dry', 'Dried', step);
export const Cut = fact('cut', 'Cut', step);

export const Left = fact('left', 'Left in the bowls', {
  left: z.array(z.object({ bowl: nameOf('bowl'), amount: Amount })),
  fate: z.enum(['binned', 'kept', 'given']).optional(),
});
export const Home = fact('home', 'Goes home', { bowl: nameOf('bowl').optional(), parts: z.array(Component) });
export const Reaction = fact('reaction', 'Reaction', { time: Clock.optional(), bowls, zones, words: z.array(Word) });
export const Stopped = fact('stopped', 'Stopped early', { time: Clock.optional(), bowls, zones, words: z.array(Word) });
export const Declined = fact('declined', 'Declined', { what: z.array(Word) });
export const Result = fact('result', 'What came of it', { seen: z.array(Seen) });
export const Photo = fact('photo', 'Photo', { file: z.string() });
export const Care = fact('care', 'Aftercare given', { text: z.string() });
export const Note = fact('note', 'Note', { text: z.string() });

export const Charge = fact('charge', 'Charged', {
  item: z.string(),
  amount: money.optional(),
  total: z.literal(true).optional().meta({ description: 'charge total 82: a claim' }),
  discount: z.number().optional().meta({ description: 'per cent off what stands above' }),
});
export const Deposit = fact('deposit', 'Deposit', {
  amount: money.optional(),
  for: DateText.optional(),
  used: z.literal(true).optional(),
  returned: z.literal(true).optional(),
});
export const Paid = fact('paid', 'Paid', { amount: money.optional(), how: z.array(Word) });
export const Split = fact('split', 'Shared between stylists', {
  shares: z.array(z.object({ by: nameOf('stylist'), percent: z.number() })),
});
export const Fit = fact('fit', 'Goods used on her', {
  product: nameOf('product').optional(),
  amount: Amount.optional(),
  shade: Shade.optional(),
});
export const Redo = fact('redo', 'Put right free of charge', { date: DateText });
export const About = fact('about', 'Later news of another visit', { date: DateText, zones });
export const Call = fact('call', 'Later news of this visit', { date: DateText.optional(), time: Clock.optional() });
export const Next = fact('next', 'Next time', {
  wait: Duration.optional(),
  date: DateText.optional(),
  month: When.optional().meta({ description: 'a month, in which any day is meant' }),
  from: z.boolean().meta({ description: 'not before the date' }),
  time: Clock.optional(),
  changes: z.array(
    z.object({
      bowl: nameOf('bowl').optional(),
      percent: z.number().optional(),
      words: z.array(Word),
      text: z.string(),
    }),
  ),
});

export const VISIT_FACTS = [
  Asked,
  Aim,
  Want,
  Start,
  Regrowth,
  Bowl,
  Plus,
  Weighed,
  Again,
  More,
  Placing,
  Leave,
  On,
  Zero,
  Check,
  Off,
  Heat,
  Wash,
  Rinse,
  Dry,
  Cut,
  Left,
  Home,
  Reaction,
  Stopped,
  Declined,
  Result,
  Photo,
  Care,
  Note,
  Charge,
  Deposit,
  Paid,
  Split,
  Fit,
  Redo,
  About,
  Call,
  Next,
] as const;

export type Asked = z.infer<typeof Asked>;
export type Aim = z.infer<typeof Aim>;
export type Want = z.infer<typeof Want>;
export type Start = z.infer<typeof Start>;
export type Regrowth = z.infer<typeof Regrowth>;
export type Bowl = z.infer<typeof Bowl>;
export type Plus = z.infer<typeof Plus>;
export type Weighed = z.infer<typeof Weighed>;
export type Again = z.infer<typeof Again>;
export type More = z.infer<typeof More>;
export type Placing = z.infer<typeof Placing>;
export type Leave = z.infer<typeof Leave>;
export type On = z.infer<typeof On>;
export type Zero = z.infer<typeof Zero>;
export type Check = z.infer<typeof Check>;
export type Off = z.infer<typeof Off>;
export type Heat = z.infer<typeof Heat>;
export type Wash = z.infer<typeof Wash>;
export type Rinse = z.infer<typeof Rinse>;
export type Dry = z.infer<typeof Dry>;
export type Cut = z.infer<typeof Cut>;
export type Left = z.infer<typeof Left>;
export type Home = z.infer<typeof Home>;
export type Reaction = z.infer<typeof Reaction>;
export type Stopped = z.infer<typeof Stopped>;
export type Declined = z.infer<typeof Declined>;
export type Result = z.infer<typeof Result>;
export type Photo = z.infer<typeof Photo>;
export type Care = z.infer<typeof Care>;
export type Note = z.infer<typeof Note>;
export type Charge = z.infer<typeof Charge>;
export type Deposit = z.infer<typeof Deposit>;
export type Paid = z.infer<typeof Paid>;
export type Split = z.infer<typeof Split>;
export type Fit = z.infer<typeof Fit>;
export type Redo = z.infer<typeof Redo>;
export type About = z.infer<typeof About>;
export type Call = z.infer<typeof Call>;
export type Next = z.infer<typeof Next>;

import { z } from 'zod';
import { Clock, Component, DateText, Duration, fact, nameOf, Seen, Shade, When, Word, Zone } from './values.ts';

export const Born = fact('born', 'Born', { when: When });
export const Natural = fact('natural', 'Natural depth', { seen: z.array(Seen) });
export const Grey = fact('grey', 'Grey share', { parts: z.array(Seen) });
export const Hair = fact('hair', 'The hair itself', {
  qualities: z.array(z.object({ quality: Word, words: z.array(Word), zones: z.array(Zone) })),
});
export const Pattern = fact('pattern', 'Growth pattern', { zones: z.array(Zone) });
export const History = fact('history', 'What was done before', {
  when: When.optional(),
  kinds: z.array(Word),
  zones: z.array(Zone),
});
export const Allergy = fact('allergy', 'Allergy', { to: z.array(Word) });
export const Caution = fact('caution', 'Caution', { text: z.string(), until: When.optional() });
export const Avoid = fact('avoid', 'Avoid', { what: z.array(Word) });
export const Consent = fact('consent', 'Consent', { what: z.array(Word), date: DateText.optional() });

export const Letter = fact('letter', 'Letter of a doctor', {
  date: DateText.optional().meta({ description: 'the day it was written or came in' }),
});

/** Skin, strand, metal, stretch and porosity tests: made, with what, read, seen; or a decision not to. */
export const Test = fact('test', 'Test', {
  test: nameOf('test').meta({ description: 'skin, strand, metal, stretch, porosity' }),
  date: DateText.optional().meta({ description: 'absent under a visit: that day' }),
  time: Clock.optional(),
  made: z.boolean().meta({ description: 'false: the line only reads a test made earlier, or is a decision' }),
  products: z.array(nameOf('product')).meta({ description: 'with what; empty: not said' }),
  shades: z.array(Shade).optional(),
  mix: z.array(Component).optional(),
  minutes: Duration.optional(),
  zones: z.array(Zone),
  read: z.boolean(),
  readDate: DateText.optional(),
  readTime: Clock.optional(),
  result: z.array(Seen),
  notNeeded: z.boolean(),
});
export const Hold = fact('hold', 'Hold', {
  what: nameOf('held').meta({ description: 'a kind, a product, `oxidative` or `all`' }),
  from: When.optional().meta({ description: 'absent: from the entry’s own day, or always under a client' }),
  until: When.optional(),
  length: Duration.optional(),
  untilLetter: z.boolean().optional().meta({ description: 'lifts with a letter of a doctor' }),
});
export const Because = fact('because', 'Reason given', { rule: nameOf('rule') });

export const CLIENT_FACTS = [
  Born,
  Natural,
  Grey,
  Hair,
  Pattern,
  History,
  Allergy,
  Caution,
  Test,
  Avoid,
  Consent,
  Letter,
  Hold,
  Because,
] as const;

export type Born = z.infer<typeof Born>;
export type Natural = z.infer<typeof Natural>;
export type Grey = z.infer<typeof Grey>;
export type Hair = z.infer<typeof Hair>;
export type Pattern = z.infer<typeof Pattern>;
export type History = z.infer<typeof History>;
export type Allergy = z.infer<typeof Allergy>;
export type Caution = z.infer<typeof Caution>;
export type Avoid = z.infer<typeof Avoid>;
export type Consent = z.infer<typeof Consent>;
export type Letter = z.infer<typeof Letter>;
export type Test = z.infer<typeof Test>;
export type Hold = z.infer<typeof Hold>;
export type Because = z.infer<typeof Because>;

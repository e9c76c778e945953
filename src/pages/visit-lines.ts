import { nextLines } from '../reckon/ahead/due-window.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { VisitFact } from '../records/schema/entry.ts';
import type { Again, Left, Next } from '../records/schema/visit.ts';
import { holdText } from './client-lines.ts';
import { codeSpan, escapeInside, escapeText } from './escape.ts';
import { chargeText, depositText, paidText, splitText } from './money-words.ts';
import { bowlName, clientName, commas, endOf, type Noted, spaced, typedWords } from './noted.ts';
import { placingText } from './place-words.ts';
import { amountText, durationText, plain, timeText } from './say-numbers.ts';
import { allSeen, partsText, shadeText, zonesText } from './seen.ts';
import { checkText, eventText, offText, onText, stepText } from './step-words.ts';
import { testText } from './test-words.ts';

type Phrases = { readonly [W in VisitFact['word']]: (noted: Noted, fact: Extract<VisitFact, { word: W }>) => string };

const againText = ({ journal }: Noted, { bowl, from, share }: Again): string =>
  spaced([
    bowlName(bowl),
    'from',
    from.client && clientName(journal, from.client),
    from.date?.date,
    bowlName(from.bowl ?? bowl),
    share && amountText(share, '%'),
  ]);

const leftText = ({ left, fate }: Left): string =>
  commas([...left.map(({ bowl, amount }) => `${bowlName(bowl)} ${amountText(amount, 'g')}`), fate]);

/** What to change next time: a bowl by how much, or as typed. */
const changeText = ({ bowl, percent, words, text }: Next['changes'][number]): string =>
  bowl !== undefined && percent !== undefined && words.length === 0
    ? `${bowlName(bowl)} ${percent < 0 ? '−' : '+'}${plain(Math.abs(percent))} %`
    : escapeInside(text);

export const nextText = ({ salon }: Noted, { wait, date, month, from, time, changes }: Next): string =>
  commas([
    wait && `in ${durationText(wait)}`,
    month && spaced([from && 'not before', month.when]),
    date && spaced([from && 'not before', date.date, time && timeText(time, salon.hours)]),
    ...changes.map(changeText),
  ]);

/** What every `next` line of a visit says, with its remark and whose hand. */
export const nextTexts = (noted: Noted, { visit }: Pick<VisitReckoned, 'visit'>): string =>
  nextLines(visit)
    .map((next) => `${nextText(noted, next)}${endOf(noted.journal, next)}`.trim())
    .join('; ');

/** What each line of a visit says, as Markdown without its first word. */
const PHRASES: Phrases = {
  asked: (noted, fact) => commas([typedWords(noted, fact, fact.about), fact.answer]),
  aim: (_, { text }) => escapeText(text),
  want: (noted, fact) => allSeen(noted, fact, fact.seen),
  start: (noted, fact) => allSeen(noted, fact, fact.seen),
  regrowth: (_, { length, zones }) => spaced([amountText(length), zonesText(zones)]),
  bowl: (noted, { bowl, total, parts, claim }) =>
    commas([
      spaced([bowlName(bowl), total && `${amountText(total, 'g')} of`, partsText(noted, parts)]),
      claim && `noted as ${amountText(claim, 'g')} in all`,
    ]),
  plus: (noted, { bowl, parts }) => spaced([bowlName(bowl), partsText(noted, parts)]),
  weighed: (noted, { bowl, parts }) => spaced([bowlName(bowl), partsText(noted, parts, ', ')]),
  again: againText,
  more: ({ salon }, { bowl, amount, time }) =>
    spaced([bowlName(bowl), amount && amountText(amount, 'g'), time && `at ${timeText(time, salon.hours)}`]),
  place: placingText,
  leave: (_, { zones }) => zonesText(zones),
  on: onText,
  zero: ({ salon }, { time }) => timeText(time, salon.hours),
  check: checkText,
  off: offText,
  heat: stepText,
  wash: stepText,
  rinse: stepText,
  dry: stepText,
  cut: stepText,
  left: (_, fact) => leftText(fact),
  home: (noted, { parts }) => partsText(noted, parts),
  reaction: eventText,
  stopped: eventText,
  declined: (noted, fact) => typedWords(noted, fact, fact.what) || 'the whole visit',
  result: (noted, fact) => allSeen(noted, fact, fact.seen),
  photo: (_, { file }) => escapeText(file),
  care: (_, { text }) => escapeText(text),
  note: (_, { text }) => escapeText(text),
  charge: chargeText,
  deposit: depositText,
  paid: paidText,
  split: splitText,
  fit: (_, { amount, product, shade }) =>
    spaced([amount && amountText(amount), product && escapeText(product.name), shade && shadeText(shade)]),
  redo: (_, { date }) => `the visit of ${date.date}, free of charge`,
  about: (_, { date, zones }) => commas([date.date, zonesText(zones)]),
  call: ({ salon }, { date, time }) => spaced([date?.date, time && timeText(time, salon.hours)]),
  next: nextText,
  zone: (_, { zone, zones }) => commas([escapeText(zone.name), zonesText(zones)]),
  test: testText,
  caution: (_, { text, until }) => commas([escapeText(text), until && `until ${until.when}`]),
  hold: (_, fact) => holdText(fact),
  because: (_, { rule }) => escapeText(rule.name),
  unread: (_, { typed }) => codeSpan(typed),
};

export const VISIT_LABELS: Readonly<Record<VisitFact['word'], string>> = {
  asked: 'Asked',
  aim: 'Aim',
  want: 'Want',
  start: 'Found',
  regrowth: 'Regrowth',
  bowl: 'Bowl',
  plus: 'Added to bowl',
  weighed: 'Weighed',
  again: 'Made again',
  more: 'Mixed more',
  place: 'Placed',
  leave: 'Left out',
  on: 'On',
  zero: 'Clock of the head from',
  check: 'Looked at',
  off: 'Off',
  heat: 'Heat',
  wash: 'Wash',
  rinse: 'Rinse',
  dry: 'Dry',
  cut: 'Cut',
  left: 'Left over',
  home: 'Given home',
  reaction: 'Reaction',
  stopped: 'Stopped early',
  declined: 'Declined',
  result: 'Result',
  photo: 'Photo',
  care: 'Aftercare',
  note: 'Note',
  charge: 'Charged',
  deposit: 'Deposit',
  paid: 'Paid',
  split: 'Shared',
  fit: 'Fitted',
  redo: 'Puts right',
  about: 'About',
  call: 'Later news',
  next: 'Next time',
  zone: 'Own place',
  test: 'Test',
  caution: 'Caution',
  hold: 'Hold',
  because: 'Reason given',
  unread: 'Kept as typed',
};

/** A line of a visit in words, with its remark, whose hand, and what was not read. */
export const visitPhrase = (noted: Noted, fact: VisitFact): string => {
  const phrase = PHRASES[fact.word] as (noted: Noted, fact: VisitFact) => string;
  const said = phrase(noted, fact);
  return fact.word === 'test' ? said : `${said}${endOf(noted.journal, fact)}`.trim();
};

/** A line of a visit as a list item, its label first. */
export const visitItem = (noted: Noted, fact: VisitFact): string =>
  `- **${VISIT_LABELS[fact.word]}** ${visitPhrase(noted, fact)}`;

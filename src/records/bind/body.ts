import type { BodyWord } from '../../notation/words.ts';
import { bindAgain, bindBowl, bindHome, bindLeft, bindMore, bindParted } from './bowl-lines.ts';
import {
  bindAllergy,
  bindAvoid,
  bindBecause,
  bindBorn,
  bindConsent,
  bindGrey,
  bindHair,
  bindHistory,
  bindHold,
  bindLetter,
  bindNatural,
  bindPattern,
  bindZoneLine,
} from './client-lines.ts';
import { bindCheck, bindEvent, bindHeat, bindOff, bindOn, bindStep } from './clock-lines.ts';
import type { Opened } from './cursor.ts';
import { bindCharges, bindDeposit, bindPayments, bindSplit } from './money-lines.ts';
import { bindPlace } from './place-line.ts';
import { bindGrowth, bindHours, bindMoney, bindPolicy, bindScale } from './salon-lines.ts';
import { bindSeen } from './seen.ts';
import {
  bindDensity,
  bindDose,
  bindKeeps,
  bindLift,
  bindMeasure,
  bindMix,
  bindOver,
  bindPack,
  bindReorder,
  bindScalp,
  bindShades,
  bindStrength,
  bindTime,
  bindTones,
  bindUses,
} from './shelf-lines.ts';
import { bindStock } from './stock-lines.ts';
import { bindTest } from './test-line.ts';
import {
  bindAbout,
  bindAsked,
  bindCall,
  bindDeclined,
  bindFit,
  bindLeave,
  bindNext,
  bindRedo,
  bindRegrowth,
} from './visit-lines.ts';

/** What a binder gives: the fields of its fact, those of several facts, or nothing when the line could not be read. */
export type Fields = object | readonly object[] | undefined;
type FreeWord = 'aim' | 'note' | 'care' | 'caution' | 'photo';

const seen = (opened: Opened): Fields => ({ seen: bindSeen(opened.cursor, opened.groups, { stages: false }) });

/** A binder a first word; free text is bound apart, since it never reaches the lexer. */
export const BINDERS: Readonly<Record<Exclude<BodyWord, FreeWord>, (opened: Opened, word: string) => Fields>> = {
  money: bindMoney,
  scale: bindScale,
  hours: bindHours,
  growth: bindGrowth,
  policy: bindPolicy,
  zone: bindZoneLine,
  mix: bindMix,
  uses: bindUses,
  strength: bindStrength,
  time: bindTime,
  lift: bindLift,
  tones: bindTones,
  shades: bindShades,
  pack: bindPack,
  reorder: bindReorder,
  density: bindDensity,
  keeps: bindKeeps,
  measure: bindMeasure,
  scalp: bindScalp,
  dose: bindDose,
  over: bindOver,
  in: (opened) => bindStock(opened, 'in'),
  count: (opened) => bindStock(opened, 'count'),
  out: (opened) => bindStock(opened, 'out'),
  born: bindBorn,
  natural: bindNatural,
  grey: bindGrey,
  hair: bindHair,
  pattern: bindPattern,
  history: bindHistory,
  allergy: bindAllergy,
  avoid: bindAvoid,
  consent: bindConsent,
  letter: bindLetter,
  test: bindTest,
  hold: bindHold,
  because: bindBecause,
  asked: bindAsked,
  want: seen,
  start: seen,
  result: seen,
  regrowth: bindRegrowth,
  bowl: bindBowl,
  plus: (opened) => bindParted(opened, 'plus'),
  weighed: (opened) => bindParted(opened, 'weighed'),
  again: bindAgain,
  more: bindMore,
  place: bindPlace,
  leave: bindLeave,
  on: bindOn,
  check: bindCheck,
  off: bindOff,
  heat: bindHeat,
  wash: bindStep,
  rinse: bindStep,
  dry: bindStep,
  cut: bindStep,
  left: bindLeft,
  home: bindHome,
  reaction: bindEvent,
  stopped: bindEvent,
  declined: bindDeclined,
  charge: bindCharges,
  deposit: bindDeposit,
  paid: bindPayments,
  split: bindSplit,
  fit: bindFit,
  redo: bindRedo,
  about: bindAbout,
  call: bindCall,
  next: bindNext,
};

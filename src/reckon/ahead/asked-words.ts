import type { Next } from '../../records/schema/visit.ts';
import { leftOutIn, mixChangeIn } from '../../trade/change-words.ts';
import { putsOnColour } from '../head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../model.ts';
import { nextLines, plannedIn } from './due-window.ts';
import { type Spoken, spokenOf } from './spoken-bowls.ts';

/**
 * What the notes say in words of a bowl for next time. Where they do, no grams of the old mix are given for it: words
 * cannot be weighed.
 *
 * Reads: the `next` lines of a visit, its `call` lines, later `about` lines and what is said after it. Gives: the words,
 * bowl by bowl. Runs again: when one of those visits changes.
 */

/** Words about a bowl, where and when they were noted. */
export type AskedWords = {
  readonly word: 'next' | 'call' | 'about' | 'note';
  /** The day they were noted, or the day of the call. */
  readonly date: string;
  readonly text: string;
};

type Change = Next['changes'][number];

/** Every change that the `next` lines of a visit ask for, in order. */
export const changesOf = (visit: VisitReckoned): Change[] => nextLines(visit.visit).flatMap(({ changes }) => changes);

const WORD = /[\p{L}\p{N}]/u;
const FIGURE = /[+−–-]\s*\d+(?:[.,]\d+)?\s*%/u;

/** What a change says besides a bowl and its share: `6/1` in `A 6/1`, nothing in `A -20%`. */
const beyondShare = ({ text, bowl, percent }: Change): string => {
  const named =
    bowl === undefined ? text : text.replace(new RegExp(`(?<!\\p{L})${bowl.name}(?![\\p{L}\\p{N}])`, 'iu'), '');
  return percent === undefined ? named : named.replace(FIGURE, '');
};

/** Whether a change is a share and nothing else: `A -20%`, `-20%`. */
export const isShareAlone = (change: Change): boolean =>
  change.percent !== undefined && !WORD.test(beyondShare(change));
const isBowlAlone = (change: Change): boolean => change.percent === undefined && !WORD.test(beyondShare(change));

/**
 * The per cent more or less of a bowl that `next` lines ask for, the last that says so. Without a bowl's name it is of the
 * only bowl. `visits` are the client's, oldest first: a later visit without bowls of its own may ask for it too.
 */
export const askedShare = (
  visit: VisitReckoned,
  { name }: BowlReckoned,
  visits: readonly VisitReckoned[],
  on: string,
): number | undefined => {
  const later = visits.slice(visits.indexOf(visit) + 1).filter(({ date, bowls }) => date < on && bowls.length === 0);
  const isOnly = visit.bowls.length === 1;
  const change = [visit, ...later]
    .flatMap(changesOf)
    .findLast(
      (one) =>
        one.percent !== undefined &&
        (one.bowl === undefined ? isOnly && isShareAlone(one) : one.bowl.name.toUpperCase() === name),
    );
  return change?.percent !== undefined && change.percent > -100 ? change.percent : undefined;
};

/**
 * The changes of a line as they are said together: `A, B cooler` names two bowls, and in `A 6/1, 20vol` the strength is
 * that of A.
 */
const saidTogether = (changes: readonly Change[]): string[] => {
  const said: { text: string; named: boolean }[] = [];
  let waiting = '';
  for (const change of changes) {
    if (change.bowl !== undefined && isBowlAlone(change)) {
      waiting += `${change.text}, `;
      continue;
    }
    if (isShareAlone(change) && change.bowl !== undefined) {
      waiting = '';
      continue;
    }
    const last = said.at(-1);
    if (change.bowl === undefined && waiting === '' && last?.named && mixChangeIn(change.text, true) !== undefined)
      last.text += `, ${change.text}`;
    else said.push({ text: waiting + change.text, named: change.bowl !== undefined });
    waiting = '';
  }
  return said.map(({ text }) => text);
};

type Said = AskedWords & Spoken;

const NEXT_TIME =
  /^(?:for )?next (?:time|visit)\b|^(?:fürs )?nächste[sn]? mal\b|^la prochaine fois\b|^pr[óo]xim[oa] (?:vez|visita)\b|^da próxima\b|^la próxima\b/iu;

/** What one visit says of next time: its `next` lines, its calls, and notes that begin with the words. */
const saidIn = (visit: VisitReckoned, on: string, own: boolean): Said[] =>
  visit.visit.entry.facts.flatMap((fact): Said[] => {
    const text = fact.says?.text ?? '';
    const { date } = visit;
    if (fact.word === 'next')
      return [...saidTogether(fact.changes), ...(text === '' ? [] : [text])].map((one) => ({
        word: 'next',
        date,
        text: one,
        planned: true,
        own,
      }));
    if (fact.word === 'call' && own && text !== '') {
      const called = fact.date?.date ?? date;
      return called > on ? [] : [{ word: 'call', date: called, text, planned: false, own }];
    }
    if (fact.word === 'note' && NEXT_TIME.test(fact.text))
      return [{ word: 'note', date, text: fact.text, planned: true, own }];
    return [];
  });

/** What later visits note `about` a visit. */
const aboutIn = (later: VisitReckoned, date: string): Said[] =>
  later.visit.entry.facts.flatMap((fact): Said[] => {
    if (fact.word !== 'about' || fact.date.date !== date || fact.says === undefined) return [];
    const { text } = fact.says;
    const zones = fact.zones.map(({ zone }) => zone).join(', ');
    const said = zones === '' ? text : `${zones}: ${text}`;
    return [{ word: 'about', date: later.date, text: said, planned: false, own: true }];
  });

/** All that is said for next time of a visit's bowls, before a day. `visits` are the client's, oldest first. */
const saidOf = (visit: VisitReckoned, visits: readonly VisitReckoned[], on: string): Said[] => {
  const later = visits.slice(visits.indexOf(visit) + 1).filter(({ date }) => date < on);
  const plans = plannedIn(visits.filter(({ date }) => date < on));
  return [
    ...saidIn(visit, on, true),
    ...later.flatMap((one) => [
      ...(one === plans || !putsOnColour(one) ? saidIn(one, on, one.bowls.length === 0) : []),
      ...aboutIn(one, visit.date),
    ]),
  ];
};

/**
 * What is said in words of each bowl of a visit for next time, by the bowl's name; a bowl of which nothing is said has
 * no entry. `visits` are the client's, oldest first; what was noted on the day or after it is not known yet.
 */
export const askedWords = (
  visit: VisitReckoned,
  visits: readonly VisitReckoned[],
  on: string,
): ReadonlyMap<string, readonly AskedWords[]> => {
  const found = new Map<string, AskedWords[]>();
  for (const said of saidOf(visit, visits, on)) {
    const { word, date, text } = said;
    for (const name of spokenOf(said, visit)) {
      const words = found.get(name) ?? [];
      if (!words.some((one) => one.text === text)) words.push({ word, date, text });
      found.set(name, words);
    }
  }
  return found;
};

/** A shade that a plan leaves out of a bowl. */
export type LeftOut = { readonly fact: Next; readonly text: string; readonly bowl: string; readonly shade: string };

/** The shades that the `next` lines of a visit leave out of its bowls, in words: `A without the 7/4`. */
export const leftOutBy = (visit: VisitReckoned): LeftOut[] =>
  nextLines(visit.visit).flatMap((fact) => {
    const said = [...saidTogether(fact.changes), ...(fact.says === undefined ? [] : [fact.says.text])];
    return said.flatMap((text) => {
      const shades = leftOutIn(text);
      if (shades.length === 0) return [];
      const bowls = [...spokenOf({ text, planned: true, own: true }, visit)];
      return bowls.flatMap((bowl) => shades.map((shade): LeftOut => ({ fact, text, bowl, shade })));
    });
  });

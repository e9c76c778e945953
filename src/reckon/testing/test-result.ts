import type { Test } from '../../records/schema/client.ts';
import type { Seen } from '../../records/schema/values.ts';
import { failedWord } from '../../trade/condition.ts';
import { isAdverse } from '../../trade/hair.ts';
import { harmOf } from '../../trade/harm/told-harm.ts';

/** What was seen in a test: nothing against going on, something against it, or what settles neither. */
export type TestResult = 'clear' | 'adverse' | 'other';

/** Words that settle any test, with what they say. */
const SETTLES: ReadonlyMap<string, TestResult> = new Map([
  ['clear', 'clear'],
  ['negative', 'clear'],
  ['reaction', 'adverse'],
  ['positive', 'adverse'],
]);

const OPPOSITE: Readonly<Record<TestResult, TestResult>> = { clear: 'adverse', adverse: 'clear', other: 'other' };

/** What speaks for going on in a test of the hair; a skin test is settled by the words above alone. */
const GOOD_HAIR: ReadonlySet<string> = new Set(['springs-back', 'smooth']);

const DENIES: ReadonlySet<string> = new Set(['no', 'not', 'never', 'without', 'none', 'nothing', 'hardly', "isn't"]);

const wordsOf = (seen: readonly Seen[]): string[] => seen.flatMap(({ words }) => words.map(({ word }) => word));

/** What one word says, by the denials before it: one straight before it turns it round, a farther one settles nothing. */
const saysAt = (words: readonly string[], index: number, says: TestResult): TestResult => {
  const denied = words.slice(0, index).findLastIndex((word) => DENIES.has(word));
  if (denied < 0 || words.slice(denied + 1, index).some((word) => SETTLES.has(word))) return says;
  return denied === index - 1 ? OPPOSITE[says] : 'other';
};

const verdictsIn = (words: readonly string[]): TestResult[] =>
  words.flatMap((word, index) => {
    const says = SETTLES.get(word);
    return says === undefined ? [] : [saysAt(words, index, says)];
  });

/** Words beside those that settle a test and the denials that belong to them. */
const isBeside = (word: string, index: number, words: readonly string[]): boolean =>
  !SETTLES.has(word) && !(DENIES.has(word) && SETTLES.has(words[index + 1] ?? ''));

/** Whether the remark of a skin test tells of hurt skin: at the test itself every red place is one. */
const tellsHarm = (says: Test['says']): boolean =>
  says !== undefined && harmOf(`skin: ${says.text}`, 'skin') !== undefined;

/** Whether a skin test is typed as clear while its remark tells of a reaction. */
export const isClearAgainstItself = (fact: Test): boolean =>
  fact.test.name === 'skin' && tellsHarm(fact.says) && skinResult({ ...fact, says: undefined }) === 'clear';

const skinResult = ({ result, rest, says }: Test): TestResult => {
  const words = wordsOf(result);
  const verdicts = verdictsIn(words);
  if (verdicts.includes('other')) return 'other';
  if (verdicts.includes('adverse')) return 'adverse';
  const more = result.some(({ stage, depth, grey }) => stage ?? depth ?? grey) || rest !== undefined;
  return verdicts.length === 0 || more || words.some(isBeside) || tellsHarm(says) ? 'other' : 'clear';
};

/** Tests of the fibre, whose remarks in quotation marks are read for what says that it went. */
const OF_FIBRE: ReadonlySet<string> = new Set(['strand', 'stretch', 'porosity']);

/** The word by which a test of the fibre says that it went, quoted or not; undefined for other tests and decisions. */
export const failureIn = ({ test, result, says, notNeeded }: Test): string | undefined => {
  if (notNeeded || !OF_FIBRE.has(test.name)) return undefined;
  const typed = result.map(({ words }) => words.map(({ word }) => word).join(' ')).join(', ');
  return failedWord(typed) ?? (says && failedWord(says.text));
};

const hairResult = ({ result }: Test): TestResult => {
  const words = wordsOf(result);
  const verdicts = verdictsIn(words);
  const denied = (index: number): boolean => words.slice(0, index).some((word) => DENIES.has(word));
  if (verdicts.includes('adverse')) return 'adverse';
  if (words.some((word, index) => !SETTLES.has(word) && isAdverse(word) && !denied(index))) return 'adverse';
  if (verdicts.includes('other')) return 'other';
  return verdicts.includes('clear') || words.some((word, index) => GOOD_HAIR.has(word) && !denied(index))
    ? 'clear'
    : 'other';
};

/**
 * What the words of a result come to; undefined when nothing was seen. A skin test is settled by `clear` and `negative`,
 * `reaction` and `positive` alone: any other word beside `clear` leaves it unsettled (`clear, slightly pink`). A denial
 * straight before such a word turns it round (`no reaction`); one farther before it settles nothing. What says that the
 * fibre went counts in a remark too.
 */
export const resultOf = (fact: Test): TestResult | undefined => {
  if (failureIn(fact) !== undefined) return 'adverse';
  if (fact.result.length === 0) return undefined;
  return fact.test.name === 'skin' ? skinResult(fact) : hairResult(fact);
};

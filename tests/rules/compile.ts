import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { EXAMPLE_DAY, readExample } from '../../src/rules/example.ts';
import { judge } from '../../src/rules/judging.ts';
import type { AllFound } from '../../src/rules/reported.ts';
import type { Rule } from '../../src/rules/rule.ts';
import type { Finding } from '../../src/text/finding.ts';
import { fromOf, toOf } from '../../src/text/span.ts';

export const FILE = 'example.bowl';

/** The findings of one file of notes, on the day of the examples. */
export const findIn = (notes: string | Uint8Array): AllFound => {
  const bytes = typeof notes === 'string' ? new TextEncoder().encode(notes) : notes;
  const journal = joinSources([readSource(FILE, bytes)]);
  return judge(journal, EXAMPLE_DAY).all();
};

/** The text of an example, its indentation and carets taken off. */
export const textOf = (example: string): string => readExample(example).lines.join('\n');

/** The bytes of a rule's bad example. */
export const badBytesOf = (rule: Rule): Uint8Array => {
  const text = textOf(rule.bad);
  return rule.badBytes?.(text) ?? new TextEncoder().encode(text);
};

/** A finding as `rule line:from-to`, to compare with an example's carets. */
export const spotOf = ({ rule, place }: Finding): string =>
  `${rule} ${place.line}:${fromOf(place.at)}-${toOf(place.at)}`;

/** The rules found in some notes, in order of report; examples are typed with their own indentation. */
export const rulesIn = (notes: string): string[] => findIn(textOf(notes)).findings.map(({ rule }) => rule);

/** What is found in some notes, as `severity rule: message`. */
export const saidIn = (notes: string): string[] =>
  findIn(textOf(notes)).findings.map(({ rule, severity, message }) => `${severity} ${rule}: ${message}`);

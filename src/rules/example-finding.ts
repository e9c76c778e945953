import { joinSources } from '../journal/journal.ts';
import { readSource } from '../journal/source.ts';
import type { Finding } from '../text/finding.ts';
import { EXAMPLE_DAY, readExample } from './example.ts';
import { judge } from './judging.ts';
import type { Rule } from './rule.ts';

/** What a rule says of its own bad example, compiled as notes of their own; undefined where it says nothing. */
export const exampleFinding = (rule: Rule): Finding | undefined => {
  const text = readExample(rule.bad).lines.join('\n');
  const bytes = rule.badBytes?.(text) ?? Buffer.from(text);
  const journal = joinSources([readSource('example.bowl', bytes)]);
  const { findings } = judge(journal, EXAMPLE_DAY).all();
  return findings.find((finding) => finding.rule === rule.name);
};

import { joinSources } from '../journal/journal.ts';
import { readSource } from '../journal/source.ts';
import { reckonAll } from '../reckon/visit.ts';
import type { Finding } from '../text/finding.ts';
import { EXAMPLE_DAY, readExample } from './example.ts';
import type { Rule } from './rule.ts';
import { findAll } from './run.ts';

/** What a rule says of its own bad example, compiled as notes of their own; undefined where it says nothing. */
export const exampleFinding = (rule: Rule): Finding | undefined => {
  const text = readExample(rule.bad).lines.join('\n');
  const bytes = rule.badBytes?.(text) ?? Buffer.from(text);
  const journal = joinSources([readSource('example.bowl', bytes)]);
  const { findings } = findAll(journal, reckonAll(journal), EXAMPLE_DAY);
  return findings.find((finding) => finding.rule === rule.name);
};

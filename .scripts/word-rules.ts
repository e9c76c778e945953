import { joinSources } from '../src/journal/journal.ts';
import { readSource } from '../src/journal/source.ts';
import { readLine } from '../src/notation/read-line.ts';
import { isBodyWord } from '../src/notation/words.ts';
import { RULES } from '../src/rules/all.ts';
import { readExample } from '../src/rules/example.ts';
import { judge } from '../src/rules/judging.ts';

const fires = (lines: readonly string[], rule: string): boolean =>
  judge(joinSources([readSource('example.bowl', Buffer.from(lines.join('\n')))]))
    .all()
    .findings.some((finding) => finding.rule === rule);

/**
 * Which rules depend on which word, measured on the rules' own examples: a rule depends on a word when taking one of its
 * lines out makes the rule fire or fall silent. Rules about the typing of any line are left out.
 */
export const rulesByWord = (): ReadonlyMap<string, readonly string[]> => {
  const found = new Map<string, Set<string>>();
  for (const rule of RULES) {
    if (rule.family === 'reading' || rule.family === 'typing') continue;
    for (const { lines } of [readExample(rule.bad), readExample(rule.good)]) {
      const before = fires(lines, rule.name);
      for (const [index, line] of lines.entries()) {
        const { word } = readLine(line);
        if (!isBodyWord(word) || found.get(word)?.has(rule.name)) continue;
        if (fires(lines.with(index, '#'), rule.name) === before) continue;
        const rules = found.get(word) ?? new Set();
        found.set(word, rules.add(rule.name));
      }
    }
  }
  return new Map([...found].map(([word, rules]) => [word, [...rules].sort()]));
};

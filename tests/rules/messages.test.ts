import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { RULES } from '../../src/rules/all.ts';
import { exampleLines } from '../../src/rules/example.ts';
import type { Rule } from '../../src/rules/rule.ts';
import type { Finding } from '../../src/text/finding.ts';
import { badBytesOf, findIn } from './compile.ts';

const part = (name: string, text: string | undefined): string[] => (text === undefined ? [] : [`- ${name}: ${text}`]);

const said = ({ severity, message, expected, todo, label, also, mend }: Finding): string[] => [
  `- ${severity}: ${message}`,
  ...part('expected', expected),
  ...part('do', todo),
  ...part('label', label),
  ...(also ?? []).map(({ place, says }) => `- also: line ${place.line + 1}, ${says}`),
  ...part('mend', mend?.title),
];

const rendered = (rule: Rule): string =>
  [
    `## ${rule.name}`,
    '',
    '```',
    ...exampleLines(rule.bad),
    '```',
    '',
    ...findIn(badBytesOf(rule)).findings.flatMap(said),
  ].join('\n');

const LIST = 'tests/rules/messages.md';

/** UPDATE=1 (npm run renew) writes what the rules say into the list, for a person to read and judge. */
const UPDATE = process.env.UPDATE === '1';

test('every rule says of its bad example what the list of messages holds', () => {
  const sorted = RULES.toSorted((a, b) => (a.name < b.name ? -1 : 1));
  const page = `# What each rule says of its bad example\n\n${sorted.map(rendered).join('\n\n')}\n`;
  if (UPDATE) writeFileSync(LIST, page);
  expect(page).toBe(readFileSync(LIST, 'utf8'));
});

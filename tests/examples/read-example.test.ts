import { describe, expect, test } from 'vitest';
import { readCases, withBlocks } from './read-example.ts';

const markdown = `# Title

\`\`\`shelf
product clay
\`\`\`

## One

Said.

\`\`\`note
visit 1
\`\`\`

\`\`\`findings
\`\`\`

## Only words

## Two

\`\`\`note
visit 2
\`\`\`

\`\`\`card 2026-09-04
old
\`\`\`
`;

describe('reading examples', () => {
  const cases = readCases(markdown);

  test('a heading with a note is a case, with the shelf above it', () => {
    expect(cases.map(({ title, note, shelf }) => ({ title, note, shelf }))).toEqual([
      { title: 'One', note: 'visit 1\n', shelf: 'product clay\n' },
      { title: 'Two', note: 'visit 2\n', shelf: 'product clay\n' },
    ]);
  });

  test('blocks have their kind, what stands after it and their text', () => {
    expect(cases.flatMap(({ blocks }) => blocks.map(({ kind, info, text }) => [kind, info, text]))).toEqual([
      ['findings', '', ''],
      ['card', '2026-09-04', 'old\n'],
    ]);
  });

  test('the text of blocks is replaced, whatever their length, and all else stays', () => {
    const blocks = cases.flatMap((one) => one.blocks);
    const made = new Map(blocks.map((block) => [block, block.kind === 'card' ? '' : 'a\nb\n']));
    expect(withBlocks(markdown, made)).toBe(
      markdown.replace('```findings\n', '```findings\na\nb\n').replace('old\n', ''),
    );
  });

  test('a block without an end is refused', () => {
    expect(() => readCases('# One\n\n```note\nvisit\n')).toThrow('no end');
  });

  test('a second note in one case is refused', () => {
    expect(() => readCases('# One\n\n```note\n```\n```note\n```\n')).toThrow('one note');
  });
});

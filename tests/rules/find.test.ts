import { expect, test } from 'vitest';
import { type Journal, joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { findInClient } from '../../src/rules/find.ts';
import { subjectsOf } from '../../src/rules/reasons.ts';

test('an entry whose file is not at hand is checked by what was read of it', () => {
  const notes = 'client wren\n  avoid "brass"\n  avoid "brass"\n  avod "gold"\n';
  const journal = joinSources([readSource('a.bowl', Buffer.from(notes))]);
  const rulesWith = (sources: Journal['sources']): string[] =>
    [...journal.clients.values()].flatMap((client) =>
      findInClient({ ...journal, sources }, subjectsOf(journal), client, [], '2026-11-25').map(({ rule }) => rule),
    );
  expect(rulesWith(journal.sources)).toEqual(['unknown-word', 'said-twice']);
  expect(rulesWith(new Map())).toEqual(['unknown-word']);
});

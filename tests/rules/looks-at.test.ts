import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { makeCase } from '../../.scripts/fuzz/cases.ts';
import { readCorpus } from '../../.scripts/fuzz/corpus.ts';
import { findFiles } from '../../src/journal/find.ts';
import { type Journal, joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { RULES } from '../../src/rules/all.ts';
import { EXAMPLE_DAY } from '../../src/rules/example.ts';
import { dispatcher } from '../../src/rules/looks-at.ts';
import type { Rule } from '../../src/rules/rule.ts';
import { badBytesOf, textOf } from './compile.ts';

type VisitRule = Extract<Rule, { over: 'visit' }>;

const LOOKING = RULES.filter((rule): rule is VisitRule => rule.over === 'visit' && rule.looksAt !== undefined);
const askThese = dispatcher(LOOKING);

/** What rules would find in visits of which the engine does not ask them. */
const silenced = (journal: Journal): string[] => {
  const found: string[] = [];
  for (const visits of reckonAll(journal).values())
    for (const [index, visit] of visits.entries()) {
      const asked = new Set<Rule>();
      askThese(visit, (rule) => asked.add(rule));
      const desk = { journal, on: EXAMPLE_DAY, earlier: visits.slice(0, index), visits };
      for (const rule of LOOKING)
        if (!asked.has(rule))
          for (const { message } of rule.check(visit, desk)) found.push(`${rule.name} ${visit.date}: ${message}`);
    }
  return found;
};

const journalOf = (files: readonly Uint8Array[]): Journal =>
  joinSources(files.map((bytes, index) => readSource(`f${index}.bowl`, bytes)));

const CASES = ['given', 'fresh/sound', 'fresh/wrong', 'topics'].flatMap((folder) =>
  readdirSync(join('tests/cases', folder))
    .filter((name) => name.endsWith('.bowl'))
    .map((name) => readFileSync(join('tests/cases', folder, name))),
);

/** Journals made at random from the demo and the conformance examples. */
const MADE = 60;

describe('no rule is silenced by what it says it looks at', () => {
  test('in the examples of all rules', () => {
    const examples = RULES.flatMap((rule) => [badBytesOf(rule), new TextEncoder().encode(textOf(rule.good))]);
    expect(examples.flatMap((bytes) => silenced(journalOf([bytes])))).toEqual([]);
  });

  test('in notes by other hands, and in the demo', () => {
    expect(silenced(journalOf(CASES))).toEqual([]);
    expect(silenced(journalOf(findFiles('journals/harbour-row').map((path) => readFileSync(path))))).toEqual([]);
  });

  test('in journals made at random', () => {
    const corpus = readCorpus();
    for (let index = 0; index < MADE; index++)
      expect(silenced(journalOf(makeCase(20261201, index, corpus, 'journal').files)), `case ${index}`).toEqual([]);
  });
});

test('what a rule looks at is asked of no other visit', () => {
  const rule = { looksAt: { words: ['paid'], kinds: ['lightener'] } } as const;
  const ask = dispatcher([rule]);
  const asked = (notes: string): boolean => {
    const shelf = 'product clay "Peregrine clay" lightener\nproduct mud "Mud" remover\nclient wren\n';
    const [visit] =
      reckonAll(journalOf([new TextEncoder().encode(`${shelf}visit 2026-01-02 wren\n${notes}`)])).get('wren') ?? [];
    let isAsked = false;
    if (visit !== undefined) ask(visit, () => (isAsked = true));
    return isAsked;
  };
  expect(asked('  bowl A 40 clay\n  paid 40\n')).toBe(true);
  expect(asked('  bowl A 40 clay\n  charge cut 40\n')).toBe(false);
  expect(asked('  bowl A 40 mud\n  paid 40\n')).toBe(false);
});

import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { inWords } from '../../src/journal/where.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import type { Found, Rule } from '../../src/rules/rule.ts';
import { FILE, textOf } from './compile.ts';

type FoundInWords = Omit<Found, 'message' | 'expected' | 'todo'> & {
  readonly message: string;
  readonly expected?: string;
  readonly todo?: string;
};

/** What one rule over visits or clients finds in some notes, whatever others would say of them. */
export const foundBy = (rule: Extract<Rule, { over: 'visit' | 'client' }>, notes: string): FoundInWords[] => {
  const journal = joinSources([readSource(FILE, new TextEncoder().encode(textOf(notes)))]);
  const reckoned = reckonAll(journal);
  const all = [...journal.clients.values()].flatMap((client): Found[] => {
    const visits = reckoned.get(client.name) ?? [];
    if (rule.over === 'client') return [...rule.check(client, visits, journal, undefined)];
    return visits.flatMap((visit, index) => [
      ...rule.check(visit, { journal, on: undefined, earlier: visits.slice(0, index), visits }),
    ]);
  });
  return all.map(({ expected, todo, ...found }) => ({
    ...found,
    message: inWords(journal, found.message),
    ...(expected !== undefined && { expected: inWords(journal, expected) }),
    ...(todo !== undefined && { todo: inWords(journal, todo) }),
  }));
};

/** The same as `severity: message`. */
export const saidBy = (rule: Extract<Rule, { over: 'visit' | 'client' }>, notes: string): string[] =>
  foundBy(rule, notes).map(({ severity = rule.severity, message }) => `${severity}: ${message}`);

const SHELF = `
  product dev-6 "Cream developer" developer 6%
  product dev-9 "Cream developer" developer 9%
  product clay "Peregrine clay" lightener
  product bond "Mender" additive
    dose 1-2 per 10
  product unpick "Unpick" remover
    mix none
  product milk "Oat milk" conditioner
  range cream "Larkfield cream" permanent
  range gloss "Tidewater gloss" demi
  range high "Larkfield high" high-lift
  range tint "Quill brow tint" brow
    shades brown
  range neon "Kelp direct" semi
    shades teal, coral`;

/** Notes of one client on a small shelf: lines under the salon, under the client, then the visits, headers included. */
export const notesOf = (client: readonly string[], visits: readonly string[], salon: readonly string[] = []): string =>
  [...salon, textOf(SHELF), 'client wren-abbott "Wren Abbott"', ...client, ...visits, ''].join('\n');

/** One visit of 4 September 2026. */
export const visitOf = (...lines: readonly string[]): string[] => ['visit 2026-09-04 wren-abbott', ...lines];

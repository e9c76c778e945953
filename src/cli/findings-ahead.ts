import type { ClientFile, Journal } from '../journal/journal.ts';
import { joinSources } from '../journal/journal.ts';
import { readSource } from '../journal/source.ts';
import type { PlannedBowl } from '../reckon/ahead/plan.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { RULES } from '../rules/all.ts';
import { asksPlan } from '../rules/asks.ts';
import { judge } from '../rules/judging.ts';
import type { Family } from '../rules/rule.ts';
import { compareFindings, type Finding } from '../text/finding.ts';
import { mixChangeIn } from '../trade/change-words.ts';
import { failAt } from './failed-clients.ts';
import type { LinesOf } from './finding-text.ts';
import { type Stub, stubLines } from './rebook-stub.ts';

/** What the rules would find in a visit that nobody has begun: typed ahead, or proposed and judged as if it were noted. */

const FAMILIES: ReadonlyMap<string, Family> = new Map(RULES.map(({ name, family }) => [name, family]));

/** What a bowl's own mix is judged by: of no use where the notes change that mix in words. */
const OF_THE_MIX: ReadonlySet<Family> = new Set(['mix', 'lift', 'grey', 'tone', 'dose', 'strength']);

const keyOf = ({ rule, place, message }: Finding): string =>
  [rule, place.file, place.line, place.at, message].join('\n');

const changesStrength = ({ words }: PlannedBowl): boolean =>
  words.some(({ text }) => {
    const change = mixChangeIn(text, true);
    return change === undefined || change.strength || change.swap;
  });

/** Whether a finding about a bowl's mix may no longer hold, because words change that mix. */
const isChanged = (finding: Finding, lines: readonly string[], changed: readonly PlannedBowl[]): boolean => {
  const family = FAMILIES.get(finding.rule);
  if (family === undefined || !OF_THE_MIX.has(family)) return false;
  const line = lines[finding.place.line] ?? '';
  return changed.some((planned) => {
    const named = new RegExp(
      `^\\s*(?:again|place)\\s+[^#"]*?(?<![\\p{L}\\p{N}])${planned.bowl.name}(?![\\p{L}\\p{N}])`,
      'iu',
    );
    return named.test(line) && (family !== 'strength' || changesStrength(planned));
  });
};

/** What would be found, graver first as the notes have it, and where its lines stand. */
export type FoundAhead = {
  readonly findings: readonly Finding[];
  /** The name that the visit stands under among files. */
  readonly path: string;
  readonly linesOf: LinesOf;
};

/**
 * What the rules would find in a proposed visit, were it noted: findings that the journal has without it, and those about
 * what only a finished visit can say, are none. A bowl that the notes change in words is judged as it was, but for its mix.
 * `typed`: lines already noted for that day, which count as its own.
 */
export const foundIn = (
  journal: Journal,
  client: ClientFile,
  stub: Stub,
  typed: readonly string[] = [],
): FoundAhead => {
  const lines = [...stubLines({ ...stub, asItWas: true }), ...typed];
  const path = `visit proposed for ${client.name} on ${stub.on}`;
  const proposed = readSource(path, Buffer.from(lines.join('\n')));
  const whole = joinSources([...journal.sources.values(), proposed]);
  const find = (of: Journal): readonly Finding[] => {
    const judged = judge(of, stub.on);
    const found = judged.foundOf(client.name);
    failAt(client.name, judged.faults());
    return found;
  };
  const known = new Set(find(journal).map(keyOf));
  const changed = stub.plan?.bowls.filter(({ by }) => by === 'words') ?? [];
  const findings = find(whole)
    .filter((one) => asksPlan(one.rule) && one.reason === undefined && !known.has(keyOf(one)))
    .filter((one) => one.place.file !== path || !isChanged(one, lines, changed))
    .sort(compareFindings);
  return { findings, path, linesOf: (file) => whole.sources.get(file)?.lines ?? [] };
};

/** Words of lines that are written once the work has begun. */
const BEGUN: ReadonlySet<string> = new Set([
  'on',
  'check',
  'off',
  'rinse',
  'stopped',
  'reaction',
  'result',
  'left',
  'charge',
  'paid',
]);

/** Whether a noted visit has not begun: nothing of it says that anything went on, was seen or was paid. */
export const isUnbegun = ({ visit }: VisitReckoned): boolean => !visit.entry.facts.some(({ word }) => BEGUN.has(word));

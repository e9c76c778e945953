import type { Journal } from '../journal/journal.ts';
import { unfoundText } from '../pages/unfound.ts';
import { judge } from '../rules/judging.ts';
import { counts } from '../rules/reported.ts';
import { RULE_NAMES } from '../rules/rule-names.ts';
import { type Finding, SEVERITIES } from '../text/finding.ts';
import { nearNames } from '../text/near.ts';
import { withoutControls } from '../text/width.ts';
import { paintFor } from './colour.ts';
import { ended } from './failed-clients.ts';
import { findingJson } from './finding-json.ts';
import { cautionsOnce, findingText, linesIn } from './finding-text.ts';
import { openJournal } from './open-journal.ts';
import { deliverJson } from './output.ts';
import { printPainted } from './print.ts';
import { offered, refusal } from './refusal.ts';
import { summaryOf } from './summary.ts';
import { dayOf } from './today.ts';

export type CheckOptions = {
  readonly json?: true;
  readonly reasons?: true;
  readonly all?: true;
  readonly only?: readonly string[];
  readonly on?: string;
};

/** Findings of one rule shown in one file; further ones are counted. */
const CAP = 15;

/** Keeps what `--only` names, all when it names nothing. Throws a refusal for a name that is none. */
const onlyNamed = (only: readonly string[]): ((finding: Finding) => boolean) => {
  const names: readonly string[] = [...SEVERITIES, ...RULE_NAMES];
  for (const name of only) {
    if (names.includes(name)) continue;
    const near = nearNames(name, names);
    throw refusal(
      `\`--only ${name}\` names no rule and no severity.`,
      near.length > 0
        ? `Near names: ${offered(near)}.`
        : 'Severities are `stop`, `fix` and `mind`; `bowlbook why` lists the rules.',
    );
  }
  return ({ rule, severity }) => only.length === 0 || only.includes(rule) || only.includes(severity);
};

/** The findings as text, at most `cap` of one rule in one file, and what the further ones come to. */
const listed = (findings: readonly Finding[], show: (finding: Finding) => string, cap: number): string[] => {
  const counted = new Map<string, number>();
  const keyOf = ({ rule, place }: Finding): string => `${rule}\n${place.file}`;
  for (const finding of findings) counted.set(keyOf(finding), (counted.get(keyOf(finding)) ?? 0) + 1);
  const shown = new Map<string, number>();
  return findings.flatMap((finding) => {
    const key = keyOf(finding);
    const nth = (shown.get(key) ?? 0) + 1;
    shown.set(key, nth);
    if (nth > cap) return [];
    const more = (counted.get(key) ?? 0) - cap;
    return nth === cap && more > 0
      ? [
          show(finding),
          `${withoutControls(finding.place.file)}  ${finding.rule}, and ${more} more like it (--all shows them)`,
        ]
      : [show(finding)];
  });
};

/** Said where no salon or nothing of a shelf was read: tests, products, ratios and times then have nothing to go by. */
const groundless = (journal: Journal): string[] => {
  const text = journal.clients.size === 0 ? undefined : unfoundText(journal);
  return text === undefined
    ? []
    : [`${text} Add the files of salon and shelf to the paths, or put the notes into one folder.`];
};

/**
 * `bowlbook check`: what the rules find in the notes. Exit code 1 when a `stop` or a `fix` is among it, 3 when the program
 * could not work out a client: the others are checked all the same.
 */
export const check = (paths: readonly string[], options: CheckOptions): number => {
  const day = dayOf(options.on);
  const isShown = onlyNamed(options.only ?? []);
  const { journal, unreadable, shown: files } = openJournal(paths);
  const { findings, answered, faults = [] } = judge(journal, day).all();
  const isNamed = (finding: Finding): boolean => isShown(finding) && files.has(finding.place.file);
  const found = findings.filter(isNamed);
  const explained = answered.filter(isNamed);
  const shown = options.reasons ? explained : found;
  if (options.json) deliverJson(shown.map(findingJson));
  else {
    const paint = paintFor('stdout');
    const linesOf = linesIn(journal.sources);
    const once = cautionsOnce();
    const texts = listed(
      shown,
      (one) => findingText(once(one), linesOf, paint),
      options.all ? Number.POSITIVE_INFINITY : CAP,
    );
    printPainted(
      [
        ...texts,
        ...groundless(journal),
        summaryOf(journal, found, explained, files.isAll ? undefined : files.has),
      ].join('\n\n'),
    );
  }
  return ended({ faults, unreadable }, found.some(counts) ? 1 : 0);
};

import type { Stood } from '../journal/source.ts';
import { sumText } from '../pages/prep-sums.ts';
import { isShareAlone } from '../reckon/ahead/asked-words.ts';
import { nextLines } from '../reckon/ahead/due-window.ts';
import type { Plan, PlannedBowl } from '../reckon/ahead/plan.ts';
import { grams } from '../reckon/say.ts';
import { printFact, printHead } from '../records/print-entry.ts';
import type { Visit } from '../records/schema/entry.ts';
import type { Name } from '../records/schema/values.ts';
import type { Next } from '../records/schema/visit.ts';
import { div, type Exact, equal, exact, mul, roundTo, toNumber } from '../text/exact.ts';
import { sliceOf } from '../text/span.ts';

/**
 * What a bowl is made to, as per cent of the one that is made again: the fewest decimals that come to the grams planned.
 * Without a weight to go by it is what `next` asks for.
 */
const shareOf = (planned: PlannedBowl | undefined, scale: Exact): number | undefined => {
  const { bowl, total, asked = 0 } = planned ?? {};
  if (bowl?.total === undefined || total === undefined) return asked === 0 ? undefined : 100 + asked;
  const whole = bowl.total;
  const share = div(mul(total, exact(100)), whole);
  const shares = [0, 1, 2].map((places) => roundTo(share, exact(1, 10 ** places)));
  const found = shares.find((one) => equal(roundTo(div(mul(whole, one), exact(100)), scale), total)) ?? shares.at(-1);
  return found === undefined || equal(found, exact(100)) ? undefined : toNumber(found);
};

/**
 * `again A from 2026-09-04 A 80%` for every bowl of the visit, at the share that comes to the grams planned. One that the
 * notes change in words is a comment: it is typed anew, not made again.
 */
const againLines = ({ made, others, plan, typed, asItWas }: Stub): string[] => {
  const { date } = made.entry;
  const bowls = new Map<string, string>();
  for (const fact of made.entry.facts)
    if ((fact.word === 'bowl' || fact.word === 'again') && !others.has(fact.bowl.name.toUpperCase()))
      if (!bowls.has(fact.bowl.name)) bowls.set(fact.bowl.name, sliceOf(typed(made, fact.line), fact.bowl.at));
  return [...bowls].map(([key, name]) => {
    const planned = plan?.bowls.find((one) => one.bowl.name === key.toUpperCase());
    const inWords = planned?.by === 'words';
    const share = plan === undefined || inWords ? undefined : shareOf(planned, plan.visit.salon.scale);
    const again = printFact({
      word: 'again',
      bowl: { name },
      from: { ...(date && { date }), bowl: { name } },
      ...(share !== undefined && { share: { value: share, unit: '%' } }),
    });
    return `  ${inWords && !asItWas ? '# ' : ''}${again}`;
  });
};

const noteLine = (text: string): string => `  ${printFact({ word: 'note', text })}`;

/** How the grams of each bowl were forecast, as a note to read before mixing; what `next` asks for is noted already. */
const forecastLines = (plan: Plan | undefined, others: ReadonlySet<string>): string[] =>
  (plan?.bowls ?? []).flatMap((planned) => {
    const { bowl, by, total } = planned;
    // The sheet's own words, without its marks.
    return by === 'forecast' && total !== undefined && !others.has(bowl.name)
      ? [noteLine(`bowl ${bowl.name}: ${sumText(planned).replaceAll('**', '')}`)]
      : [];
  });

/** What the notes say in words of each bowl, and what was in it, as a note to read before it is typed anew. */
const wordsLines = (plan: Plan | undefined, others: ReadonlySet<string>): string[] =>
  (plan?.bowls ?? []).flatMap(({ bowl, by, words, portions }) => {
    if (by !== 'words' || others.has(bowl.name)) return [];
    const said = words.map(({ word, date, text }) => `${text} (${word} of ${date})`).join(', ');
    const was = portions.map(({ portion, last }) => `${last === undefined ? '' : `${grams(last)} `}${portion.label}`);
    return [noteLine(`bowl ${bowl.name}: ${said}; it was ${was.join(' + ')}`)];
  });

/** What the `next` lines ask for besides a bowl's share, as a note to read before beginning. */
const plannedLines = (date: string, lines: readonly Next[]): string[] => {
  const said = lines.flatMap(({ changes, says }) => [
    ...changes.filter((one) => one.bowl === undefined || !isShareAlone(one)).map(({ text }) => text),
    ...(says === undefined ? [] : [says.text]),
  ]);
  return said.length === 0 ? [] : [noteLine(`planned on ${date}: ${said.join(', ')}`)];
};

/** Whether a line places bowls, and all of them are of some kind. */
const placesOnly = (fact: Visit['facts'][number], are: (bowl: string) => boolean): boolean =>
  fact.word === 'place' && fact.bowls.length > 0 && fact.bowls.every(({ name }) => are(name.toUpperCase()));

/** The bowls of a visit that a line of their own makes: a further mix, `A2` of `more A`, is none. */
const madeIn = ({ entry }: Stood<Visit>): ReadonlySet<string> =>
  new Set(
    entry.facts.flatMap((fact) =>
      fact.word === 'bowl' || fact.word === 'again' ? [fact.bowl.name.toUpperCase()] : [],
    ),
  );

/** What a new visit is begun from. */
export type Stub = {
  /** Its day. */
  readonly on: string;
  /** The visit whose bowls are made again. */
  readonly made: Stood<Visit>;
  /** Names of its bowls for a service that is not asked for. */
  readonly others: ReadonlySet<string>;
  /** Its bowls made to the need of the day. */
  readonly plan: Plan | undefined;
  /** The visit whose `next` asks for this one; often the same. */
  readonly asks: Stood<Visit>;
  /** The last visit: who did it, and where. */
  readonly last: Stood<Visit>;
  /** Whether bowls that the notes change in words are made again as they were, to be judged, in the very same lines. */
  readonly asItWas?: boolean;
  /** A line of a visit as it is typed; 0 is its header. */
  readonly typed: (visit: Stood<Visit>, line: number) => string;
};

/** The lines of a new visit made from an earlier one and a `next`: bowls made again, aims and places as they were typed. */
export const stubLines = (stub: Stub): string[] => {
  const { on, made, others, plan, asks, last, typed } = stub;
  const dated = nextLines(asks).findLast(({ date }) => date?.date === on);
  // Names stand as they were typed, capitals and all.
  const asTyped = (name: Name): { name: string } => ({ name: sliceOf(typed(last, 0), name.at) });
  const { client, by, salon } = last.entry;
  const header = printHead({
    kind: 'visit',
    date: { date: on },
    ...(dated?.time && { time: dated.time }),
    ...(client && { client: asTyped(client) }),
    ...(by && { by: asTyped(by) }),
    ...(salon && { salon: asTyped(salon) }),
    facts: [],
  });
  const mixed = madeIn(made);
  const kept = (word: string): string[] => {
    const facts = made.entry.facts.filter(
      (fact) => fact.word === word && !placesOnly(fact, (bowl) => others.has(bowl)),
    );
    // Where a further mix went is kept to read: whether one is made again, nobody knows yet.
    const mark = (fact: Visit['facts'][number]): string => (placesOnly(fact, (bowl) => !mixed.has(bowl)) ? '# ' : '');
    return [...new Set(facts.map((fact) => `  ${mark(fact)}${typed(made, fact.line).trim()}`))];
  };
  return [
    header,
    ...plannedLines(asks.entry.date?.date ?? '', nextLines(asks)),
    ...wordsLines(plan, others),
    ...forecastLines(plan, others),
    ...kept('aim'),
    ...againLines(stub),
    ...kept('place'),
    ...kept('leave'),
  ];
};

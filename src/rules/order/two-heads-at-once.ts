import type { HandOn } from '../../reckon/timing/hands.ts';
import { clockText } from '../../text/dates.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** Minutes that two heads may share: one is begun while the last foil of the other is folded. A choice, no source. */
const SHARED = 4;

const sharedBy = (a: HandOn, b: HandOn): number => Math.min(a.to, b.to) - Math.max(a.from, b.from);

const isBoth = (a: HandOn, b: HandOn): boolean => a.by === b.by && a.client !== b.client && sharedBy(a, b) > SHARED;

const spanText = ({ from, to }: HandOn): string => `${clockText(from)}–${clockText(to)}`;

/** Two heads that one hand is on at once; the one that was begun later stands last. */
type Pair = readonly [first: HandOn, later: HandOn];

const pairsIn = (hands: readonly HandOn[]): Pair[] =>
  hands.flatMap((later, index) =>
    hands
      .slice(0, index)
      .filter((first) => isBoth(first, later))
      .map((first): Pair => [first, later]),
  );

/** So many other heads at once are no slip of the clock. */
const MANY = 3;

/** Names that stand for a chair or a team rather than for one pair of hands: they are on many heads at once. */
const teamsIn = (pairs: readonly Pair[]): ReadonlySet<string> => {
  const beside = new Map<string, Set<string>>();
  for (const [a, b] of pairs)
    for (const [own, other] of [
      [a, b],
      [b, a],
    ] as const) {
      const key = `${own.by}\n${own.client}`;
      const others = beside.get(key) ?? new Set<string>();
      beside.set(key, others.add(other.client));
    }
  return new Set([...beside].flatMap(([key, others]) => (others.size < MANY ? [] : key.split('\n').slice(0, 1))));
};

const foundOf = ([first, later]: Pair): Found => ({
  place: later.place,
  message: `\`${later.by}\` puts bowl ${later.bowl} on ${later.client} ${spanText(later)}, and bowl ${first.bowl} on ${first.client} ${spanText(first)}: ${sharedBy(first, later)} min at once.`,
  expected: 'One pair of hands puts colour on one head at a time; what develops by itself is not counted.',
  todo: 'Write the times as they were, or whose hand it was at the end of the `on` line, as in `by nia`.',
  label: 'on two heads',
  also: [{ place: first.place, says: 'on another head' }],
});

export default defineRule({
  name: 'two-heads-at-once',
  family: 'order',
  severity: 'fix',
  bears: 'never',
  over: 'day',
  what: 'One hand puts colour on two heads at once, by the `on` spans of two clients on one day.',
  why: 'One of the times is wrong, or somebody else put it on; the minutes that hair and scalp had hang on it.',
  source: { kind: 'notation' },
  check(hands) {
    const pairs = pairsIn(hands);
    if (pairs.length === 0) return NONE;
    const teams = teamsIn(pairs);
    // A head is one finding, with the one that it shares the most with.
    const most = new Map<string, Pair>();
    for (const pair of pairs) {
      const [first, later] = pair;
      if (teams.has(later.by)) continue;
      const key = `${later.by}\n${later.client}`;
      const known = most.get(key);
      if (known === undefined || sharedBy(first, later) > sharedBy(...known)) most.set(key, pair);
    }
    return [...most.values()].map(foundOf);
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    client beth-tarn "Beth Tarn"
    stylist io "Io"
    visit 2026-09-04 wren-abbott by io
      bowl A 40 clay + 80 dev-6
      on 14:00-14:30 A top
      check 14:40 A gold
      off 14:45 A
    visit 2026-09-04 beth-tarn by io
      bowl A 40 clay + 80 dev-6
      on 14:10-14:40 A top
         ^^^^^^^^^^^
      check 14:45 A gold
      off 14:50 A`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    client beth-tarn "Beth Tarn"
    stylist io "Io"
    stylist nia "Nia"
    visit 2026-09-04 wren-abbott by io
      bowl A 40 clay + 80 dev-6
      on 14:00-14:30 A top
      check 14:40 A gold
      off 14:45 A
    visit 2026-09-04 beth-tarn by io
      bowl A 40 clay + 80 dev-6
      on 14:10-14:40 A top by nia
      check 14:45 A gold
      off 14:50 A`,
});

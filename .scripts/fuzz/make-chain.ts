import { addDays } from '../../src/text/dates.ts';
import type { Chance } from './chance.ts';

const SHELF = `product clay "Grey clay" lightener
  mix 1:1.5-1:2
product dev-6 "Cream developer" developer 6%
`;

const FIRST_DAY = '2024-01-01';
const FIRST = [
  'bowl A0 40 clay + 60 dev-6',
  'bowl A0 40 clay + 20vol 1:2',
  'bowl A0 0.1 clay + 0.3 dev-6',
  'bowl A0',
  'bowl A0 x',
];
const SHARES = ['', '', '', ' 83%', ' 150%', ' 33%', ' 0.1%', ' 1000%', ' 60 g'];

/** Links of a chain, few and many; a visit each costs more to work out than a line. */
const LENGTHS = [1, 20, 300, 3_000];
const MOST_VISITS = 1_000;

/** How the last link of a chain ends: on a bowl that is mixed, on one of the chain itself, on one that is nowhere. */
const endOf = (length: number, from: (nth: number) => string, chance: Chance): string => {
  const kind = chance.below(4);
  if (kind < 2) return chance.pick(FIRST);
  return kind === 2 ? `again A0 from ${from(chance.below(length + 1))}` : 'again A0 from Z9';
};

/** Lines of a visit, each bowl made again from the one before; in the order of mixing, backwards, or any. */
const inOneVisit = (length: number, share: () => string, chance: Chance): string[] => {
  const links = Array.from({ length }, (_, nth) => `again A${nth + 1} from A${nth}${share()}`);
  const lines = [endOf(length, (nth) => `A${nth}`, chance), ...links];
  const order = chance.below(3);
  if (order === 1) lines.reverse();
  if (order === 2) lines.sort(() => chance.below(3) - 1);
  return [`visit ${FIRST_DAY} wren`, ...lines.map((line) => `  ${line}`)];
};

/** A visit a day, whose bowl is made again from the visit before, of the same client or of the one before. */
const acrossVisits = (length: number, clients: number, share: () => string, chance: Chance): string[] => {
  const day = (nth: number): string => addDays(FIRST_DAY, nth);
  const client = (nth: number): string => `wren-${nth % clients}`;
  const from = (nth: number): string => `${clients > 1 ? `${client(nth)} ` : ''}${day(nth)} A0`;
  return Array.from({ length: length + 1 }, (_, nth) => [
    `visit ${day(nth)} ${client(nth)}`,
    `  ${nth === 0 ? endOf(length, from, chance) : `again A0 from ${from(nth - 1)}${share()}`}`,
  ]).flat();
};

/** Notes with a chain of remakes in them, short or long, whole, in a circle or with its end missing. */
export const makeChain = (chance: Chance): Buffer[] => {
  const shares = chance.comes(0.5) ? [chance.pick(SHARES)] : SHARES;
  const share = (): string => chance.pick(shares);
  const length = chance.pick(LENGTHS);
  const kind = chance.below(4);
  const lines =
    kind < 2
      ? inOneVisit(length, share, chance)
      : acrossVisits(Math.min(length, MOST_VISITS), kind === 2 ? 1 : 1 + chance.below(40), share, chance);
  return [Buffer.from(SHELF), Buffer.from(lines.join('\n'))];
};

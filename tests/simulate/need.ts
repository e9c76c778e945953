import { addDays } from '../../src/text/dates.ts';
import { chanceOf } from './chance.ts';

/** Heads whose root bowls need a known weight, and the notes of a colourist who mixes by the last time. */
export type NeedWorld = {
  readonly seed: number;
  readonly heads: number;
  readonly visitsEach: number;
  /** Share of a bowl that grows with the new growth. */
  readonly share: number;
  /** Spread of a need about what the head truly needs, and the share of visits that are odd: half as much again, or half. */
  readonly noise: number;
  readonly odd: number;
  /** Days between visits: from, and how many more at most. */
  readonly gap: readonly [number, number];
  /** How far a head's need walks from visit to visit. */
  readonly walk: number;
};

export type SimulatedNeed = {
  readonly text: string;
  /** Grams truly needed on a day without chance in it, by `client date`. */
  readonly truth: ReadonlyMap<string, number>;
  /** Grams that went on, by `client date`. */
  readonly went: ReadonlyMap<string, number>;
};

const SHELF = `salon quay "Quay"
  growth 0.35 mm/d
range cream "Larkfield cream" permanent
  mix 1:1.5
  uses dev-6
product dev-6 "Cream developer" developer 6%
`;

const RATE = 0.35;

/** A bowl of whole grams of colour, a little over what is asked for. */
const bowlOf = (grams: number): { colour: number; total: number } => {
  const colour = 2 * Math.ceil(grams / 5);
  return { colour, total: colour * 2.5 };
};

/** A salon of heads that have their roots done. The same world gives the same notes. */
export const simulateNeed = (world: NeedWorld): SimulatedNeed => {
  const { seed, heads, visitsEach, share, noise, odd, gap, walk } = world;
  const { even, normal } = chanceOf(seed);
  const notes: string[] = [];
  const truth = new Map<string, number>();
  const went = new Map<string, number>();
  for (let head = 0; head < heads; head += 1) {
    const client = `head-${String(head).padStart(3, '0')}`;
    let own = 70 * Math.exp(0.25 * normal());
    let date = addDays('2024-01-08', Math.floor(even() * 60));
    let last = 1.1 * own;
    for (let visit = 0; visit < visitsEach; visit += 1) {
      const days = gap[0] + Math.floor(even() * gap[1]);
      date = addDays(date, days);
      const growth = Math.round(days * RATE);
      const meant = own * (1 - share + (share * growth) / 20);
      const oddly = even() < odd ? (even() < 0.5 ? 1.5 : 0.5) : 1;
      const needed = Math.max(5, Math.round(meant * oddly * Math.exp(noise * normal())));
      const { colour, total } = bowlOf(1.1 * last);
      const more = Math.max(0, Math.ceil((needed - total) / 10) * 10);
      notes.push(
        [
          `visit ${date} 10:00 ${client}`,
          `  regrowth ${growth} mm`,
          `  bowl A ${colour} cream 7/0 + ${colour * 1.5} dev-6`,
          '  place A roots on-scalp',
          ...(more > 0 ? [`  more A ${more}`] : []),
          `  left A ${total + more - needed} binned`,
        ].join('\n'),
      );
      truth.set(`${client} ${date}`, meant);
      went.set(`${client} ${date}`, needed);
      last = needed;
      own *= Math.exp(walk * normal());
    }
  }
  return { text: `${SHELF}${notes.join('\n')}\n`, truth, went };
};

import { addDays, clockText } from '../../src/text/dates.ts';
import { chanceOf } from './chance.ts';

/** A studio that keeps a true shelf, and the notes that its colourists write of it. Weights are tenths of a gram. */
export type StudioWorld = {
  readonly seed: number;
  readonly days: number;
  /** Tenths of a gram of clay that vanish every day, and nobody notes it. */
  readonly leak: number;
  /** The share of spills that nobody notes. */
  readonly hushed: number;
  /** Whether the counts between the first and the last are now and then wrong. */
  readonly miscounts: boolean;
  /** Days between counts; nought: one count, on the first day. */
  readonly countEvery: number;
};

/** What is true of the shelf and of every bowl. */
export type Studio = {
  readonly text: string;
  /** Grams of each product on the shelf at the end. */
  readonly remains: ReadonlyMap<string, number>;
  /** Grams of each product gone without a note between the first count and the last. */
  readonly vanished: ReadonlyMap<string, number>;
  /** The touches that really happened, as `client date bowl`, by lot. */
  readonly touched: ReadonlyMap<string, ReadonlySet<string>>;
  readonly lastDay: string;
};

type Tub = { readonly lot: string; readonly useBy: string; left: number; open: boolean };

type Ware = { readonly name: string; readonly pack: number; readonly price: string; readonly prefix: string };

const WARES: readonly Ware[] = [
  { name: 'clay', pack: 5000, price: '24.00', prefix: 'K' },
  { name: 'dev-6', pack: 10_000, price: '7.50', prefix: 'D' },
  { name: 'cream 5/0', pack: 600, price: '6.80', prefix: 'C' },
  { name: 'cream 7/43', pack: 600, price: '6.80', prefix: 'F' },
];

const SHELF = `salon quay "Quay"
  money GBP
  scale 1 g
  hours 9:00-19:00
range cream "Larkfield cream" permanent
  mix 1:1.5
  uses dev-6
  tones 0 natural, 3 gold, 4 copper
  pack 60 g 6.80
product clay "Peregrine clay" lightener
  mix 1:2
  uses dev-6
  pack 500 g 24.00
  keeps 12mo
product dev-6 "Cream developer" developer 6%
  pack 1 kg 7.50
`;

const START = '2025-01-06';

/** Lives a studio day by day and writes its notes. The same world gives the same studio. */
export const simulateStudio = ({ seed, days, leak, hushed, miscounts, countEvery }: StudioWorld): Studio => {
  const { even } = chanceOf(seed);
  const whole = (low: number, high: number): number => low + Math.floor(even() * (high - low + 1));
  const notes: string[] = [];
  const shelf = new Map(WARES.map(({ name }) => [name, [] as Tub[]]));
  const touched = new Map<string, Set<string>>();
  const vanished = new Map(WARES.map(({ name }) => [name, 0]));
  const sinceCount = new Map(WARES.map(({ name }) => [name, 0]));
  let lots = 0;

  const tubs = (name: string): Tub[] => shelf.get(name) ?? [];
  const level = (name: string): number => tubs(name).reduce((sum, { left }) => sum + left, 0);
  const lose = (name: string, tenths: number): void => {
    let missing = Math.min(tenths, level(name));
    sinceCount.set(name, (sinceCount.get(name) ?? 0) + missing);
    for (const tub of tubs(name)) {
      const lost = Math.min(tub.left, missing);
      tub.left -= lost;
      missing -= lost;
    }
  };
  const deliver = (ware: Ware, day: string): string => {
    lots += 1;
    const lot = `${ware.prefix}${1000 + lots}`;
    const useBy = addDays(day, whole(300, 900)).slice(0, 7);
    const count = whole(1, 3);
    for (let pack = 0; pack < count; pack++) tubs(ware.name).push({ lot, useBy, left: ware.pack, open: false });
    return `  in ${ware.name} ${count} packs ${ware.price} lot ${lot} use-by ${useBy}`;
  };
  /** The open pack first; else the first to expire, and now and then whichever stands in front. */
  const nextTub = (name: string): Tub | undefined => {
    const full = tubs(name).filter(({ left }) => left > 0);
    const open = full.find((tub) => tub.open);
    if (open !== undefined) return open;
    const byDate = [...full].sort((a, b) => (a.useBy < b.useBy ? -1 : a.useBy > b.useBy ? 1 : 0));
    const tub = even() < 0.2 ? byDate[whole(0, byDate.length - 1)] : byDate[0];
    if (tub !== undefined) tub.open = true;
    return tub;
  };
  const take = (name: string, grams: number, touch: string): { lot: string; grams: number }[] => {
    const parts: { lot: string; grams: number }[] = [];
    let missing = grams * 10;
    while (missing > 0) {
      const tub = nextTub(name);
      if (tub === undefined) throw new Error(`the simulated shelf ran out of ${name}`);
      // The scales show whole grams; what is less than that stays in the tub for good.
      const usable = Math.floor(tub.left / 10) * 10;
      const taken = Math.min(usable, missing);
      tub.left -= taken;
      missing -= taken;
      if (taken > 0) {
        parts.push({ lot: tub.lot, grams: taken / 10 });
        touched.set(tub.lot, (touched.get(tub.lot) ?? new Set()).add(touch));
      }
      if (missing > 0) {
        sinceCount.set(name, (sinceCount.get(name) ?? 0) + tub.left);
        tub.left = 0;
      }
    }
    return parts;
  };
  const component = (name: string, grams: number, touch: string): string => {
    const parts = take(name, grams, touch);
    if (even() < 0.3) return parts.map((part) => `${part.grams} ${name} lot ${part.lot}`).join(' + ');
    return `${grams} ${name}`;
  };
  const counts = (wrong: boolean): string[] =>
    WARES.map(({ name }) => {
      vanished.set(name, (vanished.get(name) ?? 0) + (sinceCount.get(name) ?? 0));
      sinceCount.set(name, 0);
      const slip = wrong && even() < 0.4 ? whole(-30, 60) : 0;
      return `  count ${name} ${Math.max(0, Math.round(level(name) / 10) + slip)} g`;
    });

  notes.push(`stock ${START} 08:30 at quay`, ...WARES.map((ware) => deliver(ware, START)));
  notes.push(...counts(false));
  let day = START;
  for (let number = 0; number < days; number++) {
    day = addDays(START, number);
    const arrived = WARES.filter(({ name, pack }) => level(name) < 0.8 * pack || level(name) < 3000).map((ware) => [
      deliver(ware, day),
      ...(level(ware.name) < 4000 ? [deliver(ware, day), deliver(ware, day)] : []),
    ]);
    if (number > 0 && arrived.length > 0) notes.push(`stock ${day} at quay`, ...arrived.flat());
    if (number === 0 && arrived.length > 0) notes.push(`stock ${day} 08:45 at quay`, ...arrived.flat());
    for (let visit = 0; visit < 2; visit++) {
      const client = `head-${String(whole(0, 25)).padStart(2, '0')}`;
      const base = ['clay', 'cream 5/0', 'cream 7/43'][whole(0, 2)] ?? 'clay';
      const grams = whole(4, 12) * 5;
      const touch = `${client} ${day} ${'AB'[visit]}`;
      notes.push(
        `visit ${day} ${clockText(600 + visit * 180)} ${client} at quay`,
        `  bowl ${'AB'[visit]} ${component(base, grams, touch)} + ${component('dev-6', grams * 2, touch)}`,
        `  left ${'AB'[visit]} ${whole(0, 8)} binned`,
      );
    }
    if (even() < 0.08) {
      const name = WARES[whole(0, 3)]?.name ?? 'clay';
      const spilt = Math.min(whole(5, 40) * 10, Math.floor(level(name) / 10) * 10);
      if (even() < hushed) lose(name, spilt);
      else {
        lose(name, spilt);
        sinceCount.set(name, (sinceCount.get(name) ?? 0) - spilt);
        notes.push(`stock ${day} at quay`, `  out ${name} ${spilt / 10} g "spilt"`);
      }
    }
    lose('clay', leak);
    const isLast = number === days - 1;
    if (countEvery > 0 && number > 0 && (number % countEvery === 0 || isLast))
      notes.push(`stock ${day} at quay`, ...counts(miscounts && !isLast));
  }
  const inGrams = (map: ReadonlyMap<string, number>): Map<string, number> =>
    new Map([...map].map(([name, tenths]) => [name, tenths / 10]));
  return {
    text: `${SHELF}${notes.join('\n')}\n`,
    remains: new Map(WARES.map(({ name }) => [name, level(name) / 10])),
    vanished: inGrams(vanished),
    touched,
    lastDay: day,
  };
};

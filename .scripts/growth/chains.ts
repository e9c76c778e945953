import { addDays } from '../../src/text/dates.ts';

/** Files of notes, by path. */
export type Files = Readonly<Record<string, string>>;

/** Notes whose bowls hang on each other, `n` links of them. */
export type Shape = (n: number) => Files;

const SALON = `salon quay "Quay"
  money GBP
  scale 1 g
product clay "Peregrine clay" lightener
  mix 1:1.5-1:2
  pack 500 g 24.00
product dev-6 "Cream developer 6" developer 6%
  pack 1 kg 7.50
product bond "Mender" additive
  pack 250 g 32.00
product mask "Balm" conditioner
  mix none
  pack 1 kg 11.00
`;

const MIX = '40 clay + 60 dev-6';

/** What may go on any day, so that only the chain is looked at and not what two lightenings in a row are. */
const CALM = '40 mask + 4 bond';

/** Digits alone tell the bowls apart, so a name stands on each side of every size. */
const bowl = (index: number): string => `A${index + 1}`;

const client = (index: number): string => `client-${index + 1}`;

const FIRST_DAY = '1990-01-01';

/** Ten visits a day: a hundred thousand of them in 28 years. */
const dayOf = (index: number): string => addDays(FIRST_DAY, Math.floor(index / 10));

const minuteOf = (index: number): string => `${9 + (index % 10)}:00`;

const upTo = (n: number, line: (index: number) => string): string => {
  const lines: string[] = [];
  for (let index = 0; index < n; index++) lines.push(line(index));
  return lines.join('\n');
};

const ofClients = (n: number, text: (index: number) => string): Files => {
  const files: Record<string, string> = { 'salon.bowl': SALON };
  for (let index = 0; index < n; index++) files[`clients/${client(index)}.bowl`] = text(index);
  return files;
};

const inOne = (text: string): Files => ({ 'salon.bowl': SALON, 'wren-abbott.bowl': `${text}\n` });

const inVisit = (lines: string): Files => inOne(`visit 2026-01-05 wren-abbott\n${lines}`);

const visitHead = (index: number): string => `visit ${dayOf(index)} ${minuteOf(index)} wren-abbott`;

/** A later day on which the last bowl of the first visit is mixed again. */
const repeatedLater = (n: number, lines: string): Files =>
  inOne(`visit 2026-01-05 wren-abbott\n${lines}\nvisit 2026-02-05 wren-abbott\n  again ${bowl(n - 1)} from 2026-01-05`);

const poured = (index: number): string =>
  index === 0 ? `  bowl ${bowl(0)} ${MIX}` : `  bowl ${bowl(index)} 50 from ${bowl(index - 1)} + 10 clay`;

/**
 * Chains of remakes, by name: in one visit, across a client's visits, across clients; circles of them; bowls poured into
 * each other, and those made again on another day; and long visits beside them. Everything grows with `n` alone.
 */
export const CHAINS: Readonly<Record<string, Shape>> = {
  'again in one visit, first to last': (n) =>
    inVisit(upTo(n, (i) => (i === 0 ? `  bowl ${bowl(0)} ${MIX}` : `  again ${bowl(i)} from ${bowl(i - 1)}`))),
  'again in one visit, last to first': (n) =>
    inVisit(upTo(n, (i) => (i === n - 1 ? `  bowl ${bowl(i)} ${MIX}` : `  again ${bowl(i)} from ${bowl(i + 1)}`))),
  'again at 83 % in one visit': (n) =>
    inVisit(upTo(n, (i) => (i === 0 ? `  bowl ${bowl(0)} ${MIX}` : `  again ${bowl(i)} from ${bowl(i - 1)} 83%`))),
  'again and plus in one visit': (n) =>
    inVisit(
      upTo(n / 2, (i) =>
        i === 0 ? `  bowl ${bowl(0)} ${MIX}` : `  again ${bowl(i)} from ${bowl(i - 1)}\n  plus ${bowl(i)} 5 clay`,
      ),
    ),
  'circle in one visit': (n) => inVisit(upTo(n, (i) => `  again ${bowl(i)} from ${bowl((i + 1) % n)}`)),
  'more in one visit': (n) => inVisit(`  bowl A ${MIX}\n${upTo(n - 1, () => '  more A')}`),
  'more of more in one visit': (n) =>
    inVisit(`  bowl A ${MIX}\n${upTo(n - 1, (i) => `  more A${i === 0 ? '' : i + 1}`)}`),

  'again across visits': (n) =>
    inOne(
      upTo(
        n,
        (i) =>
          `${visitHead(i)}\n${i === 0 ? `  bowl ${bowl(0)} ${CALM}` : `  again ${bowl(i)} from ${dayOf(i - 1)} ${bowl(i - 1)}`}`,
      ),
    ),
  'again across visits, of the day before': (n) =>
    inOne(
      upTo(
        n / 10,
        (i) =>
          `visit ${addDays(FIRST_DAY, i)} wren-abbott\n${
            i === 0 ? `  bowl A ${CALM}` : `  again A from ${addDays(FIRST_DAY, i - 1)}`
          }\n${upTo(8, () => '  note nothing else was done')}`,
      ),
    ),
  'again across visits, all of one': (n) =>
    inOne(upTo(n, (i) => `${visitHead(i)}\n${i === 0 ? `  bowl A ${CALM}` : `  again B${i} from ${FIRST_DAY} A`}`)),
  'circle across visits': (n) =>
    inOne(
      upTo(n, (i) => {
        const source = (i + 1) % n;
        return `${visitHead(i)}\n  again ${bowl(i)} from ${dayOf(source)} ${bowl(source)}`;
      }),
    ),
  'again across visits of one day': (n) =>
    inOne(
      upTo(
        n,
        (i) =>
          `visit 2026-01-05 wren-abbott\n${i === 0 ? `  bowl ${bowl(0)} ${CALM}` : `  again ${bowl(i)} from 2026-01-05 ${bowl(i - 1)}`}`,
      ),
    ),

  'again across clients, first to last': (n) =>
    ofClients(
      n,
      (i) =>
        `visit 2026-01-05 ${client(i)}\n  ${i === 0 ? `bowl A ${MIX}` : `again A from ${client(i - 1)} 2026-01-05`}\n`,
    ),
  'again across clients, last to first': (n) =>
    ofClients(
      n,
      (i) =>
        `visit 2026-01-05 ${client(i)}\n  ${i === n - 1 ? `bowl A ${MIX}` : `again A from ${client(i + 1)} 2026-01-05`}\n`,
    ),
  'circle across clients': (n) =>
    ofClients(n, (i) => `visit 2026-01-05 ${client(i)}\n  again A from ${client((i + 1) % n)} 2026-01-05\n`),
  'again across clients, all of one': (n) =>
    ofClients(
      n,
      (i) => `visit 2026-01-05 ${client(i)}\n  ${i === 0 ? `bowl A ${MIX}` : `again A from ${client(0)} 2026-01-05`}\n`,
    ),

  'poured into each other': (n) => inVisit(upTo(n, poured)),
  'poured into each other, last first': (n) => inVisit(upTo(n, (i) => poured(n - 1 - i))),
  'poured twice into each other': (n) =>
    inVisit(
      upTo(n, (i) =>
        i === 0 ? `  bowl ${bowl(0)} ${MIX}` : `  bowl ${bowl(i)} 20 from ${bowl(i - 1)} + 20 from ${bowl(i - 1)}`,
      ),
    ),
  'poured into each other in a circle': (n) =>
    inVisit(upTo(n, (i) => `  bowl ${bowl(i)} 50 from ${bowl((i + 1) % n)} + 10 clay`)),
  'poured, the last repeated later': (n) => repeatedLater(n, upTo(n, poured)),
  'poured twice, the last repeated later': (n) =>
    repeatedLater(
      n,
      upTo(n, (i) =>
        i === 0 ? `  bowl ${bowl(0)} ${MIX}` : `  bowl ${bowl(i)} 20 from ${bowl(i - 1)} + 20 from ${bowl(i - 1)}`,
      ),
    ),
  'poured, all repeated later, last first': (n) =>
    inOne(
      `visit 2026-01-05 wren-abbott\n${upTo(n / 2, poured)}\nvisit 2026-02-05 wren-abbott\n${upTo(
        n / 2,
        (i) => `  again ${bowl(n / 2 - 1 - i)} from 2026-01-05`,
      )}`,
    ),
  'poured, repeated on many days': (n) =>
    inOne(
      `visit 1980-01-05 wren-abbott\n${upTo(n / 4, (i) => poured(i).replace(MIX, CALM).replace('clay', 'mask'))}\n${upTo(
        n / 4,
        (i) =>
          `visit ${addDays(FIRST_DAY, i)} wren-abbott\n  again B from 1980-01-05 ${bowl(n / 4 - 1)}\n  note as then`,
      )}`,
    ),

  'bowls of one visit': (n) => inVisit(upTo(n, (i) => `  bowl ${bowl(i)} ${MIX}`)),
  'plus to one bowl': (n) => inVisit(`  bowl A ${MIX}\n${upTo(n, () => '  plus A 5 clay')}`),
  'plus to one bowl that is open': (n) => inVisit(`  bowl A 40 clay + dev-6\n${upTo(n, () => '  plus A 5 bond')}`),
  'weighed of one bowl': (n) => inVisit(`  bowl A ${MIX}\n${upTo(n, () => '  weighed A 40 clay')}`),
  'left of one bowl': (n) => inVisit(`  bowl A ${MIX}\n${upTo(n, () => '  left A 5 binned')}`),
  'lines of bowls that are not mixed': (n) =>
    inVisit(`${upTo(n / 2, (i) => `  bowl ${bowl(i)} ${MIX}`)}\n${upTo(n / 2, (i) => `  plus Z${i} 5 clay`)}`),
  'again of bowls that were not mixed': (n) =>
    inOne(
      `visit 2026-01-05 wren-abbott\n${upTo(n / 2, (i) => `  bowl ${bowl(i)} ${MIX}`)}\nvisit 2026-02-05 wren-abbott\n${upTo(
        n / 2,
        (i) => `  again B${i} from 2026-01-05 Z${i}`,
      )}`,
    ),
  'lines that are not read': (n) => inVisit(upTo(n, (i) => `  zxq ${i} of nothing`)),
};

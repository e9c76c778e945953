import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { addDays } from '../../src/text/dates.ts';
import { randomFrom } from './random.ts';

/**
 * A made-up journal of any size, for measuring: one file a client, about eleven visits a client and thirteen lines a
 * visit, with the share of repeated lines and of free text that hand-typed notes have. The same seed gives the same
 * bytes.
 */
export type MadeJournal = {
  readonly files: number;
  readonly visits: number;
  readonly lines: number;
  readonly bytes: number;
};

/** A salon, three stylists and a small shelf. */
export const SHELF = `salon quay "Quay"
  money GBP
  scale 1 g
  hours 9:00-19:00
  policy law eu
  policy skin-test 48h every 26w
  policy ml as g

stylist io "Io" at quay
stylist nia "Nia" at quay
stylist bo "Bo" at quay

range cream "Larkfield cream" permanent
  mix 1:1.5
  uses dev-3 dev-6 dev-9
  strength 3% 6% 9%
  time 30-45 min from all-on
  tones 0 natural, 1 ash, 2 violet, 3 gold, 4 copper, 5 mahogany, 6 red, 7 matt
  pack 60 g 6.80
range gloss "Tidewater gloss" demi
  mix 1:2
  uses gloss-act
  strength 1.9%
  time 5-20 min from all-on
  tones 0 natural, 1 ash, 2 violet, 3 gold
  pack 60 g 5.90
product clay "Peregrine clay" lightener
  mix 1:1.5-1:2
  uses dev-3 dev-6 dev-9
  strength to 9%
  time 20-50 min from first-on, check every 10 min
  scalp to 6%
  pack 500 g 24.00
product dev-3 "Cream developer 3" developer 3%
  pack 1 l 7.50
  density 1.01
product dev-6 "Cream developer 6" developer 6%
  pack 1 l 7.50
  density 1.01
product dev-9 "Cream developer 9" developer 9%
  pack 1 l 7.50
  density 1.01
product gloss-act "Tidewater activator" developer 1.9%
  pack 1 l 8.20
  density 1.01
product bond "Mender" additive
  dose 1-2 per 10
  pack 250 ml 32.00
`;

const SYLLABLES = [
  'ta',
  'mi',
  'ro',
  'le',
  'na',
  'wen',
  'dor',
  'fa',
  'lis',
  'per',
  'sol',
  'an',
  'kei',
  'ru',
  'bri',
  'os',
  'han',
  'vel',
];
const WORDS =
  'brighter front softer nape likes warm cool less brass more depth fringe trimmed hold still grown out holiday sun sea pool swims often happy asked shorter longer next time shine gloss faded ends dry better than last wants photo kept busy child school wedding in june try lower heat at home washed twice weekly calm scalp fine today'.split(
    ' ',
  );

type Random = () => number;
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
const whole = (random: Random, low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
const sentence = (random: Random, words: number): string =>
  Array.from({ length: words }, () => pick(random, WORDS)).join(' ');

const remark = (random: Random): string => (random() < 0.6 ? ` "${sentence(random, whole(random, 2, 5))}"` : '');

const rootsVisit = (random: Random, start: number): string[] => {
  const grams = whole(random, 6, 12) * 5;
  const depth = whole(random, 4, 8);
  const on = start + whole(random, 20, 35);
  const spread = whole(random, 10, 25);
  const off = on + spread + whole(random, 31, 44);
  return [
    `  start roots ${depth}, lengths ${depth} warm`,
    `  bowl A ${grams} cream ${depth}/${pick(random, ['0', '1', '3', '43'])} + 6% 1:1.5`,
    `  place A roots apply`,
    `  on ${clock(on)}-${clock(on + spread)} A roots`,
    `  check ${clock(off - 6)} A roots "taking"`,
    `  off ${clock(off)} A roots`,
    `  left A ${whole(random, 1, 12)} binned`,
    `  result roots ${depth} even${remark(random)}`,
    `  charge roots ${whole(random, 48, 62)}.00`,
    `  next ${whole(random, 5, 8)}w roots`,
  ];
};

const foilsVisit = (random: Random, start: number): string[] => {
  const grams = whole(random, 4, 10) * 5;
  const on = start + whole(random, 25, 40);
  const stages = ['orange', 'gold', 'yellow'];
  const lines = [
    `  start roots ${whole(random, 5, 7)}, lengths 8 warm`,
    `  want lengths 9 violet`,
    `  bowl A ${grams} clay + 20vol 1:2`,
    `  place A hairline slice x${whole(random, 2, 4)} gap 0 mirror off-scalp 1cm foil`,
    `  place A top weave x${whole(random, 6, 14)} gap 10mm off-scalp 1cm foil`,
    `  on ${clock(on)}-${clock(on + 15)} A hairline, top`,
  ];
  for (const [index, stage] of stages.entries())
    lines.push(`  check ${clock(on + 9 * (index + 1))} A hairline, top ${stage}`);
  return [
    ...lines,
    `  off ${clock(on + whole(random, 31, 36))} A`,
    `  left A ${whole(random, 2, 14)} binned`,
    `  bowl T 20 gloss 10/1 + 10 gloss 10/2 + 1.9% 1:2`,
    `  on ${clock(on + 45)} T lengths`,
    `  off ${clock(on + 55)} T`,
    `  result lengths 9 violet, roots 6${remark(random)}`,
    `  charge foils ${whole(random, 80, 110)}.00`,
    `  next ${whole(random, 7, 10)}w foils`,
  ];
};

const clientName = (random: Random, number: number): string => {
  const part = (): string => pick(random, SYLLABLES) + pick(random, SYLLABLES);
  return `${part()}-${part()}${number.toString(36).replace(/\d/g, (digit) => 'ghjkmpqrst'[Number(digit)] ?? 'g')}`;
};

/** The lines of one client's file. The number makes her name her own. */
export const clientFile = (random: Random, number: number, visits: number): string[] => {
  const name = clientName(random, number);
  const lines = [
    `client ${name} "${name.replace('-', ' ')}"`,
    `  natural ${whole(random, 4, 8)}`,
    `  grey ${whole(random, 0, 6) * 10}% temples`,
    `  hair ${pick(random, ['fine', 'medium', 'coarse'])}, density ${pick(random, ['low', 'medium', 'high'])}`,
  ];
  const body: string[] = [];
  let date = addDays('2019-01-08', whole(random, 0, 900));
  let tested = '';
  for (let index = 0; index < visits; index++) {
    if (tested === '' || date > addDays(tested, 170)) {
      tested = addDays(date, -4);
      lines.push(
        `  test skin ${tested} 10:00 cream, gloss read ${addDays(tested, 2)} 10:${whole(random, 10, 59)} clear`,
      );
    }
    const start = whole(random, 9 * 60, 15 * 60);
    body.push('', `visit ${date} ${clock(start)} ${name} by ${pick(random, ['io', 'nia', 'bo'])} at quay`);
    if (random() < 0.6) body.push(`  aim ${sentence(random, whole(random, 3, 7))}`);
    body.push(...(random() < 0.55 ? rootsVisit(random, start) : foilsVisit(random, start)));
    if (random() < 0.6) body.push(`  note ${sentence(random, whole(random, 4, 12))}`);
    date = addDays(date, whole(random, 35, 75));
  }
  return [...lines, ...body];
};

/** Writes a journal of about `visits` visits below `folder`; gives what it came to. */
export const makeJournal = (folder: string, visits: number, seed = 1): MadeJournal => {
  const random = randomFrom(seed);
  mkdirSync(join(folder, 'clients'), { recursive: true });
  writeFileSync(join(folder, 'shelf.bowl'), SHELF);
  let made = 0;
  let lines = SHELF.split('\n').length - 1;
  let bytes = SHELF.length;
  let files = 1;
  while (made < visits) {
    const own = Math.min(visits - made, whole(random, 4, 18));
    const text = `${clientFile(random, files, own).join('\n')}\n`;
    writeFileSync(join(folder, 'clients', `${String(files).padStart(6, '0')}.bowl`), text);
    lines += text.split('\n').length - 1;
    bytes += text.length;
    made += own;
    files++;
  }
  return { files, visits: made, lines, bytes };
};

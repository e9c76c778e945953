import type { BodyWord } from '../../src/notation/words.ts';

/**
 * A small journal a word, with the line in question marked by `>`. The word table compiles it with and without that
 * line: what then differs is what the word does. The client is `ada-quill`.
 */

const SHELF = `
salon harbour "Harbour Row"
  money GBP
  hours 9:00-19:00
stylist io "Io" at harbour
stylist nia "Nia" at harbour
range gloss "Tidewater gloss" demi
  mix 1:2
  uses gloss-act
  tones 1 ash, 2 violet
  pack 60 g 5.90
product gloss-act "Tidewater activator" developer 1.9%
  pack 1 kg 6.20
product clay "Peregrine clay" lightener
  mix 1:2
  uses dev-6
  time 20-50 min from first-on, check every 10 min
  pack 500 g 24.00
product dev-6 "Cream developer" developer 6%
  pack 1 kg 7.50
product dev-9 "Cream developer, strong" developer 9%
product bond "Keelson bond" additive
  pack 100 g 30.00
product mask "Samphire mask" conditioner
  pack 200 g 4.00
product withybed "Withybed wefts" goods
  pack 1 each 31.00
`;
const CLIENT = `
client ada-quill "Ada Quill"
`;
const VISIT = `
visit 2026-09-04 14:00 ada-quill by io
`;
const BOWL = `
  bowl A 30 clay + 6% 1:2
`;
const WORN = `${BOWL}
  place A top weave x6 off-scalp 1cm foil
  on 14:20-14:30 A top
  check 14:40 top gold
  off 14:50 A top
`;

/** Lines of the salon, with a bowl mixed there. */
const salon = (lines: string, visit = WORN): string =>
  `${SHELF.replace('  hours 9:00-19:00\n', `  hours 9:00-19:00\n${lines}\n`)}${CLIENT}${VISIT}${visit}`;

/** Lines of a range of the shelf, with a bowl of it. */
const range = (lines: string, mix = '30 cream 7/1 + 6%', rest = ''): string => `${SHELF}
range cream "Larkfield cream" permanent
${lines}
${CLIENT}${VISIT}
  bowl A ${mix}
  on 14:20-14:30 A roots
  off 15:10 A
${rest}`;

const client = (lines: string, visit = WORN): string => `${SHELF}${CLIENT}${lines}\n${VISIT}${visit}`;
/** A time line that goes by the share of grey, which a line of the client or of the visit says. */
const greying = (lines: string, rest: string): string =>
  range('  mix 1:1.5\n  time 30-50 min\n  time 20-30 min if grey 50%', '30 cream 7/1 + 6%', rest).replace(
    CLIENT,
    `${CLIENT}${lines}\n`,
  );

const visit = (lines: string, before = ''): string => `${SHELF}${CLIENT}${before}${VISIT}${lines}`;
const stock = (lines: string): string => `${SHELF}\nstock 2026-08-01 at harbour\n${lines}\n${CLIENT}${VISIT}${BOWL}`;

export const WORD_EXAMPLES: Readonly<Record<BodyWord, string>> = {
  money: SHELF.replace('  money GBP', '> money GBP') + CLIENT + VISIT + BOWL,
  scale: salon('> scale 5 g', '  bowl A 32 clay + 6% 1:2'),
  hours: `${SHELF.replace('  hours', '> hours')}${CLIENT}${VISIT}${BOWL}  on 2.20 A top\n  off 2.50 A\n`,
  growth: salon('> growth 0.5 mm/d', WORN.replaceAll('top', 'full-head')),
  policy: salon('> policy skin-test 48h every 26w', `${WORN}  note no test\n`).replace(
    CLIENT,
    `${CLIENT}  test skin 2026-01-05 clay read 2026-01-07 clear\n`,
  ),
  zone: visit(`> zone band "left, 8 cm down"\n${BOWL}  place A band slice x2\n`),

  mix: range('> mix 1:1.5'),
  uses: range('  mix 1:1.5\n> uses dev-6').replace('developer 9%', 'developer 6%'),
  strength: range('  mix 1:1.5\n> strength 3%'),
  time: range('  mix 1:1.5\n> time 30-35 min'),
  lift: range('  mix 1:1.5\n> lift 6% 1-2'),
  tones: range('  mix 1:1.5\n> tones 0 natural'),
  shades: range('  mix 1:1.5\n  tones 1 ash\n> shades clear', '30 cream clear + 6%'),
  pack: range('  mix 1:1.5\n> pack 60 g 6.80'),
  reorder: `${range('  mix 1:1.5\n  pack 60 g 7.00\n> reorder at 3 packs')}stock 2026-09-20\n  count cream 7/1 2 packs\n`,
  density: range('  mix 1:1.5\n> density 1.1', '30 ml cream 7/1 + 6%'),
  keeps: range('  mix 1:1.5\n> keeps 6mo'),
  measure: range('  mix 1:1.5\n> measure scoop 10 g', '2 scoop cream 7/1 + 6%'),
  scalp: range('  mix 1:1.5\n> scalp to 3%', '30 cream 7/1 + 6%', '  place A roots apply on-scalp\n'),
  dose: range('  mix 1:1.5\n> dose 1-2 per 10'),
  over: range('  mix 1:1.5\n  tones 1 ash\n> over 8', '30 cream 9/1 + 6%')
    .replace(' permanent', ' toner')
    .replace('  on 14:20-14:30 A roots', '  start roots 7\n  on 14:20-14:30 A roots'),

  in: stock('> in caly 2 packs 24.00 lot K2231 use-by 2028-01'),
  count: stock('> count dev-5 640 g'),
  out: stock('> out dev-8 200 g "past its date"'),

  born: client('> born 1988-04-02'),
  natural: client('> natural 6'),
  grey: greying('> grey 60% temples', ''),
  hair: client('> hair medium, density high'),
  pattern: client('> pattern crown "double whorl"'),
  history: client('> history 2024-05 metallic lengths'),
  allergy: client('> allergy "nickel"'),
  caution: client('> caution pregnant until 2027-01'),
  avoid: client('> avoid "brassiness"'),
  consent: client('> consent photos'),
  letter: client('> letter 2026-05-02 "Dr N: may have hair colour"'),

  test: client('> test skin 2026-09-01 11:00 gloss read 2026-09-03 11:30 clear'),
  hold: client('> hold lightener to 2027-01 "ends gummy"'),
  because: visit(`${WORN}> because no-check "by the window, every five minutes"\n`),

  asked: visit('> asked asthma "wheezes in spring"\n'),
  aim: visit('> aim brighter at the front\n'),
  want: visit('> want lengths 9 violet\n'),
  start: greying('', '> start roots 6, grey 60%\n'),
  regrowth: visit(
    '> regrowth 2cm\n',
    'visit 2026-07-10 ada-quill\n  bowl A 30 clay + 6% 1:2\n  on 14:20-14:30 A roots\n  off 14:50 A\n',
  ),
  bowl: visit('> bowl A 30 clay + 6% 1:2\n'),
  plus: visit(`${BOWL}> plus A 3 bond\n`),
  weighed: visit(`${BOWL}> weighed A 33 clay, 66 dev-6\n`),
  again: visit('> again A from 2026-07-10 A 80%\n', 'visit 2026-07-10 ada-quill\n  bowl A 30 clay + 6% 1:2\n'),
  more: visit(`${BOWL}> more A 60 at 14:55\n`),
  place: visit(`${BOWL}> place A top weave x6 off-scalp 1cm foil\n`),
  leave: visit('> leave crown "stands up"\n'),
  on: visit(`${BOWL}> on 14:20-14:30 A top\n  off 14:50 A\n`),
  zero: visit(`${BOWL}> zero 14:20\n  on 0+0 A top\n  off 0+30 A\n`),
  check: visit(`${BOWL}  on 14:20-14:30 A top\n> check 14:30 top gold\n  off 14:40 A\n`),
  off: visit(`${BOWL}  on 14:20-14:30 A top\n> off 14:50 A\n`),
  heat: visit(`${BOWL}  on 14:20-14:30 A top\n> heat 14:30-14:40 A\n  off 14:50 A\n`),
  wash: visit('> wash 15 mask\n'),
  rinse: visit('> rinse 15:20-15:24\n'),
  dry: visit('> dry 15:40\n'),
  cut: visit('> cut 15:45 "3 cm off"\n'),
  left: visit(`${BOWL}> left A 14 binned\n`),
  home: visit(`${BOWL}> home A 12 + 60 mask\n`),
  reaction: visit(`${WORN}> reaction +18 A temples burning\n`),
  stopped: visit(`${BOWL}  on 14:20-14:30 A top\n> stopped 14:44 A "rinsed at once"\n`),
  declined: visit('> declined lightener "not today"\n'),
  result: visit('> result lengths 9 violet\n'),
  photo: visit('> photo after.jpg\n'),
  care: visit('> care mask weekly\n'),
  note: visit('> note takes her coffee black\n'),
  charge: visit('> charge foils 95.00\n'),
  deposit: visit('  charge foils 95.00\n> deposit used 50\n'),
  paid: visit('  charge foils 95.00\n> paid 95 card\n'),
  split: visit('  charge foils 95.00\n> split io 50%, nia 50%\n'),
  fit: visit('> fit 2 packs withybd "8 honey"\n'),
  redo: visit('> redo 2026-08-30\n', 'visit 2026-08-30 ada-quill\n  aim shine\n'),
  about: visit('> about 2026-08-30 ends "went mauve"\n', 'visit 2026-08-30 ada-quill\n  aim shine\n'),
  call: visit('> call 2026-09-06 10:00 "redness gone"\n'),
  next: visit(`${WORN}> next 8w roots, A -20%\n`),
};

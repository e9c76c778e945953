import type { Notes } from './demo.ts';

/** Small notes that between them hold every first word, and the hands that notes are typed in. */
export const examples: readonly Notes[] = [
  {
    name: 'shelf',
    text: `salon harbour "Harbour Row"
  money GBP
  scale 1 g                        # what the scales can show
  hours 9:00-19:00
  growth 0.35 mm/d                 # until a client's own rate is measured
  policy law eu                    # whose limits the rules quote
  policy skin-test 48h every 26w   # the salon's own; insurer and makers' leaflets come first
  policy skin-test void after reaction
  policy under 16 temporary only
  zone half-head top, crown, sides # published sources disagree, so the salon says

stylist io "Io" at harbour

range cream "Larkfield cream" permanent
  mix 1:1.5
  uses cream-dev                   # its own developer or activator
  strength 3% 6% 9% 12%
  time 30-45 min from all-on
  time 35-45 min if grey 50%
  lift 3% 0-1, 6% 1-2, 9% 2-3      # the maker's claim, never ours
  tones 0 natural, 1 ash, 2 violet, 3 gold, 4 copper, 5 mahogany, 6 red, 7 matt
  shades clear, pastel
  pack 60 g 6.80
  pack 60 g 7.10 from 2027-01-01   # prices by date
  reorder at 3 packs

product clay "Peregrine clay" lightener
  mix 1:1.5-1:2
  strength to 9%
  time 20-50 min from first-on, check every 10 min
  time 20-35 min if on-scalp
  scalp to 6%                      # or: scalp never
  pack 500 g 24.00
  measure scoop 10 g

product bond "Bond" additive in ratio
  dose 1-2 per 10
  mix none

product dev-6 "Cream developer" developer 6%
  pack 1 l 7.50
  density 1.01
  keeps 12mo

stock 2026-08-01 at harbour
  in clay 2 packs 24.00 lot K2231 use-by 2028-01
  in cream 7/43 4 packs
  count dev-6 640 g
  out dev-9 200 g "past its date"
`,
  },
  {
    name: 'client',
    text: `client wren-abbott "Wren Abbott"
  born 1988-04-02
  natural 6
  grey 30% temples, 10% rest
  hair medium, density high, length shoulder, form wavy, porosity high ends
  pattern crown "double whorl"
  history 2024-05 box-colour lengths
  allergy "nickel"
  caution pregnant until 2027-01
  test skin 2026-09-01 11:00 cream, gloss read 2026-09-03 11:30 clear
  avoid "brassiness"
  consent photos
  consent form 2026-09-01 "her mother"
  letter 2026-05-02 "Dr N: may have hair colour"
  hold lightener to 2027-01 "ends gummy"
`,
  },
  {
    name: 'visit',
    text: `visit 2026-09-04 14:00 wren-abbott by io at harbour
  asked asthma no
  aim brighter at the front, soft through the nape
  start roots 6, lengths 8 warm, grey 30% temples
  want lengths 9 violet
  regrowth 2cm
  zone band "left, 8 cm down"
  test strand clay 20min yellow
  test metal 11:05 40 dev-6 + 2 ammonia
  bowl A 40 clay + 20vol 1:2
  plus A 3 bond
  weighed A 41 clay, 82 dev-6
  bowl B 90 g of 2p cream 7/0 + 1p cream 7.43 + 6% = 90
  again C from 2026-07-10 A 80%
  more A 60 at 10:55
  zero 9:40
  place A hairline slice x2 gap 0 mirror off-scalp 1cm foil
  place A top weave x6 gap 10mm off-scalp 1cm foil
  place A+B back weave x28 turn A B A
  leave crown "stands up"
  on 14:35-14:55 A hairline, top
  check +10 A hairline orange
  check 14:55 hairline gold, top orange
  heat 15:00-15:10 A
  check 15:05 hairline yellow, top gold
  off 15:15 A hairline
  check 15:15 top yellow
  off 15:20 A top
  wash 15 clarify
  rinse 15:25
  dry
  cut 15:40
  left A 14 binned
  home M 12 + 180 conditioner
  reaction +18 A temple burning
  stopped 13:24 A "rinsed at once"
  declined lightener "under 16"
  result lengths 9 violet, roots 6
  photo after.jpg
  care no wash for two days
  note foils #3 to #7
  charge foils 95.00
  charge discount 20%
  deposit 100 for 2026-12-12
  paid 210 card
  split jo 50%, nia 50%
  fit 2 packs withybed "8 honey"
  redo 2026-08-30
  about 2026-05-02 ends "went mauve after two washes"
  call 2026-11-05 10:00 "redness gone"
  hold oxidative 4w
  because ratio-off-mix "runny on purpose"
  next 6-8w roots, A -20%
`,
  },
  {
    name: 'hands',
    text: `Visit 2026-09-04  14.00 wren-abbott   by io
 Bowl A  40 clay+20vol 1:2 ,3 bond     # a hurry
\tbowl B 7/0 30 cream + 6% 30
   # what stood on the trolley
bowl C 20vol 80 + 40 clay lot K22/31-A


  ON 14:35 - 14:55 A roots ,top
  check 15:05 – roots “pale  yellow?”
  note   two  spaces   kept
  aim:  “softer  ”   by nia
  next  8w -20% , A  -20%
  care no   heat
  bowel A  40 clay
  mix 1:2
  place A top x 6   weave
  caution not  here
`,
  },
  {
    name: 'damaged',
    text: `  bowl A 40 clay
  note before any  header

clinet wren-abbott "Wren Abbott"
  allergy  "nickel"
client wren-abbott "Wren
<<<<<<< salon
  allergy "nickel"
=======
  allergy   "ppd"


>>>>>>> phone
  note   after
product build-up at nape
  note 1\u0000 2  3
visit 2026-02-30 wren-abbott
  bowl A 1.000 clay + "open  to the end
visit 2026-09-04 wren-abbott
<<<<<<< salon
visit 2026-09-05 wren-abbott
>>>>>>> phone
  paid  20
`,
  },
  {
    name: 'other scripts',
    text: `client зоя "Зоя"
  allergy "парафенилендиамин"
client ζωή
  natural 6½
visit 2026-09-04 зоя
  aim тепло и мягко 🙂
  bowl A 40,5 глина + 20vol 1 : 1,5
  note «оставить»   # 染まりにくい
  start roots ６, lengths 8
`,
  },
];

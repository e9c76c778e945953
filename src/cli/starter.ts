import { addDays } from '../text/dates.ts';

/** A file of a new journal: its path inside the folder, and its text. */
export type StarterFile = { readonly path: string; readonly text: string };

const SALON = `# The salon and who works in it. Change the names; \`bowlbook check\` says where a name no longer fits.

salon studio "My studio"
  money GBP  # the ISO 4217 code of your currency
  scale 1 g  # what your scales can show
  hours 9:00-18:00  # a bare 2.38 is read by these
  growth 0.35 mm/d  # until a client's own is measured
  policy skin-test 48h every 26w  # your insurer's and the makers' leaflets come first

stylist ash "Ash" at studio
`;

const SHELF = `# What stands on the shelf. Copy every figure from the maker's leaflet: none is built in, and these lines are invented.

range cream "Example cream" permanent
  mix 1:1.5
  uses dev-3 dev-6 dev-9
  strength 3% 6% 9%
  time 30-40 min from all-on
  tones 0 natural, 1 ash, 3 gold, 4 copper
  pack 60 g 7.00

product clay "Peregrine clay" lightener
  mix 1:1.5-1:2
  strength to 9%
  time 20-50 min from first-on, check every 10 min
  scalp to 6%
  pack 500 g 24.00

product dev-3 "Cream developer" developer 3%
  pack 1 l 7.50
  density 1.01
product dev-6 "Cream developer" developer 6%
  pack 1 l 7.50
  density 1.01
product dev-9 "Cream developer" developer 9%
  pack 1 l 7.50
  density 1.01
`;

const clientFile = (
  on: string,
): string => `# An invented client. One file a client is one way; one file a day, or all in one file, read just the same.

client juno-example "Juno Example"
  born 1990-05-12
  natural 6
  hair medium, density medium, length shoulder, form straight
  consent photos
  test skin ${addDays(on, -3)} 11:00 cream, clay read ${addDays(on, -1)} 11:30 clear

visit ${on} 10:00 juno-example by ash at studio
  aim roots back to natural, no warmth
  start roots 6, lengths 6
  regrowth 15mm
  bowl A 40 cream 6/1 + 6%
  place A roots apply
  on 10:20-10:35 A roots
  off 11:10 A
  left A 8 binned
  result roots 6 ash
  charge roots 48
  paid 48 card
  next 6w
`;

/** The files of a new journal, with an example visit on the day `on`. */
export const starterFiles = (on: string): readonly StarterFile[] => [
  { path: 'salon.bowl', text: SALON },
  { path: 'shelf.bowl', text: SHELF },
  { path: 'clients/juno-example.bowl', text: clientFile(on) },
];

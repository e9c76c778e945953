/** What the help says of a command besides its options: its purpose, examples to copy, what its exit codes mean. */
export type Lesson = {
  readonly says: string;
  /** What comes after the command's name. */
  readonly takes: string;
  readonly more: readonly string[];
  /** Words after `bowlbook`, and what they do. */
  readonly examples: readonly (readonly [string, string])[];
  readonly exits: readonly (readonly [number, string])[];
};

const PATHS = 'PATH is a file of notes (.bowl) or a folder of them; without one it is the current folder.';
const FIGURES =
  'In --json exact numbers stand as { "value": 26.667, "exact": "80/3" }: rounded to three decimals, and as they are. Weights are grams, money the currency’s smallest unit.';
const REFUSED = [2, 'the command line is wrong, or a path cannot be read or written'] as const;
const DONE = [0, 'done'] as const;

/** The commands in the order the help lists them, by group. */
export const LESSONS = {
  now: {
    says: 'Stamp the time on a line and add it to the visit that is open today.',
    takes: '"LINE" [PATH…]',
    more: [
      'The time goes after the first word of on, check, off, heat, wash, rinse, dry, cut, reaction and stopped; any other line is added as it is.',
      'The visit is today’s only one with something still on, else the only one that has begun. Once all is off it takes only what comes after the colour (rinse, left, result …), and a finished one, with a result or paid, only with --client. Where several can be meant nothing is guessed: say whose it is.',
      'The line is written when it reads; what the rules say of it is shown beside it.',
      PATHS,
    ],
    examples: [
      ['now "check A hairline gold"', 'adds `check 14:55 A hairline gold`'],
      ['now "off A" --at 15:20', 'a time a little back'],
      ['now "on T lengths" --client wren-abbott journals/salon', 'two clients in the chairs'],
    ],
    exits: [DONE, [1, 'the line does not read cleanly; nothing is written'], REFUSED],
  },
  mix: {
    says: 'Work out one bowl: grams, total, ratio, peroxide ready for use.',
    takes: '"BOWL"',
    more: [
      'In a folder with notes it goes by their shelf: your own ratios, strengths and prices. It needs no notes, though: then 20vol or 6% is a developer of that strength, dev-6 too, any other name is a product, and what is typed after the developer and its ratio stands outside the ratio.',
    ],
    examples: [
      ['mix "40 clay + 20vol 1:2"', '40 g and 80 g, 4.0 % ready for use'],
      ['mix "90 g of 2p cream 7/0 + 1p cream 7/43 + 6% 1:1"', 'parts and a total'],
      ['mix "30 clay + 7.5% from dev-6 dev-9 1:2"', 'two strengths made into one'],
      ['mix "40 cream 6/1 + 20vol" --shelf journals/salon', 'at the shelf’s own ratio'],
      ['mix "10.5 cream 6/1 + 6% 1:1.5" --no-shelf --scale 0.1', 'on finer scales'],
    ],
    exits: [[0, 'worked out'], [1, 'it does not work out, or a rule objects'], REFUSED],
  },
  card: {
    says: 'Show one client’s card: what to know first, the last formula, every visit.',
    takes: 'CLIENT [PATH…]',
    more: ['CLIENT is the name in the notes, the full name, or a part that only one client has.', PATHS, FIGURES],
    examples: [
      ['card wren-abbott', 'Markdown, to read or to pipe'],
      ['card "Wren Abbott" journals/salon -o wren.html', 'a page to print or open'],
      ['card wren --summary', 'the first page alone; --last 3 adds three visits'],
      ['card wren --on 2026-12-01', 'as it will stand on that day'],
    ],
    exits: [DONE, REFUSED],
  },
  clients: {
    says: 'List the clients: last visit, when the next is due, how many alerts.',
    takes: '[PATH…]',
    more: ['Alerts are counted as they stand at the head of each card.', PATHS],
    examples: [
      ['clients', 'the current folder, today'],
      ['clients journals/salon -o clients.html', 'a page to print'],
      ['clients --json', 'for a program'],
    ],
    exits: [DONE, REFUSED],
  },
  prep: {
    says: 'Make the sheet beside the trolley: alerts, tests, bowls for the day, places, looks.',
    takes: 'DATE|CLIENT [PATH…]',
    more: [
      'DATE gives a sheet for every client with a visit noted that day, or whose last `next` falls on it; CLIENT gives hers.',
      'Where `next` asks for a service (`8w foils`), the bowls are those of the last visit that did it; else of the last colour. A day with bowls of its own, or with an aim or a hold that rules the last ones out (`aim no lightener`), has those to compare and none to mix.',
      'A bowl is what bowls like it needed: mixed, less left over, scaled to the new growth. Where `next` asks for a share of it (`A -20%`), it is that share of the whole bowl, as `rebook` writes it. The sum stands beside each, all of it at the end.',
      'In print each client begins a sheet of A4 and mostly fills one; a day with many bowls runs to a second. The whole sums are left out.',
      PATHS,
    ],
    examples: [
      ['prep 2026-10-30', 'a sheet a client, for the whole day'],
      ['prep wren-abbott --on 2026-10-30', 'one sheet'],
      ['prep 2026-10-30 journals/salon -o day.html', 'to print'],
    ],
    exits: [DONE, REFUSED],
  },
  rebook: {
    says: 'Write the next visit’s first lines: its bowls, aims and places, from an earlier visit.',
    takes: 'CLIENT [PATH…]',
    more: [
      'Where `next` names a service she has had, as in `next 8w foils`, the visit to go by is the last with it, as for `prep`; else it is the last with colour. Bowls are made `again` at the share that `next` asks for, or that the forecast comes to; aims and places stand as they were typed.',
      PATHS,
    ],
    examples: [
      ['rebook wren-abbott', 'prints the lines'],
      ['rebook wren-abbott --append auto', 'adds them to the file of the last visit'],
      ['rebook wren-abbott --on 2026-10-30 --append days/2026-10-30.bowl', 'another day, another file'],
    ],
    exits: [DONE, REFUSED],
  },
  check: {
    says: 'Read all notes and say what does not hold together.',
    takes: '[PATH…]',
    more: [
      PATHS,
      'A finding begins path:line:column, counted from 1 as editors count characters (UTF-16 units), then stop, fix or mind, and the name of the rule. `stop`: someone could be hurt, or a number is impossible. `fix`: the note contradicts itself or lacks what it needs. `mind`: worth a thought.',
      'With --only the exit code goes by what is named.',
    ],
    examples: [
      ['check', 'the current folder'],
      ['check journals/salon --only stop', 'the grave ones alone'],
      ['check clients/wren-abbott.bowl shelf salon.bowl', 'one client, with what the notes lean on'],
      ['check --json > findings.json', 'for a program'],
    ],
    exits: [[0, 'nothing above `mind`'], [1, 'a `stop` or a `fix` that no `because` line explains'], REFUSED],
  },
  watch: {
    says: 'Keep a page for every client, and the findings, current while the notes are typed.',
    takes: '[FOLDER]',
    more: [
      'FOLDER holds the notes; without one it is the current folder. Only what a change touches is worked out again, and only pages whose content changed are written, each at once: a reader finds the old page or the new.',
      'Every change is a line: the files, the pages written, how long it took, the findings gained and lost. A file that is away for less than a second, or cannot be read, keeps its place.',
      'With --open there is a live page too, at an address of this machine that is printed: today’s visits, how long each bowl has been on, when the next look is due, what is past its time. It takes in every change by itself. The pages in the folder hold no script.',
      'With --share a phone or tablet at the chair gets the live page too, over the network, with large buttons that note `on`, `check` and `off` with the time in the visit’s file; nothing else can be written there. The address that is printed holds a code; the first browser that opens it is let in until the watching ends, and a new code is printed for the next. Anyone on that network with a code sees clients’ notes, and nothing is encrypted on its way: choose a network that guests are not on.',
      'Without --share the notes themselves are never written to. A folder for pages that holds notes, or other files, is refused.',
    ],
    examples: [
      ['watch', 'the current folder; open pages/index.html'],
      ['watch journals/salon --open', 'with a live page of the day'],
      ['watch journals/salon --share', 'with the live page on a phone at the chair'],
      ['watch journals/salon --out ~/pages', 'pages in another folder'],
      ['watch journals/salon --no-events', 'on a drive from which no changes are told'],
    ],
    exits: [[0, 'ended with Ctrl-C'], REFUSED],
  },
  usage: {
    says: 'Report the products of a period: mixed, used, left, what they cost, what was put right.',
    takes: '[PATH…]',
    more: [
      PATHS,
      'DATE is a day, a month (2026-09) or a year (2026). Without dates it is the year of today.',
      'A correction is a visit whose aim or charge speaks of one; a redo has a `redo` line. In --csv a record is a product and shade, unless --by says otherwise.',
      FIGURES,
    ],
    examples: [
      ['usage --from 2026-01 --to 2026-06', 'half a year'],
      ['usage --by stylist --from 2026-05 --to 2026-05', 'who mixed how much, and binned how much, in a month'],
      ['usage journals/salon --from 2026 --html -o products.html', 'a page to print, with the months as bars'],
      ['usage --by month --csv -o months.csv', 'for a spreadsheet'],
    ],
    exits: [DONE, REFUSED],
  },
  money: {
    says: 'Say what a period charged, what its products cost, and what that leaves.',
    takes: '[PATH…]',
    more: [
      PATHS,
      'DATE is a day, a month (2026-09) or a year (2026). Without dates it is the year of today.',
      'A service is an item charged for; a visit’s products are shared over its items by price. A `split` line shares a visit between stylists. Deposits held are those neither used nor returned by the last day. In --csv a record is a visit, unless --by says otherwise.',
      'Tax is not worked out, and none of this is tax advice.',
      FIGURES,
    ],
    examples: [
      ['money --from 2026-05 --to 2026-05', 'a month: by service, stylist and client'],
      ['money --by service', 'what each service leaves'],
      ['money journals/salon --from 2026 --html -o money.html', 'a page to print, with the months as bars'],
      ['money --by visit --csv -o visits.csv', 'for a spreadsheet'],
    ],
    exits: [DONE, REFUSED],
  },
  hindsight: {
    says: 'Say how far out the estimates of lift or of grams to mix are, beside naive guesses.',
    takes: 'lift|mix [PATH…]',
    more: [
      'lift: every visit is left out in turn and its minutes to a stage are estimated from the visits before it, as in daily use; then set beside the same as last time and the middle of the product’s time line. The stage is as far as a quarter of the visits before came; a head taken off before it counts as longer than its last look.',
      'mix: every bowl is left out in turn and its grams are forecast from what her like bowls before it really needed; then the grams wasted, what they cost and the bowls that ran short are set beside mixing the same as last time.',
      PATHS,
    ],
    examples: [
      ['hindsight lift', 'the current folder'],
      ['hindsight mix journals/salon', 'grams wasted, bowls that ran short'],
      ['hindsight lift journals/salon --others', 'from all other visits, later ones too'],
      ['hindsight mix --json', 'every bowl, for a program'],
    ],
    exits: [DONE, REFUSED],
  },
  due: {
    says: 'Say who is due or overdue, and whose skin test will not hold by then.',
    takes: '[PATH…]',
    more: [
      'A visit noted ahead comes first, then the last visit’s `next` (6-8w, from DATE, DATE), then the client’s own rhythm: the median of the days between her last root services, else between her colours.',
      'A skin test is looked up for the products of her last colour, on the day she is awaited. The notes may be incomplete: the makers’ instructions come first.',
      PATHS,
    ],
    examples: [
      ['due --weeks 6', 'from today'],
      ['due journals/salon --on 2026-11-25 --html -o due.html', 'as of a day, a page to print'],
      ['due --ics -o due.ics', 'for a calendar'],
    ],
    exits: [DONE, REFUSED],
  },
  shelf: {
    says: 'Show what is on the shelf: how long it lasts, what to reorder, what no note explains.',
    takes: '[PATH…]',
    more: [
      PATHS,
      'Deliveries (`in`), counts and what went `out` stand in stock entries; bowls take what was mixed. A count closes its day unless its header has a time; what it does not agree with is shown as unexplained.',
      'Days of cover are by the pace of the last eight weeks.',
      FIGURES,
    ],
    examples: [
      ['shelf', 'the current folder, today'],
      ['shelf journals/salon --on 2026-11-25 --html -o shelf.html', 'as of a day, a page to print'],
      ['shelf --csv -o shelf.csv', 'for a spreadsheet'],
    ],
    exits: [DONE, REFUSED],
  },
  order: {
    says: 'Say what to buy, in whole packs, for the weeks ahead.',
    takes: '[PATH…]',
    more: [
      PATHS,
      'The need is the larger of two: the pace of the last eight weeks, once the notes cover four, and what the clients awaited by their `next` lines took the last time. The reorder level is kept back, and what is past its date is not counted on.',
      FIGURES,
    ],
    examples: [
      ['order --weeks 6', 'for six weeks from today'],
      ['order journals/salon --weeks 4 --on 2026-11-25 --csv', 'for a spreadsheet'],
    ],
    exits: [DONE, REFUSED],
  },
  trace: {
    says: 'Say whom a lot touched, or which lots touched a client.',
    takes: 'LOT [PATH…]',
    more: [
      PATHS,
      'Recorded: the note names the lot. Possible: the note names none, and the lot had come in by that day and was not yet counted as gone.',
    ],
    examples: [
      ['trace K2231', 'every client and date, for a recall'],
      ['trace --client wren-abbott journals/salon', 'the other way round'],
      ['trace K2231 journals/salon --csv -o recall.csv', 'for a spreadsheet'],
    ],
    exits: [DONE, [1, 'nothing in the notes names the lot'], REFUSED],
  },
  neaten: {
    says: 'Put the white space of the notes in order, and change nothing else.',
    takes: '[PATH…]',
    more: [
      PATHS,
      'Prints the files it changes. A file whose text would change, or that is kept from writing, is left as it is and named.',
    ],
    examples: [
      ['neaten', 'the current folder'],
      ['neaten --check journals/salon', 'names the files, writes none'],
    ],
    exits: [DONE, [1, 'with --check: something would change'], REFUSED],
  },
  new: {
    says: 'Begin a journal: a salon, a shelf and an invented client to write over.',
    takes: 'FOLDER',
    more: ['FOLDER is new or empty; nothing is ever overwritten.'],
    examples: [
      ['new journal', 'then: bowlbook check journal'],
      ['new ~/notes/salon', 'anywhere you like'],
    ],
    exits: [DONE, REFUSED],
  },
  why: {
    says: 'Say what a rule finds, why, from what source, and how it is put right.',
    takes: '[RULE]',
    more: ['Without a name it lists every rule by family.'],
    examples: [
      ['why', 'every rule'],
      ['why past-time', 'one rule, with an example of each kind'],
    ],
    exits: [DONE, REFUSED],
  },
} as const satisfies Readonly<Record<string, Lesson>>;

export type CommandName = keyof typeof LESSONS;

/** The commands as the help groups them. */
export const GROUPS: readonly (readonly [string, readonly CommandName[]])[] = [
  ['At the chair', ['now', 'mix', 'card', 'clients', 'prep', 'rebook']],
  ['The notes as a whole', ['check', 'watch', 'due', 'usage', 'money', 'hindsight', 'neaten']],
  ['The shelf', ['shelf', 'order', 'trace']],
  ['To begin and to learn', ['new', 'why']],
];

/** The lesson of a command; undefined for a name that is none. */
export const lessonOf = (name: string): Lesson | undefined =>
  Object.hasOwn(LESSONS, name) ? LESSONS[name as CommandName] : undefined;

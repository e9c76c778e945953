import type { BowlReckoned, VisitReckoned } from '../../src/reckon/model.ts';
import { toNumber } from '../../src/text/exact.ts';
import { changedFirst, changedLast, isLineOf, type Lines, put, timeAfter, without, wordOf } from './lines.ts';
import type { SeededNote } from './seeded-notes.ts';

/** What a planted mistake makes of a note; a part that is not named stays as it is. */
export type Planted = { readonly before?: Lines; readonly visit?: Lines };

/** One kind of mistake that a hand makes at the chair or at the end of the day, and how it is planted in a sound note. */
export type Mistake = {
  readonly name: string;
  readonly says: string;
  /** The note with the mistake; undefined where the note has nothing to make it with. */
  readonly plant: (note: SeededNote) => Planted | undefined;
};

const inVisit =
  (change: (visit: Lines, note: SeededNote) => Lines | undefined) =>
  (note: SeededNote): Planted | undefined => {
    const visit = change(note.visit, note);
    return visit === undefined ? undefined : { visit };
  };

const kindsIn = ({ portions }: BowlReckoned): string[] => portions.flatMap(({ item }) => item?.kind ?? []);
const holds =
  (...kinds: readonly string[]) =>
  (bowl: BowlReckoned): boolean =>
    kindsIn(bowl).some((kind) => kinds.includes(kind));

/** Kinds with oxidative dye, for which every salon of the notes asks for a skin test. */
const DYES = ['permanent', 'demi', 'toner', 'high-lift'] as const;
const isDye = holds(...DYES);
const isLightener = holds('lightener');

/** Bowls that the clock has on and off. */
const worn = ({ bowls, clock }: VisitReckoned, is: (bowl: BowlReckoned) => boolean): BowlReckoned[] =>
  bowls.filter((bowl) => is(bowl) && clock.runs.some((run) => run.bowl === bowl.name && run.off !== undefined));

const TIME = /(\d{1,2})[:.](\d{2})(?!\d)/;
const SPAN = /\d{1,2}[:.]\d{2}-(\d{1,2})[:.](\d{2})(?!\d)/;

const later = (line: string, by: number): string =>
  put(line, TIME, (all = '', hour = '', minute = '') => timeAfter(Number(hour), Number(minute), by) ?? all);

/** The weights of a bowl the other way round, as the scales are said to have shown them. */
const swapped = (_visit: Lines, { visit, reckoned }: SeededNote): Lines | undefined => {
  if (visit.some(isLineOf('weighed'))) return undefined;
  for (const bowl of reckoned.bowls) {
    const [base, developer, ...more] = bowl.portions;
    if (more.length > 0 || base?.role !== 'base' || developer?.role !== 'developer') continue;
    if (base.shown === undefined || developer.shown === undefined || developer.item === undefined) continue;
    const [first, second] = [toNumber(base.shown), toNumber(developer.shown)];
    if (second < 1.4 * first || first < 10) continue;
    const line = visit.findIndex((one) => wordOf(one) === 'bowl' && new RegExp(`\\b${bowl.name}\\b`, 'i').test(one));
    if (line < 0) continue;
    const weighed = `  weighed ${bowl.name} ${second} ${base.label}, ${first} ${developer.item.name}`;
    return [...visit.slice(0, line + 1), weighed, ...visit.slice(line + 1)];
  }
  return undefined;
};

const ofBowl = ({ name }: BowlReckoned): RegExp => new RegExp(`(?<![\\p{L}\\d])${name}(?![\\p{L}\\d])`, 'iu');

/** The lines without the looks at the first lightener that was on for half an hour. */
const unlooked = (visit: Lines, { reckoned }: SeededNote): Lines | undefined => {
  const long = reckoned.clock.runs.some(
    ({ bowl, fromFirst = 0 }) => fromFirst >= 30 && reckoned.bowls.some((one) => one.name === bowl && isLightener(one)),
  );
  return long ? without(visit, isLineOf('check')) : undefined;
};

/** The last look before a toner put back to what no toner covers. */
const stillDark = (visit: Lines, { reckoned }: SeededNote): Lines | undefined => {
  if (worn(reckoned, isLightener).length === 0 || worn(reckoned, holds('toner')).length === 0) return undefined;
  const looks = visit.map((line) =>
    wordOf(line) === 'check' ? put(line, /\b(?:pale-yellow|yellow|gold-yellow|gold)\b/g, 'red-orange') : line,
  );
  const changed = looks.some((line, index) => line !== visit[index]);
  return changed ? (without(looks, isLineOf('result')) ?? looks) : undefined;
};

const dayAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T12:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);

const isSkinTest = (line: string): boolean => /^\s*test\s+skin\b/i.test(line);
const dropped = (lines: Lines): Lines => lines.filter((line) => !isSkinTest(line));

/** Every kind that is planted, in the order of the report. */
export const MISTAKES: readonly Mistake[] = [
  {
    name: 'weights swapped',
    says: 'the scales are said to have shown colour and developer the other way round',
    plant: inVisit(swapped),
  },
  {
    name: 'ratio slipped',
    says: 'twice the developer that the bowl was meant to have',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) =>
        wordOf(line) === 'bowl' ? put(line, /\b1:(1\.5|1|2)\b/, (_, ratio = '') => `1:${2.5 * Number(ratio)}`) : line,
      ),
    ),
  },
  {
    name: 'other developer',
    says: 'four times the strength',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) =>
        wordOf(line) === 'bowl'
          ? put(line, /\b(?:3%|10vol|dev-3|1\.9%|gloss-act)(?![\w-])/, (typed = '') =>
              typed.startsWith('dev') || typed.startsWith('gloss') ? 'dev-12' : '12%',
            )
          : line,
      ),
    ),
  },
  {
    name: 'dropped test',
    says: 'no skin test stands in front of a dye',
    plant: ({ before, visit, reckoned }) =>
      worn(reckoned, isDye).length > 0 && [...before, ...visit].some(isSkinTest)
        ? { before: dropped(before), visit: dropped(visit) }
        : undefined,
  },
  {
    name: 'test not read',
    says: 'the skin tests were made and nobody read them',
    plant: ({ before, visit, reckoned }) => {
      if (worn(reckoned, isDye).length === 0 || ![...before, ...visit].some(isSkinTest)) return undefined;
      const unread = (lines: Lines): Lines =>
        lines
          .filter((line) => !/^\s*test\s+skin\s+read\b/i.test(line))
          .map((line) => (isSkinTest(line) ? line.replace(/\s+read\s.*$/i, '') : line));
      return { before: unread(before), visit: unread(visit) };
    },
  },
  {
    name: 'harm told by telephone',
    says: 'a call tells of swollen lids the next day',
    plant: inVisit((visit, { reckoned }) =>
      worn(reckoned, isDye).length === 0
        ? undefined
        : [...visit, `  call ${dayAfter(reckoned.date, 1)} "rang: eyelids swollen and her scalp weeping"`],
    ),
  },
  {
    name: 'hold overlooked',
    says: 'lightener was to be left off this hair for half a year',
    plant: ({ before, reckoned }) => {
      const header = before.findIndex(isLineOf('client'));
      if (header < 0 || worn(reckoned, isLightener).length === 0) return undefined;
      const hold = `  hold lightener from ${dayAfter(reckoned.date, -60)} to ${dayAfter(reckoned.date, 120)} "stretched"`;
      return { before: [...before.slice(0, header + 1), hold, ...before.slice(header + 1)] };
    },
  },
  {
    name: 'shifted hour',
    says: 'the last time off is an hour late',
    plant: inVisit((visit) => changedLast(visit, (line) => (wordOf(line) === 'off' ? later(line, 60) : line))),
  },
  {
    name: 'taken off before it was on',
    says: 'the last time off is two hours early',
    plant: inVisit((visit) => changedLast(visit, (line) => (wordOf(line) === 'off' ? later(line, -120) : line))),
  },
  {
    name: 'end before beginning',
    says: 'the second time of a span lies before its first',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) =>
        wordOf(line) === 'on'
          ? put(line, SPAN, (all = '') => {
              const [first = '', second = ''] = all.split('-');
              return `${second}-${first}`;
            })
          : line,
      ),
    ),
  },
  {
    name: 'lost off',
    says: 'nobody wrote when it came off',
    plant: inVisit((visit) => without(visit, isLineOf('off'))),
  },
  {
    name: 'lost on',
    says: 'nobody wrote when it went on',
    plant: inVisit((visit) => (visit.some(isLineOf('off')) ? without(visit, isLineOf('on')) : undefined)),
  },
  {
    name: 'lost looks',
    says: 'lightener was on for half an hour and nobody looked',
    plant: inVisit(unlooked),
  },
  {
    name: 'wrong zone',
    says: 'it was put on where the bowl was not placed',
    plant: inVisit((visit, { reckoned }) => {
      const placed = reckoned.bowls.find(
        (bowl) =>
          visit.some((line) => wordOf(line) === 'place' && ofBowl(bowl).test(line)) &&
          worn(reckoned, (one) => one === bowl).length > 0,
      );
      if (placed === undefined || visit.join(' ').includes('beard')) return undefined;
      return changedFirst(visit, (line) => {
        const end = line.search(/["“]| # /);
        const said = end < 0 ? line : line.slice(0, end);
        if (wordOf(line) !== 'on' || !ofBowl(placed).test(said)) return line;
        const from = said.search(ofBowl(placed)) + placed.name.length;
        return `${said.slice(0, from)} beard`;
      });
    }),
  },
  {
    name: 'other bowl',
    says: 'the letter of a bowl that is not mixed',
    plant: inVisit((visit, { reckoned }) => {
      const [bowl] = worn(reckoned, () => true);
      if (bowl === undefined) return undefined;
      return changedFirst(visit, (line) => (wordOf(line) === 'on' ? put(line, ofBowl(bowl), 'Q') : line));
    }),
  },
  {
    name: 'toner too early',
    says: 'the hair under a toner was last seen red-orange',
    plant: inVisit(stillDark),
  },
  {
    name: 'look that goes back',
    says: 'a later look is darker than an earlier one',
    plant: inVisit((visit, { reckoned }) => {
      if (worn(reckoned, isLightener).length === 0 || visit.filter(isLineOf('check')).length < 3) return undefined;
      return changedLast(visit, (line) =>
        wordOf(line) === 'check' ? put(line, /\b(?:pale-yellow|yellow|gold)\b/, 'red') : line,
      );
    }),
  },
  {
    name: 'left too much',
    says: 'more is left over than was mixed',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) =>
        wordOf(line) === 'left' ? put(line, /\s~?(\d+)(?=\s|$)/, (_, grams = '') => ` ${Number(grams) + 400}`) : line,
      ),
    ),
  },
  {
    name: 'wrong sum',
    says: 'a claimed total of a bowl or of the charges is not the sum',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) =>
        wordOf(line) === 'bowl'
          ? put(line, /= (\d+)/, (_, grams = '') => `= ${Number(grams) + 20}`)
          : put(line, /charge\s+total\s+(\d+)/, (_, sum = '') => `charge total ${Number(sum) + 10}`),
      ),
    ),
  },
  {
    name: 'figure slipped',
    says: 'a charge of ten times as much',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) =>
        wordOf(line) === 'charge' && !/total|discount/.test(line)
          ? put(line, /\s(\d+)(?:\.\d\d)?\s*$/, (_, sum = '') => ` ${sum}0`)
          : line,
      ),
    ),
  },
  {
    name: 'paid another sum',
    says: 'two figures of what was paid are turned round',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) =>
        wordOf(line) === 'paid'
          ? put(line, /\s(\d)(\d+)/, (all = '', first = '', rest = '') =>
              first === rest[0] ? all : ` ${rest[0]}${first}${rest.slice(1)}`,
            )
          : line,
      ),
    ),
  },
  {
    name: 'pasted twice',
    says: 'a charge stands twice',
    plant: inVisit((visit) => {
      const at = visit.findIndex((line) => wordOf(line) === 'charge' && !/total|discount/.test(line));
      return at < 0 ? undefined : [...visit.slice(0, at + 1), visit[at] ?? '', ...visit.slice(at + 1)];
    }),
  },
  {
    name: 'name misspelt',
    says: 'a product by a name that is not on the shelf',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) =>
        wordOf(line) === 'bowl'
          ? put(
              line,
              /\b(clay|cream|gloss|toner|powder|high)\b/,
              (typed = '') => `${typed.slice(0, 2)}x${typed.slice(2)}`,
            )
          : line,
      ),
    ),
  },
  {
    name: 'tone that is not made',
    says: 'a shade with a tone that the range does not have',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) =>
        wordOf(line) === 'bowl' ? put(line, /\b(\d{1,2})\/(\d+)\b/, (_, depth = '') => `${depth}/9`) : line,
      ),
    ),
  },
  {
    name: 'other client',
    says: 'the visit is filed under a name that is slightly wrong',
    plant: inVisit((visit, { reckoned }) => {
      const [header = '', ...rest] = visit;
      const { name } = reckoned.client;
      const wrong = `${name.slice(0, -2)}${name.at(-1)}${name.at(-2)}`;
      return wrong === name || !header.includes(name) ? undefined : [header.replace(name, wrong), ...rest];
    }),
  },
  {
    name: 'line not finished',
    says: 'the hand was called away in the middle of a bowl',
    plant: inVisit((visit) =>
      changedFirst(visit, (line) => (wordOf(line) === 'bowl' ? put(line, /\+.*$/, '+') : line)),
    ),
  },
  {
    name: 'lost result',
    says: 'nobody wrote what came of it',
    plant: inVisit((visit, { reckoned }) =>
      worn(reckoned, isLightener).length > 0 ? without(visit, isLineOf('result')) : undefined,
    ),
  },
];

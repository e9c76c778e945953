import type { Stood } from '../journal/source.ts';
import type { Visit } from '../records/schema/entry.ts';
import type { Duration } from '../records/schema/values.ts';
import { TIME_UNITS } from '../trade/units.ts';
import { type Line, placeIn, shownBowl } from './clock-lines.ts';
import type { FactsOf, Minute } from './model.ts';
import type { Applied } from './runs.ts';

/** Minutes of a length of time, from and to; undefined for months, which the calendar counts. */
export const spanOfMinutes = ({
  value,
  to = value,
  unit,
}: Duration): { readonly least: number; readonly most: number } | undefined => {
  const minutes = TIME_UNITS[unit];
  return minutes === undefined ? undefined : { least: value * minutes, most: to * minutes };
};

/** Minutes of a length of time, the least of a range; undefined for months. */
export const minutesOf = (duration: Duration): number | undefined => spanOfMinutes(duration)?.least;

/** The bowls that a visit mixes, each with the bowl that a `more` line made it from. */
export const mixedBowls = ({ entry }: Stood<Visit>): Map<string, string | undefined> => {
  const mixed = new Map<string, string | undefined>();
  for (const fact of entry.facts)
    if (fact.word === 'bowl' || fact.word === 'again') mixed.set(shownBowl(fact.bowl.name), undefined);
  for (const fact of entry.facts) {
    if (fact.word !== 'more') continue;
    const of = shownBowl(fact.bowl.name);
    if (!mixed.has(of)) continue;
    const letter = of.replace(/\d+$/, '');
    let count = 2;
    while (mixed.has(`${letter}${count}`)) count++;
    mixed.set(`${letter}${count}`, of);
  }
  return mixed;
};

/** The runs that one `on` line begins at a minute: one for each bowl and zone it names. */
export const runsOfLine = (
  visit: Stood<Visit>,
  mixed: ReadonlyMap<string, string | undefined>,
  { fact, end, about, mention }: Line<FactsOf<'on'>>,
  firstOn: Minute,
): Applied[] => {
  const only = mixed.size === 1 ? [...mixed.keys()][0] : undefined;
  const bowls = mention.bowls.length > 0 ? mention.bowls : [only];
  const zones = mention.zones.length > 0 ? mention.zones : [''];
  const allOn = end !== undefined && end >= firstOn ? end : undefined;
  return bowls.flatMap((bowl) =>
    zones.map((zone) => ({
      bowl,
      moreOf: bowl === undefined ? undefined : mixed.get(bowl),
      zone,
      firstOn,
      allOn: allOn ?? firstOn,
      spanned: allOn !== undefined,
      meant: fact.minutes && minutesOf(fact.minutes),
      about,
      place: placeIn(visit, fact.line, fact.period.at),
      line: fact.line,
    })),
  );
};

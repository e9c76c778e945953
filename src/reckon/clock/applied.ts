import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Duration } from '../../records/schema/values.ts';
import { TIME_UNITS } from '../../trade/units.ts';
import { placeOf } from '../cite.ts';
import type { FactsOf, Minute } from '../model.ts';
import { matchZones } from '../zone-match.ts';
import { type Line, shownBowl } from './lines.ts';
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
  let isMore = false;
  for (const fact of entry.facts)
    if (fact.word === 'bowl' || fact.word === 'again') mixed.set(shownBowl(fact.bowl.name), undefined);
    else isMore ||= fact.word === 'more';
  if (!isMore) return mixed;
  const numbers = new Map<string, number>();
  for (const fact of entry.facts) {
    if (fact.word !== 'more') continue;
    const of = shownBowl(fact.bowl.name);
    if (!mixed.has(of)) continue;
    const letter = of.replace(/\d+$/, '');
    let count = numbers.get(letter) ?? 2;
    while (mixed.has(`${letter}${count}`)) count++;
    numbers.set(letter, count + 1);
    mixed.set(`${letter}${count}`, of);
  }
  return mixed;
};

type Zones = SalonSettings['zones'];

/** The bowls of the `place` lines at a zone, in capitals; of all `place` lines where none is named. */
const placedAt = ({ entry }: Stood<Visit>, zone: string, zones: Zones): ReadonlySet<string>[] => {
  const placings = entry.facts.flatMap((fact) => {
    if (fact.word !== 'place') return [];
    const matches = fact.zones.map((one) => (zone === '' ? 'within' : matchZones(zone, one.zone, zones)));
    const match = matches.find((one) => one === 'same') ?? matches.find((one) => one === 'within');
    return match === undefined ? [] : [{ match, bowls: new Set(fact.bowls.map(({ name }) => shownBowl(name))) }];
  });
  const same = placings.filter(({ match }) => match === 'same');
  return (same.length > 0 ? same : placings).map(({ bowls }) => bowls);
};

/** The bowl, or the bowls that take turns, placed at a zone, where there is one and no other; else none. */
const onlyPlaced = (
  visit: Stood<Visit>,
  zone: string,
  mixed: ReadonlyMap<string, unknown>,
  zones: Zones,
): readonly string[] => {
  const [first, ...others] = placedAt(visit, zone, zones);
  if (first === undefined || [...first].some((bowl) => !mixed.has(bowl))) return [];
  const alike = others.every((other) => other.size === first.size && [...other].every((bowl) => first.has(bowl)));
  return alike ? [...first] : [];
};

/**
 * The bowls that a line without a letter puts on at a zone: the only one mixed, else what the `place` lines of that zone
 * name, where they name one thing. None where it cannot be told.
 */
const meantAt = (
  visit: Stood<Visit>,
  zone: string,
  mixed: ReadonlyMap<string, string | undefined>,
  zones: Zones,
): readonly (string | undefined)[] => {
  const meant = mixed.size === 1 ? [...mixed.keys()] : onlyPlaced(visit, zone, mixed, zones);
  return meant.length === 0 ? [undefined] : meant;
};

const NOWHERE: readonly string[] = [''];

/** The runs that one `on` line begins at a minute: one for each bowl and zone it names. */
export const runsOfLine = (
  visit: Stood<Visit>,
  mixed: ReadonlyMap<string, string | undefined>,
  salonZones: Zones,
  { fact, end, about, mention }: Line<FactsOf<'on'>>,
  firstOn: Minute,
): Applied[] => {
  const zones = mention.zones.length > 0 ? mention.zones : NOWHERE;
  const place = placeOf(visit, fact, fact.period?.at ?? fact.bowls[0]?.at ?? fact.zones[0]?.at);
  const allOn = end !== undefined && end >= firstOn ? end : undefined;
  const runOf = (bowl: string | undefined, zone: string): Applied => ({
    bowl,
    moreOf: bowl === undefined ? undefined : mixed.get(bowl),
    zone,
    firstOn,
    allOn: allOn ?? firstOn,
    spanned: allOn !== undefined,
    meant: fact.minutes && minutesOf(fact.minutes),
    about,
    place,
    line: fact.line,
  });
  const runs: Applied[] = [];
  for (const bowl of mention.bowls) for (const zone of zones) runs.push(runOf(bowl, zone));
  if (runs.length === 0)
    for (const zone of zones) for (const bowl of meantAt(visit, zone, mixed, salonZones)) runs.push(runOf(bowl, zone));
  return runs;
};

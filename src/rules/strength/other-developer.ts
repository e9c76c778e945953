import type { ShelfItem } from '../../journal/shelf.ts';
import { basesIn, developerStrength, portionsIn } from '../../reckon/bowl/contents.ts';
import { areOfOneSeries, isUsedBySome, type OwnDevelopers, ownDevelopers } from '../../reckon/bowl/own-developers.ts';
import { offersStrength } from '../../reckon/bowl/strength-offered.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import type { BowlReckoned, Portion } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import { isZero } from '../../text/exact.ts';
import { sentence } from '../../text/sentence.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

type Shelf = ReadonlyMap<string, ShelfItem>;
type Other = Portion & { readonly item: ShelfItem };

const isWithItem = (portion: Portion): portion is Other => portion.item !== undefined;

/**
 * Whether a developer is another line's than the item's. Its `uses` line settles that, and another strength of the same
 * developer is for the strength line. Without one it can be known only
 * where the item's own developer of that strength stands on the shelf and some other product names this one as its own.
 */
const isOfAnother = ({ item, strength }: Other, { all, declared }: OwnDevelopers, shelf: Shelf): boolean => {
  if (all.length === 0 || all.some((own) => areOfOneSeries(own, item))) return false;
  if (declared) return true;
  const hasSame = all.some(
    (own) =>
      own.strength === undefined ||
      (item.strength !== undefined &&
        own.strength.value === item.strength.value &&
        own.strength.unit === item.strength.unit),
  );
  return hasSame && strength !== undefined && isUsedBySome(item, shelf);
};

/** Whether the strength alone is found already: one slip is one finding. */
const isStrengthFound = (bowl: BowlReckoned, { strengths }: ShelfItem, blended: boolean): boolean => {
  const strength = strengths && developerStrength(bowl);
  return strengths !== undefined && strength !== undefined && !offersStrength(strengths, strength, blended);
};

const foundIn = (bowl: BowlReckoned, shelf: Shelf): Found | undefined => {
  // A bowl made again was found out where it was first mixed, if it was not weighed anew.
  if (bowl.again !== undefined && bowl.weighed === undefined) return undefined;
  const developers = portionsIn(bowl).filter(
    ({ role, strength }) => role === 'developer' && (strength === undefined || !isZero(strength)),
  );
  const bases = basesIn(bowl);
  const [item] = bases;
  if (item === undefined || developers.length === 0) return undefined;
  const owns = bases.map((base) => ownDevelopers(base, shelf));
  for (const portion of developers) {
    if (!isWithItem(portion) || !owns.every((own) => isOfAnother(portion, own, shelf))) continue;
    if (isStrengthFound(bowl, item, developers.length > 1)) continue;
    const [own] = owns;
    const uses = item.stood.entry.facts.find((fact) => fact.word === 'uses');
    const names = listed(
      (own?.all ?? []).map(({ name }) => name),
      'or',
    );
    const place = bowl.held.find((one) => one.item === portion.item)?.place ?? bowl.place;
    return {
      place,
      message: `Bowl ${bowl.name} has ${item.name} with ${portion.item.name}, ${portion.item.full}.`,
      expected:
        uses === undefined
          ? `${item.full} has ${names} on the shelf, named after it; other products use ${portion.item.name}.`
          : sentence`${item.full} uses ${names} (${citeLine(item, uses)}).`,
      todo:
        uses === undefined
          ? `Write the developer that was mixed in, or \`uses ${portion.item.name}\` under \`${item.name}\` if its leaflet names it.`
          : `Write the developer that was mixed in, or \`uses ${[...item.uses, portion.item.name].join(' ')}\` if the leaflet of \`${item.name}\` names it.`,
      label: 'of another line',
      also: [
        { place: placeOf(item.stood, uses ?? { line: 0 }), says: uses === undefined ? 'the product' : 'its uses line' },
      ],
    };
  }
  return undefined;
};

export default defineRule({
  name: 'other-developer',
  family: 'strength',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  what: 'A developer is none of those that the product uses, by its `uses` line, or by the name of its own on the shelf.',
  why: 'A maker sets strength, thickness and time for its own developer; with another the mix runs and works otherwise.',
  source: { kind: 'shelf', cites: 'the uses line of what is mixed, else the developer named after it' },
  check: ({ bowls }, { journal: { shelf } }) => foundEach(bowls, (bowl) => foundIn(bowl, shelf)),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product tint-dev "Cormorant developer" developer 6%
    range tint "Cormorant tint" permanent
      uses tint-dev
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 tint read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 40 tint 6/3 + 40 dev-6
                           ^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product tint-dev "Cormorant developer" developer 6%
    range tint "Cormorant tint" permanent
      uses tint-dev
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 tint read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 40 tint 6/3 + 40 tint-dev`,
});

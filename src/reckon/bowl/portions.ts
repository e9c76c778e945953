import type { ShelfItem } from '../../journal/shelf.ts';
import type { Amount, Name, Ratio, Strength } from '../../records/schema/values.ts';
import { div, equal, exactOf, ZERO } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import { isUnit, isVolume } from '../../trade/units.ts';
import { placeOf } from '../cite.ts';
import type { BowlProblem, Role } from '../model.ts';
import { listed, perCent } from '../say.ts';
import { blendOf } from './blend.ts';
import { developerOf, percentOfItem, percentTyped } from './developers.ts';
import { ratioSays } from './disagreement.ts';
import type { Part, Parted, RatioSaid, Typed } from './part.ts';
import { type PartNames, sortNames, splitDeveloper, strengthInName } from './part-names.ts';
import {
  nameless,
  noShade,
  otherStrength,
  type PartProblem,
  ratioWithoutDeveloper,
  shadeOfProduct,
  twoShades,
  unknownName,
  unmetStrength,
} from './part-problems.ts';
import { packGrams, packOn } from './price.ts';
import { shadeFault } from './shades.ts';
import { type Conversion, weigh } from './weighing.ts';

/** Where parts are resolved: the shelf, the day, and the salon’s conversions. */
export type Setting = {
  readonly shelf: ReadonlyMap<string, ShelfItem>;
  readonly date: string;
  readonly conversion: Conversion;
};

type Draft = { -readonly [key in keyof Part]: Part[key] };

/** A part being resolved, and where its problems go. */
type Resolving = {
  readonly setting: Setting;
  readonly typed: Typed;
  readonly draft: Draft;
  readonly problems: BowlProblem[];
  /** No one developer has the strength that the note gives. */
  unmet?: true;
};

const add = ({ typed, problems }: Resolving, { at, ...problem }: PartProblem): void => {
  problems.push({ ...problem, place: placeOf(typed.in, typed, at) });
};

const roleOf = ({ kind, inRatio }: ShelfItem): Role => {
  if (kind === 'developer') return 'developer';
  if (kind === 'additive') return inRatio ? 'base' : 'additive';
  return kind === 'conditioner' || kind === 'treatment' || kind === 'goods' ? 'additive' : 'base';
};

const ratioSaid = (ratio: Ratio, place: Place): RatioSaid => ({
  value: div(exactOf(ratio.developer), exactOf(ratio.colour)),
  place,
  typed: ratio,
  about: ratio.about === true || ratio.to !== undefined,
});

const isHedged = ({ amount, ratio, strength }: Typed): boolean =>
  (amount !== undefined && (amount.about === true || amount.to !== undefined)) ||
  (ratio !== undefined && (ratio.about === true || ratio.to !== undefined)) ||
  strength?.about === true;

const draftOf = (typed: Typed): Draft => {
  const { ratio } = typed;
  return {
    component: typed.component,
    place: placeOf(typed.in, typed, typed.at),
    role: 'unknown',
    item: undefined,
    label: '',
    shade: undefined,
    strength: undefined,
    about: isHedged(typed),
    grams: undefined,
    parts: undefined,
    how: undefined,
    ratio: ratio && ratioSaid(ratio, placeOf(typed.in, typed, ratio.at)),
    blend: undefined,
    out: undefined,
    inLine: typed.inLine,
    repeated: false,
    lotOf: undefined,
  };
};

const weighInto = (resolving: Resolving, amount: Amount | undefined): void => {
  if (amount === undefined) return;
  const { draft, setting } = resolving;
  const { item, role, label } = draft;
  // Of a name that is not on the shelf only a plain weight says anything.
  if (role === 'unknown' && amount.unit !== '' && amount.unit !== 'p' && !isUnit(amount.unit)) return;
  // Of a strength that no developer has, or several have, a volume has no density yet: that is found already.
  if (resolving.unmet === true && isVolume(amount.unit)) return;
  const { date, conversion } = setting;
  const pack = item && amount.unit === 'pack' ? packOn(item, date) : undefined;
  const weighing = weigh(amount, item, label, conversion, item && pack && packGrams(item, pack, conversion));
  if (weighing.kind === 'grams') {
    draft.grams = weighing.grams;
    draft.how = weighing.how;
  } else if (weighing.kind === 'parts') draft.parts = weighing.parts;
  else add(resolving, { ...weighing, at: amount.at });
};

const shadeInto = (resolving: Resolving, item: ShelfItem, named: Name, { shade, extra }: PartNames): void => {
  const { draft } = resolving;
  if (!item.ranged) {
    const odd = shade ?? extra;
    if (odd !== undefined) add(resolving, shadeOfProduct(item, 'shade' in odd ? odd.shade : odd.name, odd.at));
    return;
  }
  if (shade === undefined) {
    add(resolving, noShade(item, named.at));
    return;
  }
  draft.shade = shade.shade;
  draft.label = `${item.name} ${shade.shade}`;
  const fault = shadeFault(shade, item);
  if (fault !== undefined) add(resolving, { kind: 'unknown-shade', at: shade.at, ...fault });
  if (extra !== undefined) add(resolving, twoShades(item, shade, extra));
};

/** Without a shelf a name stands for itself: a developer by the strength in its name or beside it, else a base. */
const nameAlone = ({ draft, typed }: Resolving, name: string, { shade }: PartNames): void => {
  const inName = strengthInName(name);
  const developer = inName !== undefined || typed.strength !== undefined || typed.blend !== undefined;
  draft.role = developer ? 'developer' : 'base';
  draft.strength = developer ? inName : ZERO;
  if (shade !== undefined) {
    draft.shade = shade.shade;
    draft.label = `${name} ${shade.shade}`;
  }
};

/** What a part names: a bowl, water, a product of the shelf, or a name that nobody knows. */
const nameInto = (resolving: Resolving): void => {
  const { draft, typed, setting } = resolving;
  const { shelf } = setting;
  if (typed.out !== undefined) {
    draft.role = 'bowl';
    draft.out = typed.out.name.toUpperCase();
    draft.label = `out of ${draft.out}`;
    weighInto(resolving, typed.amount);
    return;
  }
  const names = sortNames(typed, shelf);
  const { product } = names;
  if (product === undefined) {
    // A strength or a blend is weighed once it is known which developer it means.
    if (typed.strength !== undefined || typed.blend !== undefined) return;
    add(resolving, nameless(typed));
    weighInto(resolving, names.amount);
    return;
  }
  draft.label = product.name;
  const item = shelf.get(product.name);
  if (item !== undefined) {
    draft.item = item;
    draft.role = roleOf(item);
    draft.strength = item.kind === 'developer' ? percentOfItem(item) : ZERO;
    shadeInto(resolving, item, product, names);
  } else if (product.name === 'water') {
    draft.role = 'water';
    draft.strength = ZERO;
  } else if (shelf.size === 0) nameAlone(resolving, product.name, names);
  else {
    if (names.shade !== undefined) {
      draft.shade = names.shade.shade;
      draft.label = `${product.name} ${draft.shade}`;
    }
    add(resolving, unknownName(product, typed.second, shelf, names.shade?.shade));
  }
  weighInto(resolving, names.amount);
};

/** A strength beside a developer’s name must be its own; a developer without one takes it. */
const strengthBeside = (resolving: Resolving): void => {
  const { draft } = resolving;
  const { strength } = resolving.typed;
  if (strength === undefined) return;
  const percent = percentTyped(strength);
  if (draft.strength === undefined) draft.strength = percent;
  else if (!equal(draft.strength, percent))
    add(resolving, otherStrength(draft.label, draft.strength, percent, strength.at));
};

/** A bare strength: the developer it means among those on the shelf. */
const strengthAlone = (resolving: Resolving, strength: Strength, bases: readonly ShelfItem[]): void => {
  const { draft, setting } = resolving;
  const percent = percentTyped(strength);
  draft.role = 'developer';
  draft.strength = percent;
  const meant = setting.shelf.size === 0 ? undefined : developerOf(percent, bases, setting.shelf);
  if (meant?.kind === 'one') {
    draft.item = setting.shelf.get(meant.item.name);
    draft.label = meant.item.name;
    return;
  }
  draft.label = `${perCent(percent)} developer`;
  if (meant === undefined) return;
  resolving.unmet = true;
  add(resolving, unmetStrength(percent, meant, strength, bases));
};

const blendInto = (resolving: Resolving, names: readonly Name[]): void => {
  const { draft, typed, setting } = resolving;
  draft.role = 'developer';
  draft.label = listed(names.map(({ name }) => name));
  const blend = blendOf(typed, names, setting.shelf);
  if (blend.kind === 'blend') {
    draft.blend = blend.shares;
    draft.strength = blend.percent;
  } else if (blend.kind === 'unknown') {
    draft.role = 'unknown';
    add(resolving, unknownName(blend.name, undefined, setting.shelf, undefined));
  } else add(resolving, blend.problem);
};

const canBeBase = ({ role }: Part): boolean => role === 'base' || role === 'unknown' || role === 'bowl';

/** Something must be the base that a ratio is reckoned on: what is no colour steps in when nothing else does. */
const settleRoles = (drafts: readonly Draft[], before: readonly Part[]): void => {
  if (drafts.some(canBeBase) || before.some(canBeBase)) return;
  const open = drafts.filter(({ role, ratio }) => role === 'additive' && ratio === undefined);
  const plain = open.filter(({ item }) => item?.kind !== 'additive');
  for (const draft of plain.length > 0 ? plain : open) draft.role = 'base';
};

/**
 * Without a shelf nothing says what a name is, so a ratio is of what stands before its developer: a name typed after it
 * stands outside, as a bond or drops do.
 */
const outsideRatio = (drafts: readonly Draft[]): void => {
  const ratio = drafts.findIndex(({ role, ratio }) => role === 'developer' && ratio !== undefined);
  if (ratio < 0 || !drafts.slice(0, ratio).some(canBeBase)) return;
  for (const draft of drafts.slice(ratio + 1))
    if (draft.role === 'base' && draft.ratio === undefined) draft.role = 'additive';
};

const itemsOfBases = (parts: readonly Part[]): ShelfItem[] => {
  const items: ShelfItem[] = [];
  for (const { item, role } of parts) if (item !== undefined && role === 'base') items.push(item);
  return items;
};

/** Whether a ratio can be meant for it: a developer, or a name that nobody knows. */
const isDeveloping = ({ role }: Part): boolean => role === 'developer' || role === 'unknown';

/** One root cause, one finding: beside a name that nobody knows nothing else is said of the mix. */
const rootCauses = (problems: Parted['problems']): Parted['problems'] => {
  if (problems.length < 2) return problems;
  const unknown = problems.filter(({ kind }) => kind === 'unknown-name');
  return unknown.length > 0 ? unknown : problems;
};

/**
 * Resolves the components of one bowl: names, shades and strengths on the shelf, amounts as grams or parts. With an
 * empty shelf (the bare `mix` command) every name stands for itself. `before` is what the bowl holds already.
 */
export const resolveParts = (typed: readonly Typed[], setting: Setting, before: readonly Part[] = []): Parted => {
  const problems: BowlProblem[] = [];
  const alone = !typed.some(({ product, strength }) => product !== undefined && strength === undefined);
  const all: Resolving[] = [];
  const resolve = (one: Typed): void => void all.push({ setting, typed: one, draft: draftOf(one), problems });
  for (const one of typed) {
    const split = splitDeveloper(one, setting.shelf, alone);
    if (split === undefined) resolve(one);
    else for (const part of split) resolve(part);
  }
  for (const one of all) nameInto(one);
  const drafts = all.map(({ draft }) => draft);
  for (const one of all) {
    const { blend, product, out, strength } = one.typed;
    if (out !== undefined) continue;
    if (blend !== undefined) {
      blendInto(one, blend);
      if (product === undefined) weighInto(one, one.typed.amount);
    } else if (product !== undefined) {
      if (one.draft.role === 'developer') strengthBeside(one);
    } else if (strength !== undefined) {
      strengthAlone(one, strength, itemsOfBases(before).concat(itemsOfBases(drafts)));
      weighInto(one, one.typed.amount);
    }
  }
  settleRoles(drafts, before);
  if (setting.shelf.size === 0) outsideRatio(drafts);
  for (const resolving of all) {
    const { ratio, role } = resolving.draft;
    if (ratio !== undefined && role === 'base' && !before.some(isDeveloping) && !drafts.some(isDeveloping))
      add(resolving, ratioWithoutDeveloper(ratioSays(ratio), ratio.place.at));
  }
  return { parts: drafts, problems: rootCauses(problems) };
};

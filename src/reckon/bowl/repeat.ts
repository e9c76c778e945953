import { compare, div, type Exact, exact, isZero, mul } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import type { Solved } from './bowl.ts';
import { inMillionths } from './finest.ts';
import { type Grams, merged } from './merged.ts';
import type { Part, PortionDraft } from './part.ts';

/** Where the parts of a repeated bowl go. */
export type Into = {
  readonly place: Place;
  /** The day of the bowl that is repeated, where that is an earlier one. */
  readonly lotOf: string | undefined;
};

/** A portion of a bowl that is repeated; it came `out` of another bowl that is mixed this time as well. */
type Piece = { readonly portion: PortionDraft; readonly out: string | undefined; readonly known: boolean };

/** What a bowl is repeated from, by the grams of the whole of it. */
export type Pieces = readonly Grams<Piece>[];

/** The bowls of a visit as solved, and what is made of them while they are repeated elsewhere. */
export type Then = {
  readonly coreOf: (name: string) => Solved | undefined;
  /** Whether a bowl is there to take it out of this time. */
  readonly hasBowl: (name: string) => boolean;
  readonly pieces: Map<string, Pieces>;
};

/** A thousand tonnes: what many remakes at more than 100 % come to is no weight any more. A choice of ours. */
const MOST = exact(1_000_000_000);

/** So much of a weight. Undefined above what could be mixed. */
const shareOf = (weight: Exact, share: Exact): Exact | undefined => {
  const grams = mul(weight, share);
  return compare(grams, MOST) > 0 ? undefined : inMillionths(grams);
};

/** Portions that a bowl keeps one by one when it is repeated: several times what a bowl holds. A choice of ours. */
const APART = 24;

const exactText = (value: Exact | undefined): string => (value === undefined ? '' : `${value.n}/${value.d}`);

const keyOf = ({ portion, out, known }: Piece): string => {
  const { role, label, strength, about, component, lotOf } = portion;
  return [role, label, exactText(strength), about, component.lot?.text ?? '', lotOf ?? '', out ?? '', known].join('\n');
};

/** Pieces as they are; of a bowl with a great many, those that are alike together. */
const few = (pieces: Pieces): Pieces => (pieces.length <= APART ? pieces : merged(pieces, keyOf));

/** What stands in for a portion: itself, or what was in the bowl it came out of where that is not mixed this time. */
const piecesFor = (portion: PortionDraft, out: string | undefined, then: Then): Pieces => {
  const grams = portion.weight && inMillionths(portion.weight);
  if (out === undefined || then.hasBowl(out)) return [{ what: { portion, out, known: true }, grams }];
  const total = then.coreOf(out)?.total;
  if (total === undefined || grams === undefined || isZero(total))
    return [{ what: { portion, out: undefined, known: false }, grams }];
  const share = div(grams, total);
  return (then.pieces.get(out) ?? []).map(({ what, grams: whole }) => ({
    what,
    grams: whole && shareOf(whole, share),
  }));
};

/** The bowls that a portion of a bowl has to be looked up in, where they are not mixed this time. */
const wantedBy = ({ outs }: Solved, { hasBowl, pieces, coreOf }: Then): string[] =>
  outs.filter(
    (out): out is string => out !== undefined && !hasBowl(out) && !pieces.has(out) && coreOf(out) !== undefined,
  );

/**
 * What a bowl was made of, bowls that are not mixed this time looked into, to the last. Each is looked into once, and they
 * wait in a list: bowls may be poured into each other as often as the notes say.
 */
const piecesOf = (name: string, then: Then): Pieces => {
  const waiting = [name];
  for (let top = waiting.at(-1); top !== undefined; top = waiting.at(-1)) {
    const core = then.pieces.has(top) ? undefined : then.coreOf(top);
    const wanted = core === undefined ? [] : wantedBy(core, then);
    if (wanted.length > 0) {
      for (const one of wanted) waiting.push(one);
      continue;
    }
    waiting.pop();
    if (core !== undefined)
      then.pieces.set(top, few(core.portions.flatMap((portion, index) => piecesFor(portion, core.outs[index], then))));
  }
  return then.pieces.get(name) ?? [];
};

/**
 * The portions of a solved bowl as parts of another: so much of each (`share`), at another place in the notes. What came
 * out of a bowl that is not mixed this time is mixed from the start. A lot goes with its portion; where it was named on an
 * earlier day, `lotOf` says which, for another tub may be open by now.
 */
export const repeatParts = (name: string, share: Exact, then: Then, into: Into): Part[] =>
  piecesOf(name, then).map(({ what: { portion, out, known }, grams }): Part => {
    const { component, role, item, label, shade, strength, about, lotOf } = portion;
    return {
      component,
      place: into.place,
      role: known ? role : 'unknown',
      item,
      label,
      shade,
      strength,
      about,
      grams: grams && shareOf(grams, share),
      parts: undefined,
      inLine: true,
      how: undefined,
      ratio: undefined,
      blend: undefined,
      out,
      repeated: true,
      lotOf: component.lot && (lotOf ?? into.lotOf),
    };
  });

import type { Component, Ratio, Seen, Shade, Stage, Zone } from '../records/schema/values.ts';
import { measureNamed } from '../trade/units.ts';
import { escapeText } from './escape.ts';
import { type Noted, spaced, typedWords } from './noted.ts';
import { amountText, depthText, hedged, plain, strengthText } from './say-numbers.ts';

/** `hairline, top`; nothing when no place was named. */
export const zonesText = (zones: readonly Zone[]): string => zones.map(({ zone }) => escapeText(zone)).join(', ');

/** `gold`, `orange to yellow`. */
export const stageText = ({ stage, to, about }: Stage): string =>
  hedged(about, escapeText(to === undefined ? stage : `${stage} to ${to}`));

/** What was seen at some places, in the order places, depth, stage, grey, other words. */
export const seenText = (noted: Noted, fact: { readonly line: number }, seen: Seen): string => {
  const grey = seen.grey && amountText(seen.grey, '%');
  // `grey covered 50%` says grey by itself.
  const saysGrey = seen.words.some(({ word }) => word === 'grey');
  return spaced([
    zonesText(seen.zones),
    seen.depth && depthText(seen.depth),
    seen.stage && stageText(seen.stage),
    grey && !saysGrey && `${grey} grey`,
    typedWords(noted, fact, seen.words),
    saysGrey && grey,
  ]);
};

/** Several places with what was seen there. */
export const allSeen = (noted: Noted, fact: { readonly line: number }, seen: readonly Seen[]): string =>
  seen.map((one) => seenText(noted, fact, one)).join('; ');

/** `7/43` with its slash, or the name that the range gives it. */
export const shadeText = ({ shade }: Shade): string => escapeText(shade);

const ratioText = ({ colour, developer, to, about }: Ratio): string =>
  hedged(about, `${plain(colour)}:${plain(developer)}${to === undefined ? '' : `–${plain(to)}`}`);

/** Whether a part without a unit is counted in a measure of its product: `4 scoop clay`. The shelf knows. */
const isMeasured = ({ journal }: Noted, { product, second }: Component): boolean => {
  const measures = journal.shelf.get(second?.name ?? '')?.measures;
  if (product === undefined || measures === undefined || journal.shelf.has(product.name)) return false;
  return measureNamed(product.name, measures) !== undefined;
};

/** One part of a mix as noted, nothing worked out: `40 g clay, lot K2231`, `20 vol 1:2`, `40 g out of A`. */
export const componentText = (noted: Noted, part: Component): string => {
  const { amount, strength, product, second, shade, blend, out, ratio, lot } = part;
  const said = spaced([
    amount && amountText(amount, isMeasured(noted, part) ? '' : 'g'),
    strength && strengthText(strength),
    blend && `from ${blend.map(({ name }) => escapeText(name)).join(' and ')}`,
    product && escapeText(product.name),
    second && escapeText(second.name),
    shade && shadeText(shade),
    out && `out of ${escapeText(out.name.toUpperCase())}`,
    ratio && ratioText(ratio),
  ]);
  return lot === undefined ? said : `${said}, lot ${escapeText(lot.text)}`;
};

/** Parts of a mix as noted, with a mark between them. */
export const partsText = (noted: Noted, parts: readonly Component[], joint = ' + '): string =>
  parts.map((part) => componentText(noted, part)).join(joint);

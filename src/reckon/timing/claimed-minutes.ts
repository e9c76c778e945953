import type { Place } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import type { FactsOf } from '../model.ts';
import { minutesOf } from './time-line.ts';
import type { TimedRun } from './timed-runs.ts';

/** Minutes typed after `off` that fit the clock from the other moment than the leaflet counts from. */
export type OtherClock = {
  readonly said: number;
  readonly from: 'first on' | 'all on';
  /** By the moment that the leaflet counts from. */
  readonly right: number;
  readonly place: Place;
};

/** Minutes that two ways of reading a clock may differ by. */
const SLACK = 1;

const isNear = (a: number, { near, far }: { readonly near: number; readonly far: number }): boolean =>
  a >= near - SLACK && a <= far + SLACK;

/** What is typed of a run's minutes, where it fits only from the other moment; undefined where it fits, or fits neither. */
export const onOtherClock = ({ visit: { visit }, run, from }: TimedRun): OtherClock | undefined => {
  if (!('firstOn' in run) || run.sections !== undefined || run.offPlace === undefined) return undefined;
  const { fromFirst, fromAll, offPlace } = run;
  if (fromFirst === undefined || fromAll === undefined || (from !== 'first on' && from !== 'all on')) return undefined;
  const off = visit.entry.facts.find(
    (fact): fact is FactsOf<'off'> => fact.word === 'off' && fact.line === offPlace.line,
  );
  if (off?.claim === undefined || off.claim.about) return undefined;
  const said = minutesOf(off.claim);
  const [right, other] = from === 'first on' ? [fromFirst, fromAll] : [fromAll, fromFirst];
  if (isNear(right, said) || !isNear(other, said)) return undefined;
  const place = placeOf(visit, off, off.claim.at);
  return { said: said.near, from: from === 'first on' ? 'all on' : 'first on', right, place };
};

/** ` The 36 min typed count from all on.`, where they do; else nothing. */
export const otherClockText = (timed: TimedRun): string => {
  const other = onOtherClock(timed);
  return other === undefined ? '' : ` The ${other.said} min typed count from ${other.from}.`;
};

import { clockText } from '../../text/dates.ts';
import { element, label, line } from './svg.ts';

/** Minutes laid out along a line. */
export type TimeAxis = {
  readonly from: number;
  readonly to: number;
  /** Where a minute stands. */
  readonly x: (minute: number) => number;
};

const STEPS = [5, 10, 15, 30, 60, 120, 240] as const;

/** Room that a time needs beside the next one, in units of the picture. */
const ROOM = 46;

/** An axis from the first minute to the last, each rounded outwards to five minutes. */
export const timeAxis = (first: number, last: number, left: number, right: number): TimeAxis => {
  const from = Math.floor(first / 5) * 5;
  const to = Math.max(from + 5, Math.ceil(last / 5) * 5);
  return { from, to, x: (minute) => left + ((minute - from) / (to - from)) * (right - left) };
};

/** Minutes between the times that are written. */
const stepOf = ({ from, to, x }: TimeAxis): number =>
  STEPS.find((step) => x(from + step) - x(from) >= ROOM) ?? Math.max(240, to - from);

/** The axis drawn, with faint lines up through the rows. */
export const drawAxis = (axis: TimeAxis, top: number, bottom: number): string => {
  const step = stepOf(axis);
  const { from, to, x } = axis;
  const minutes = Array.from(
    { length: Math.floor(to / step) - Math.ceil(from / step) + 1 },
    (_, index) => (Math.ceil(from / step) + index) * step,
  );
  return element(
    'g',
    {},
    ...minutes.flatMap((minute) => [
      line(x(minute), top, x(minute), bottom, 'rule'),
      label(x(minute), bottom + 15, clockText(minute), 'said', 'middle'),
    ]),
    line(x(from), bottom, x(to), bottom, 'axis'),
  );
};

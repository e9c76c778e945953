import { mean } from './grouped.ts';
import { monotoneFit } from './monotone.ts';
import type { Reading } from './reading.ts';

/** What a pace may hang on beside the depth. */
export const PARTS = ['client', 'stage', 'strength', 'zone', 'heated'] as const;
export type Part = (typeof PARTS)[number];

/** Log minutes by depth, in ascending order and never falling. */
export type Course = ReadonlyMap<number, number>;

/** A reading with its log minutes and what it counts for beside the others. */
export type Row = Reading & { readonly log: number; readonly weight: number };

export type PaceFit = {
  readonly course: Course;
  readonly parts: Readonly<Record<Part, ReadonlyMap<string, number>>>;
  /** What the course and the parts do not say of each row. */
  readonly rest: readonly { readonly row: Row; readonly left: number }[];
};

const ROUNDS = 500;
/** Log minutes: a thousandth of a per cent. */
const CLOSE = 1e-5;

/** A row on its way through the fit: `left` is what the course and the parts do not say of it yet. */
type Working = { readonly row: Row; left: number };

/** The rows that share a depth, or a value of a part, and what that is found to add to their logarithm. */
type Level<K> = { readonly key: K; readonly own: readonly Working[]; readonly weight: number; value: number };

const levelsOf = <K>(working: readonly Working[], keyOf: (row: Row) => K): Level<K>[] => {
  const groups = new Map<K, Working[]>();
  for (const one of working) {
    const group = groups.get(keyOf(one.row));
    if (group === undefined) groups.set(keyOf(one.row), [one]);
    else group.push(one);
  }
  return [...groups].map(([key, own]) => ({
    key,
    own,
    weight: own.reduce((sum, { row }) => sum + row.weight, 0),
    value: 0,
  }));
};

const move = <K>(level: Level<K>, by: number): void => {
  level.value += by;
  for (const one of level.own) one.left -= by;
};

const leftIn = <K>({ own }: Level<K>): number => own.reduce((sum, { row, left }) => sum + row.weight * left, 0);

/**
 * Sets every level of a part to its shrunk mean; gives the furthest that one moved. What all levels share is left to the
 * course, which nothing holds back.
 */
const settlePart = (levels: readonly Level<string>[], patience: number): number => {
  const before = levels.map((level) => ({ level, value: level.value }));
  for (const level of levels) move(level, (leftIn(level) - patience * level.value) / (level.weight + patience));
  const shared = mean(levels.map(({ value }) => value));
  for (const level of levels) move(level, -shared);
  return Math.max(...before.map(({ level, value }) => Math.abs(level.value - value)));
};

/** Sets the course to the monotone fit of what the parts leave; gives the furthest that it moved. */
const settleCourse = (levels: readonly Level<number>[]): number => {
  const seen = levels.map((level) => {
    const value = level.value + leftIn(level) / level.weight;
    return { x: level.key, low: value, high: value, weight: level.weight, level };
  });
  let moved = 0;
  for (const { value, level } of monotoneFit(seen)) {
    moved = Math.max(moved, Math.abs(value - level.value));
    move(level, value - level.value);
  }
  return moved;
};

const valuesOf = <K>(levels: readonly Level<K>[]): Map<K, number> =>
  new Map(levels.map(({ key, value }) => [key, value]));

/** What the parts say of a row together, `without` left out; nought for what they do not know. */
export const partsSay = (parts: PaceFit['parts'], row: Pick<Reading, Part>, without?: Part): number =>
  PARTS.reduce((sum, part) => sum + (part === without ? 0 : (parts[part].get(row[part]) ?? 0)), 0);

/** The course at a depth, straight between its points; undefined outside them. */
export const courseAt = (course: Course, depth: number): number | undefined => {
  let before: readonly [number, number] | undefined;
  for (const after of course) {
    if (after[0] === depth) return after[1];
    if (after[0] > depth)
      return before && before[1] + ((after[1] - before[1]) * (depth - before[0])) / (after[0] - before[0]);
    before = after;
  }
  return undefined;
};

/**
 * The course and the parts nearest to the rows: weighted least squares of what is left, plus for every part its patience
 * times the square of its size, so that a part with a weight of n keeps n / (n + patience) of its mean. Found by fitting
 * the course and each part in turn to what the others leave (backfitting) until nothing moves.
 */
export const fitPace = (rows: readonly Row[], patience: Readonly<Record<Part, number>>): PaceFit => {
  const working = rows.map((row): Working => ({ row, left: row.log }));
  const course = levelsOf(working, ({ depth }) => depth).sort((a, b) => a.key - b.key);
  const levels = {
    client: levelsOf(working, ({ client }) => client),
    stage: levelsOf(working, ({ stage }) => stage),
    strength: levelsOf(working, ({ strength }) => strength),
    zone: levelsOf(working, ({ zone }) => zone),
    heated: levelsOf(working, ({ heated }) => heated),
  };
  let moved = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS && moved > CLOSE; round++)
    moved = Math.max(settleCourse(course), ...PARTS.map((part) => settlePart(levels[part], patience[part])));
  return {
    course: valuesOf(course),
    parts: {
      client: valuesOf(levels.client),
      stage: valuesOf(levels.stage),
      strength: valuesOf(levels.strength),
      zone: valuesOf(levels.zone),
      heated: valuesOf(levels.heated),
    },
    rest: working,
  };
};

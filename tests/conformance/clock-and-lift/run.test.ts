import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { minutesTo } from '../../../src/reckon/lift/curve.ts';
import { type LiftSeries, liftOf } from '../../../src/reckon/lift/series.ts';
import type { VisitReckoned } from '../../../src/reckon/model.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';
import { clockText } from '../../../src/text/dates.ts';
import { journalOf } from '../../reckon/journal-of.ts';
import { figureIn, readWorked, zoneIn } from './read-worked.ts';

const FOLDER = import.meta.dirname;
const PAGES = readdirSync(FOLDER).filter((name) => name.endsWith('.md'));

/** A tenth of a depth, and a minute: the hand rounds to the first, the clock counts in the second. */
const TENTH = 0.05;
const MINUTE = 0.5;

const reckonNote = (note: string): VisitReckoned => {
  const [visit, more] = [...reckonAll(journalOf(note)).values()].flat();
  if (visit === undefined || more !== undefined) throw new Error('a note of the set holds one visit');
  return visit;
};

const time = (minute: number | undefined): string | undefined =>
  minute === undefined ? undefined : clockText(minute % 1440).replace(/^0(?=\d:)/, '');

const near = (found: number | undefined, worked: number | undefined, within: number, what: string): void => {
  if (found === undefined || worked === undefined) expect(found, what).toBe(worked);
  else expect(Math.abs(found - worked), `${what}: ${found} found, ${worked} worked`).toBeLessThanOrEqual(within);
};

const seriesIn = (lift: readonly LiftSeries[], bowl: string | undefined, zone: string): LiftSeries => {
  const found = lift.find((one) => one.bowl === bowl && one.zone === zone);
  if (found === undefined) throw new Error(`no lift of bowl ${bowl}, zone ${zone}`);
  return found;
};

test('the set is twelve visits', () => {
  expect(PAGES).toHaveLength(12);
});

describe.each(PAGES)('%s', (name) => {
  const worked = readWorked(readFileSync(join(FOLDER, name), 'utf8'));
  const visit = reckonNote(worked.note);
  const lift = liftOf(visit);

  test('the clock agrees to the minute, run by run', () => {
    expect(
      visit.clock.runs.map(({ bowl, zone, firstOn, allOn, off, fromFirst, fromAll }) => ({
        bowl,
        zone,
        times: [firstOn, allOn, off].map(time),
        minutes: [fromFirst, fromAll],
      })),
    ).toEqual(
      worked.clock.map((row) => ({
        bowl: row.bowl,
        zone: zoneIn(row),
        times: [row['first on'], row['all on'], row.off],
        minutes: [figureIn(row, 'from first'), figureIn(row, 'from all')],
      })),
    );
    expect(visit.clock.problems).toEqual([]);
  });

  test('the lift agrees to a tenth of a depth, look by look', () => {
    const found = lift.flatMap(({ bowl, zone, curve }) => curve.map((point) => ({ bowl, zone, ...point })));
    expect(found.map(({ bowl, zone, minute }) => [bowl, zone, minute])).toEqual(
      worked.lift.map((row) => [row.bowl, zoneIn(row), figureIn(row, 'minute')]),
    );
    for (const [index, row] of worked.lift.entries())
      near(found[index]?.depth, figureIn(row, 'depth'), TENTH, `${row.bowl} ${row.zone} at ${row.minute}`);
  });

  test.each(worked.minutes)('the minutes agree: $bowl $zone to $stage', (row) => {
    const reached = minutesTo(seriesIn(lift, row.bowl, zoneIn(row)).curve, row.stage ?? '');
    near(reached?.minutes, figureIn(row, 'minutes'), MINUTE, 'minutes');
    near(reached?.early, figureIn(row, 'not before'), 0, 'not before');
    near(reached?.late, figureIn(row, 'by'), 0, 'by');
  });
});

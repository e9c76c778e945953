import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { findFiles } from '../../../src/journal/find.ts';
import { joinSources } from '../../../src/journal/journal.ts';
import { readSource } from '../../../src/journal/source.ts';
import { needsBefore } from '../../../src/reckon/forecast/forecast.ts';
import { hindsightMix } from '../../../src/reckon/forecast/hindsight.ts';
import { compareMix, type MixFigures, mixVerdict } from '../../../src/reckon/forecast/hindsight-figures.ts';
import { hindsightLift } from '../../../src/reckon/lift/hindsight.ts';
import { liftOf } from '../../../src/reckon/lift/series.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';

const README = readFileSync('README.md', 'utf8').replace(/\s+/g, ' ');

const journal = joinSources(findFiles('journals/harbour-row').map((path) => readSource(path, readFileSync(path))));

test('what the README says of the forecast on the demo is what the hindsight finds', () => {
  const comparison = compareMix(hindsightMix(needsBefore(reckonAll(journal), '2100-01-01')).cases);
  const [forecast, last] = comparison?.figures ?? [];
  if (comparison === undefined || forecast === undefined || last === undefined) throw new Error('nothing to compare');
  const worth = ({ wasted, cost }: MixFigures, what = ' of them'): string =>
    `${Math.round(wasted)} g${what}, worth ${(cost / 100).toFixed(2)} ${comparison.currency},`;
  expect(README).toContain(
    `${comparison.bowls} can be compared: mixed by the forecast, ${worth(forecast)} would have been left over, and ${forecast.short} bowls would have run short; mixed the same as last time, ${worth(last, '')} and ${last.short}.`,
  );
  // `it wastes less there, and no difference is shown in what runs short`
  expect(mixVerdict(comparison)).toEqual({ waste: 1, short: 0 });
});

test('what the README says of heads taken off before is what the hindsight of lift counts', () => {
  const series = [...reckonAll(journal).values()].flat().flatMap(liftOf);
  const { cases } = hindsightLift(series);
  expect(README).toContain(
    `Of the demo's ${cases.length} places ${cases.filter(({ reached }) => !reached).length} were.`,
  );
});

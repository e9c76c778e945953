import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { findFiles } from '../../../src/journal/find.ts';
import { joinSources } from '../../../src/journal/journal.ts';
import { readSource } from '../../../src/journal/source.ts';
import { hindsightMix } from '../../../src/reckon/forecast/hindsight.ts';
import { compareMix } from '../../../src/reckon/forecast/hindsight-figures.ts';
import { needsBefore } from '../../../src/reckon/forecast.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';

const README = readFileSync('README.md', 'utf8').replace(/\s+/g, ' ');

test('what the README says of the forecast on the demo is what the hindsight finds', () => {
  const journal = joinSources(findFiles('journals/harbour-row').map((path) => readSource(path, readFileSync(path))));
  const comparison = compareMix(hindsightMix(needsBefore(reckonAll(journal), '2100-01-01')).cases);
  const [forecast, last] = comparison?.figures ?? [];
  if (comparison === undefined || forecast === undefined || last === undefined) throw new Error('nothing to compare');
  expect(README).toContain(
    `${comparison.bowls} can be compared: mixed by the forecast, ${Math.round(forecast.wasted)} g of them would have been left over, and ${forecast.short} bowls would have run short; mixed the same as last time, ${Math.round(last.wasted)} g and ${last.short}.`,
  );
  expect(forecast.wasted).toBeLessThan(last.wasted);
  // `no fewer bowls run short`
  expect(forecast.short).toBeGreaterThanOrEqual(last.short);
});

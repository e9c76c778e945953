import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { findFiles } from '../../src/journal/find.ts';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { judge } from '../../src/rules/judging.ts';
import type { Finding } from '../../src/text/finding.ts';

const journal = joinSources(findFiles('journals/harbour-row').map((path) => readSource(path, readFileSync(path))));
const { findings, answered } = judge(journal).all();

const told = ({ severity, rule, client, place }: Finding): string =>
  `${severity} ${rule} ${client ?? '-'}: ${journal.sources.get(place.file)?.lines[place.line]?.trim()}`;

test('the demo journal has its honest mistakes, and nothing is shouted at besides', () => {
  expect(findings.map(told).sort()).toEqual([
    'fix check-before-on soraya-bell: check 14:20 A top orange',
    'fix claim-differs inês-figueiral: bowl A 40 clay + 80 dev-6 = 130',
    'fix misspelt-header -: visti 2025-10-03 17:30 douglas-fenn by nia',
    'fix no-off philippa-quayle: on 11:10-11:18 G all',
    'fix past-time kazimiera-gąska: off 11:03 A',
    'fix ratio-off-mix morwen-pascoe: bowl A 30 clay + 80 dev-6',
    'fix said-twice pilar-muñoz: left A 12 binned',
    'fix unknown-name orla-finch: bowl A 25 caly + 50 dev-6',
    'fix unknown-name tamsin-orne: visit 2025-09-19 13:30 tamsin-orne by nia at harbour',
    'mind banding-risk joss-wilder: regrowth 2.7cm',
    'mind banding-risk joss-wilder: regrowth 3.4cm',
    'mind banding-risk kit-hollin: regrowth 5.8cm',
    'mind banding-risk zoë-harrow: regrowth 6cm',
    'mind reaction-on-file kit-hollin: bowl P 30 powder + 60 dev-6',
    'mind sore-scalp solange-tully: bowl A 36 cream 4/0 + 20vol 1:1.5',
    'stop broken-hold rowan-rudge: bowl A 20 soft-clay + 20vol 1:2',
    'stop more-left-than-mixed tess-dunmallow: left A 90 binned',
    'stop on-scalp-strength otto-zeller: place P crown paint on-scalp open',
    'stop skin-test-too-soon beth-tarn: bowl R 30 cream 6/4 + 5 cream 6/0 + 6% 1:1.5',
  ]);
});

test('what the demo journal explains is told with its reason', () => {
  expect(answered.map((finding) => `${told(finding)} (${finding.reason})`)).toEqual([
    'fix ratio-off-mix morwen-pascoe: bowl A 60 clay + 75 dev-6 = 135 (1:1.25 on purpose, stiff enough to stay where it is painted)',
  ]);
});

test('the order of the files does not matter', () => {
  const turned = joinSources([...journal.sources.values()].reverse());
  expect(judge(turned).all()).toEqual({ findings, answered });
});

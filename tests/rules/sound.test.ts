import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { judge } from '../../src/rules/judging.ts';
import { journalOf } from '../examples/compile-case.ts';
import { readCases } from '../examples/read-example.ts';

const FOLDER = 'grammar/examples/sound';
/** After every visit there, so that what is asked for once a visit is over is asked for. */
const DAY = '2026-12-01';

const cases = readdirSync(FOLDER)
  .sort()
  .flatMap((name) => readCases(readFileSync(`${FOLDER}/${name}`, 'utf8')).map((one) => ({ name, ...one })));

test('there are thirty sound visits or more, and each says what is found in it', () => {
  expect(cases.length).toBeGreaterThanOrEqual(30);
  expect(cases.filter(({ blocks }) => !blocks.some(({ kind }) => kind === 'findings'))).toEqual([]);
});

describe.each(cases)('$name: $title', ({ note, shelf }) => {
  const journal = journalOf(note, shelf);
  const { findings, answered } = judge(journal, DAY).all();

  test('nothing in it is more than a thought, and nothing is explained away', () => {
    expect(findings.filter(({ severity }) => severity !== 'mind').map(({ rule, message }) => [rule, message])).toEqual(
      [],
    );
    expect(answered).toEqual([]);
  });
});

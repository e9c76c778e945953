import { describe, expect, test } from 'vitest';
import { RULES } from '../../src/rules/all.ts';
import { readExample } from '../../src/rules/example.ts';
import { applyEdits } from '../../src/text/edit.ts';
import { badBytesOf, FILE, findIn, spotOf, textOf } from './compile.ts';

describe.each(RULES.map((rule) => ({ name: rule.name, rule })))('$name', ({ rule }) => {
  test('its bad example fires it alone, at the carets', () => {
    const { carets } = readExample(rule.bad);
    expect(findIn(badBytesOf(rule)).findings.map(spotOf)).toEqual([
      `${rule.name} ${carets?.line}:${carets?.from}-${carets?.to}`,
    ]);
  });

  test('its good example fires nothing', () => {
    expect(findIn(textOf(rule.good)).findings.map(spotOf)).toEqual([]);
  });

  test('it has its declared severity in the bad example', () => {
    expect(findIn(badBytesOf(rule)).findings.map(({ severity }) => severity)).toEqual([rule.severity]);
  });
});

const mended = RULES.flatMap((rule) =>
  findIn(badBytesOf(rule)).findings.flatMap(({ mend }) =>
    mend === undefined ? [] : [{ name: rule.name, rule, mend }],
  ),
);

test('several rules offer a mend', () => {
  expect(mended.length).toBeGreaterThan(5);
});

describe.each(mended)('the mend of $name', ({ rule, mend }) => {
  test('takes the finding away and brings no other', () => {
    const { lines } = readExample(rule.bad);
    expect(findIn(applyEdits(FILE, lines, mend.edits).join('\n')).findings.map(spotOf)).toEqual([]);
  });

  test('is offered, not certain, unless the meaning cannot change', () => {
    expect(mend.sure).toBe('likely');
  });
});

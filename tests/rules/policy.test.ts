import { describe, expect, test } from 'vitest';
import { openSession } from '../../src/rules/session.ts';
import { findIn, saidIn } from './compile.ts';

const CLIENT = 'client wren-abbott "Wren Abbott"';

const notes = (policy: string, ...lines: string[]): string =>
  ['salon harbour "Harbour Row"', 'money GBP', policy, CLIENT, 'visit 2026-09-04 wren-abbott', ...lines, ''].join('\n');

const PAID = ['charge gloss 38', 'paid 40 card'];

const briefly = (text: string): { findings: string[]; answered: string[] } => {
  const { findings, answered } = findIn(text);
  return {
    findings: findings.map(({ severity, rule }) => `${severity} ${rule}`),
    answered: answered.map(({ rule, reason: why }) => `${rule}: ${why}`),
  };
};

describe('a policy rule line', () => {
  test.each([
    ['', 'mind paid-differs'],
    ['policy rule paid-differs fix "the accountant asks"', 'fix paid-differs'],
    ['policy rule paid-differs mind "as it is"', 'mind paid-differs'],
    ['policy rule charge-total off "another"', 'mind paid-differs'],
  ])('makes a rule graver or milder: %s', (policy, finding) => {
    expect(briefly(notes(policy, ...PAID))).toEqual({ findings: [finding], answered: [] });
  });

  test('that turns a rule off leaves its findings among the answered ones, with the reason', () => {
    expect(briefly(notes('policy rule paid-differs off "the till has it"', ...PAID))).toEqual({
      findings: [],
      answered: ['paid-differs: the till has it'],
    });
  });

  test('stands behind the reason given on the visit', () => {
    const lines = [...PAID, 'because paid-differs "a tip"'];
    expect(briefly(notes('policy rule paid-differs off "the till has it"', ...lines)).answered).toEqual([
      'paid-differs: a tip',
    ]);
  });

  test.each(['policy rule paid-differs off', 'policy rule paid-differs "why"', 'policy rule paid-differs stop "why"'])(
    'changes nothing while it is unclear: %s',
    (policy) => {
      expect(briefly(notes(policy, ...PAID))).toEqual({
        findings: ['fix policy-unclear', 'mind paid-differs'],
        answered: [],
      });
    },
  );

  test('lowers no stop', () => {
    const lines = ['bowl A 30 neon teal', 'left A 40'];
    const shelf = 'range neon "Kelp direct" semi\nmix none\nshades teal\n';
    const text = shelf + notes('policy rule more-left-than-mixed off "scales drift"', ...lines);
    expect(briefly(text)).toEqual({ findings: ['fix policy-stop', 'stop more-left-than-mixed'], answered: [] });
  });

  test('weighs the notes of its own salon', () => {
    const two = [
      'salon harbour "Harbour Row"',
      'policy rule paid-differs off "the till has it"',
      'salon quay "The Quay"',
      'policy rule paid-differs fix "no till here"',
      CLIENT,
      'visit 2026-09-04 wren-abbott at harbour',
      ...PAID,
      'visit 2026-10-04 wren-abbott at quay',
      ...PAID,
      'visit 2026-11-04 wren-abbott at quay',
      ...PAID,
      'because paid-differs "a tip"',
      '',
    ].join('\n');
    expect(briefly(two)).toEqual({
      findings: ['fix paid-differs'],
      answered: ['paid-differs: the till has it', 'paid-differs: a tip'],
    });
  });

  test('weighs what is read outside any client, by the first salon', () => {
    const text = 'salon harbour "Harbour Row"\npolicy rule unknown-word mind "our own words"\nzork 12\n';
    expect(briefly(text).findings).toEqual(['mind unknown-word']);
  });
});

test('a changed policy weighs again what stands in other files', () => {
  const session = openSession();
  const put = (path: string, text: string): void => session.put(path, new TextEncoder().encode(text));
  const found = (): string[] =>
    session
      .settle()
      .all()
      .findings.map(({ severity, rule }) => `${severity} ${rule}`);
  put('a.bowl', 'salon harbour "Harbour Row"\n');
  put('b.bowl', `zork 12\n${CLIENT}\nvisit 2026-09-04 wren-abbott\n${PAID.join('\n')}\n`);
  expect(found()).toEqual(['fix no-entry', 'mind paid-differs']);
  put('a.bowl', 'salon harbour "Harbour Row"\npolicy rule no-entry mind "ours"\npolicy rule paid-differs fix "ours"\n');
  expect(found()).toEqual(['mind no-entry', 'fix paid-differs']);
});

describe('policy-unclear', () => {
  test.each([
    ['policy rule "why"', 'The line names no rule, so it changes nothing.'],
    ['policy rule paid-difers off "why"', '`paid-difers` is no rule, so the line changes nothing.'],
    ['policy rule quartz off "why"', '`quartz` is no rule, so the line changes nothing.'],
    ['policy rule paid-differs "why"', 'The line does not say what `paid-differs` becomes, so it changes nothing.'],
    ['policy rule paid-differs of "why"', 'The line does not say what `paid-differs` becomes, so it changes nothing.'],
    ['policy rule paid-differs off', 'The line gives no reason, so `paid-differs` stays as it is.'],
  ])('says what %s lacks', (policy, message) => {
    expect(saidIn(notes(policy))).toEqual([`fix policy-unclear: ${message}`]);
  });

  test('offers near names only', () => {
    const todo = (policy: string): string | undefined => findIn(notes(policy)).findings[0]?.todo;
    expect(todo('policy rule paid-difers off "why"')).toBe('Write `paid-differs`.');
    expect(todo('policy rule quartz off "why"')).toBe(
      'Write the rule’s name as a finding shows it; `bowlbook why` lists them.',
    );
  });
});

describe('policy-stop', () => {
  test('is silent at a rule that stops nothing', () => {
    expect(saidIn(notes('policy rule said-twice mind "we look"'))).toEqual([]);
    expect(saidIn(notes('policy rule "why"'))).toEqual([
      'fix policy-unclear: The line names no rule, so it changes nothing.',
    ]);
  });
});

describe('reason-unused', () => {
  const allowing = (...lines: string[]): string[] => saidIn(notes('', ...lines));

  test('is silent where the line explains something', () => {
    expect(allowing(...PAID, 'because paid-differs "a tip"')).toEqual([]);
  });

  test('leaves a line without a reason and one of no rule to the rules about those', () => {
    expect(allowing('because paid-differs').filter((said) => said.includes('reason-unused'))).toEqual([]);
    expect(allowing('because paid-difers "a tip"').filter((said) => said.includes('reason-unused'))).toEqual([]);
  });

  test('is silent of a line under the client, which speaks of every visit', () => {
    expect(saidIn(`${CLIENT}\nbecause paid-differs "tips"\nvisit 2026-09-04 wren-abbott\ncut\n`)).toEqual([]);
  });

  test.each([
    ['before', `visit 2026-08-04 wren-abbott\n${PAID.join('\n')}`, 'visit 2026-09-04 wren-abbott'],
    ['after', `visit 2026-10-04 wren-abbott\n${PAID.join('\n')}`, 'visit 2026-09-04 wren-abbott'],
  ])('counts what stands in the visit itself, not %s it', (where, other, own) => {
    const mine = `${own}\nbecause paid-differs "a tip"`;
    const text = [CLIENT, ...(where === 'before' ? [other, mine] : [mine, other]), ''].join('\n');
    expect(saidIn(text).filter((said) => said.includes('reason-unused'))).toEqual([
      'mind reason-unused: `paid-differs` finds nothing in this visit, so the line explains nothing.',
    ]);
  });
});

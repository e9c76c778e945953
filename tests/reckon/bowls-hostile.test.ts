import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineText } from '../../src/journal/where.ts';
import { reckonBowls } from '../../src/reckon/bowl/bowls.ts';
import { usesOf } from '../../src/reckon/bowl/uses.ts';
import { sign, sum, ZERO } from '../../src/text/exact.ts';
import { sliceOf } from '../../src/text/span.ts';
import { journalOfNotes, SHELF } from './bowls-of.ts';

const name = fc.constantFrom('A', 'b2', 'T', 'A2', 'C');
const token = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.constantFrom(
      'clay',
      'cream 7/0',
      'toner pearl',
      'dev-6',
      'bond',
      'water',
      'caly',
      'conditioner',
      'oil',
    ),
  },
  { weight: 3, arbitrary: fc.integer({ min: 0, max: 200 }).map(String) },
  {
    weight: 2,
    arbitrary: fc.constantFrom('6%', '20vol', '7%', '1:2', '1:1.5-1:2', '2p', '0p', '~40', '30-40', '½', '12,5'),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '5 ml',
      '2 scoop',
      '1 pack',
      '3 drops',
      'from A',
      'from C',
      '7.5% from dev-6 dev-9',
      'lot K1',
      '9999999999999999',
      '1e9',
      '"x"',
    ),
  },
);
const mix = fc
  .array(
    fc.array(token, { maxLength: 4 }).map((all) => all.join(' ')),
    { maxLength: 4 },
  )
  .map((parts) => parts.join(' + '));
const day = fc.constantFrom('2026-09-04', '2026-09-05', '2026-09-06');
const line = fc.oneof(
  fc.tuple(name, mix).map(([bowl, parts]) => `bowl ${bowl} ${parts}`),
  fc.tuple(name, mix).map(([bowl, parts]) => `bowl ${bowl} 90 g of ${parts}`),
  fc.tuple(name, mix).map(([bowl, parts]) => `bowl ${bowl} ${parts} = 100`),
  fc.tuple(name, mix).map(([bowl, parts]) => `plus ${bowl} ${parts}`),
  fc.tuple(name, mix).map(([bowl, parts]) => `weighed ${bowl} ${parts}`),
  fc.tuple(name, name, day).map(([bowl, from, date]) => `again ${bowl} from ${date} ${from} 80%`),
  fc.tuple(name, name).map(([bowl, from]) => `again ${bowl} from ${from} 0%`),
  fc.tuple(name, token).map(([bowl, much]) => `more ${bowl} ${much}`),
  fc.tuple(name, token).map(([bowl, much]) => `left ${bowl} ${much} kept`),
  fc.tuple(name, mix).map(([bowl, parts]) => `home ${bowl} 12 + ${parts}`),
);
const visits = fc
  .array(fc.tuple(day, fc.array(line, { maxLength: 6 })), { minLength: 1, maxLength: 3 })
  .map((all) =>
    all.map(([date, lines]) => `visit ${date} wren-abbott\n${lines.map((one) => `  ${one}\n`).join('')}`).join(''),
  );

describe('bowls of any notes', () => {
  it('are reckoned or explained, and point into the notes', () => {
    fc.assert(
      fc.property(visits, fc.boolean(), (notes, shelved) => {
        const journal = journalOfNotes(`${shelved ? SHELF : ''}\n${notes}`);
        const client = journal.clients.get('wren-abbott');
        if (client === undefined) return;
        const memo = new Map();
        for (const visit of client.visits) {
          const bowls = reckonBowls(journal, journal.salon, client, visit, memo);
          for (const bowl of bowls) {
            const open = bowl.portions.some(({ weight }) => weight === undefined);
            expect(bowl.total === undefined).toBe(open || bowl.portions.length === 0);
            if (bowl.total !== undefined)
              expect(sum(bowl.portions.map(({ shown }) => shown ?? ZERO))).toEqual(bowl.shownTotal);
            for (const { place, message } of bowl.problems) {
              const text = lineText(journal, place);
              expect(sliceOf(text, place.at), message).not.toBe('');
            }
          }
          for (const { used, left, mixed } of usesOf(bowls))
            expect([sign(used) >= 0, sign(left) >= 0, sign(mixed) >= 0]).toEqual([true, true, true]);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('are the same whichever visit is asked first', () => {
    fc.assert(
      fc.property(visits, (notes) => {
        const journal = journalOfNotes(`${SHELF}\n${notes}`);
        const client = journal.clients.get('wren-abbott');
        if (client === undefined) return;
        const said = (order: readonly (typeof client.visits)[number][]): string[] => {
          const memo = new Map();
          const found = new Map(
            order.map((visit) => [visit, reckonBowls(journal, journal.salon, client, visit, memo)]),
          );
          return client.visits.flatMap((visit) =>
            (found.get(visit) ?? []).map(({ name: bowl, shownTotal, cost, problems }) =>
              JSON.stringify([bowl, shownTotal, cost, problems], (_, value) =>
                typeof value === 'bigint' ? String(value) : value,
              ),
            ),
          );
        };
        expect(said([...client.visits].reverse())).toEqual(said(client.visits));
      }),
    );
  });
});

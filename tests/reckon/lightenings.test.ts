import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lightenedBy } from '../../src/reckon/lightenings.ts';
import type { Lightening } from '../../src/reckon/model.ts';

const PLACES = [[], ['roots'], ['lengths'], ['top', 'left']] as const;
const DAYS = ['2026-01-01', '2026-02-01', '2026-03-01', '2026-04-01'];

/** What each visit lightened, oldest first; several visits may be of one day. */
const visits = fc
  .array(fc.tuple(fc.nat({ max: 3 }), fc.array(fc.nat({ max: 3 }), { maxLength: 3 })), { maxLength: 9 })
  .map((all) =>
    all
      .toSorted(([a], [b]) => a - b)
      .map(([day, zones], line): Lightening[] =>
        zones.map((zone, at) => ({
          when: DAYS[day] as string,
          zones: PLACES[zone] as readonly string[],
          place: { in: { file: 'a' }, line, at },
        })),
      ),
  );

test('what is kept gives the newest lightening of any places, on any day or on another, as all of them would', () => {
  fc.assert(
    fc.property(visits, fc.nat({ max: 3 }), fc.nat({ max: 3 }), (all, zone, day) => {
      const kept = all.reduce<readonly Lightening[]>(lightenedBy, []);
      const every = all.toReversed().flat();
      const zones = PLACES[zone];
      const isOf = (one: Lightening): boolean => one.zones === zones;
      expect(kept.find(isOf)).toBe(every.find(isOf));
      const isOfOther = (one: Lightening): boolean => isOf(one) && one.when !== DAYS.at(day);
      // A visit asks of days up to its own, so the day left out is the newest.
      if (every.every(({ when }) => when <= (DAYS.at(day) as string)))
        expect(kept.find(isOfOther)).toBe(every.find(isOfOther));
    }),
    { seed: 3 },
  );
});

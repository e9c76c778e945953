import { describe, expect, it } from 'vitest';
import {
  allergies,
  greyShare,
  historyKinds,
  holdsOfVisit,
  lightenedBefore,
  momentOfVisit,
  reactionsOf,
  wasLightened,
} from '../../src/reckon/client/state.ts';
import { numberOf } from '../../src/reckon/client/visit-number.ts';
import { lastOf, reckonedOf } from './reckoned.ts';

const CLIENT = 'client wren-abbott "Wren Abbott"\n';

describe('numberOf and momentOfVisit', () => {
  it('are how many visits stand before one, and when its first bowl goes on', () => {
    const visits = reckonedOf(
      'visit 2026-01-01 9:00 wren-abbott\nvisit 2026-02-01 9:30 wren-abbott\nbowl A 30 neon teal\non 9:50 A\noff 10:20 A\nvisit 2026-03-01 wren-abbott',
    );
    const [first, second, third] = visits;
    expect(second && numberOf(second.client, second.visit)).toBe(1);
    expect(visits.map(momentOfVisit)).toEqual([
      { date: '2026-01-01', minute: 540 },
      { date: '2026-02-01', minute: 590 },
      { date: '2026-03-01', minute: undefined },
    ]);
    expect(third && first && numberOf({ ...third.client, visits: [first.visit] }, third.visit)).toBe(1);
  });
});

describe('holdsOfVisit', () => {
  it('are the client’s and those of earlier visits', () => {
    const notes = `${CLIENT}hold powder\nvisit 2026-09-01 wren-abbott\nhold lightener 8w\nvisit 2026-09-20 wren-abbott\nhold all 1w`;
    expect(holdsOfVisit(lastOf(notes)).map(({ what }) => what)).toEqual(['powder', 'lightener']);
  });
});

describe('reactionsOf', () => {
  const notes = `${CLIENT}test skin 2026-09-10 11:00 cream read 2026-09-12 11:30 reaction "red"
test skin 2026-03-10 gloss positive
test strand 2026-03-10 clay 20min gummy
visit 2026-09-01 14:00 wren-abbott
bowl A 30 clay + 60 dev-6
on 14:10 A hairline
reaction 14:28 A temples burning "went pink"
reaction itching
off 14:30 A
`;

  it('gathers reactions of visits and positive skin tests, oldest first', () => {
    const { client } = lastOf(notes);
    expect(reactionsOf(client, client.visits, undefined)).toMatchObject([
      { date: '2026-03-10', by: 'skin-test', products: ['gloss'] },
      {
        date: '2026-09-01',
        minute: 868,
        by: 'visit',
        bowls: ['A'],
        zones: ['temples'],
        words: ['burning'],
        says: 'went pink',
      },
      { date: '2026-09-01', minute: undefined, by: 'visit', words: ['itching'] },
      { date: '2026-09-12', minute: 690, by: 'skin-test', products: ['cream'], words: ['reaction'], says: 'red' },
    ]);
  });

  it('goes up to a day', () => {
    const { client } = lastOf(notes);
    expect(reactionsOf(client, [], undefined, '2026-09-11').map(({ date }) => date)).toEqual(['2026-03-10']);
    expect(reactionsOf(client, [], undefined, '2026-09-12')).toHaveLength(2);
  });

  it('leaves out a reading that nothing dates', () => {
    const { client } = lastOf(`${CLIENT}test skin read reaction\nvisit 2026-09-01 wren-abbott`);
    expect(reactionsOf(client, [], undefined)).toEqual([]);
  });

  it('takes those of the visits given alone', () => {
    const { client } = lastOf(
      `${CLIENT}visit 2026-08-20 wren-abbott\nreaction itching\nvisit 2026-09-20 wren-abbott\nreaction swelling`,
    );
    const dates = (visits: typeof client.visits): string[] =>
      reactionsOf(client, visits, undefined).map(({ date }) => date);
    expect(dates(client.visits)).toEqual(['2026-08-20', '2026-09-20']);
    expect(dates(client.visits.slice(0, 1))).toEqual(['2026-08-20']);
  });

  it('points at the line that reads the test', () => {
    const { client } = lastOf(
      `${CLIENT}test skin 2026-09-10 cream\ntest skin read 2026-09-12 reaction\nvisit 2026-09-20 wren-abbott`,
    );
    const [reaction] = reactionsOf(client, [], undefined);
    expect(reaction?.place).toMatchObject({ in: client.entries[0], line: 2 });
  });
});

describe('allergies', () => {
  it('are kept as typed, without a line that says there is none', () => {
    const { client } = lastOf(
      `${CLIENT}allergy nickel, latex\nallergy "lanolin"\nallergy zinc "plasters"\nallergy "none known"\nallergy none\nvisit 2026-09-01 wren-abbott`,
    );
    expect(allergies(client).map(({ text }) => text)).toEqual(['nickel latex', 'lanolin', 'zinc plasters']);
  });
});

describe('historyKinds', () => {
  it('gives what was done, without `none`', () => {
    const { client } = lastOf(
      `${CLIENT}history 2024-05 box-colour, henna lengths, ends\nhistory none\nhistory perm\nvisit 2026-09-01 wren-abbott`,
    );
    expect(historyKinds(client)).toMatchObject([
      {
        kind: 'box-colour',
        when: '2024-05',
        zones: ['lengths', 'ends'],
        place: { in: client.entries[0], line: 1 },
      },
      { kind: 'henna', when: '2024-05', zones: ['lengths', 'ends'] },
      { kind: 'perm', when: undefined, zones: [] },
    ]);
  });
});

describe('greyShare', () => {
  const grey = (client: string, start: string): number | undefined => {
    const visit = lastOf(`${CLIENT}${client}\nvisit 2026-09-01 wren-abbott\naim cover\n${start}`);
    return greyShare(visit.client, visit.visit)?.percent;
  };

  it('is the largest found at the start, else on the client’s lines', () => {
    expect(grey('grey 60% temples', 'start roots 6, grey 30% temples, grey 10% crown')).toBe(30);
    expect(grey('grey 30% temples, 10% rest\ngrey 40-50% crown', 'start roots 6')).toBe(50);
    expect(grey('natural 6', 'start roots 6')).toBeUndefined();
    expect(grey('grey 0%', '')).toBe(0);
  });
});

describe('lightenedBefore and wasLightened', () => {
  const notes = `${CLIENT}history 2022 lightener ends
history 2023 perm
history glitter
visit 2026-01-01 wren-abbott
bowl A 30 clay + 60 dev-6
on 10:00 A top
off 10:30 A
visit 2026-02-01 wren-abbott
bowl T 20 toner 9/1 + 20 gloss-act
`;

  it('gives where and when, the newest first', () => {
    const visits = reckonedOf(notes);
    const [first, second] = visits;
    expect(second && lightenedBefore(second, visits)).toMatchObject([
      { when: '2026-01-01', zones: ['top'] },
      { when: '2022', zones: ['ends'] },
    ]);
    expect(first && lightenedBefore({ ...first, date: '2025-12-31' }, visits)).toMatchObject([{ when: '2022' }]);
    expect(first && lightenedBefore({ ...first, date: '2021-12-31' }, [])).toEqual([]);
  });

  it('counts a history line without a date', () => {
    const visit = lastOf(`${CLIENT}history lightener\nvisit 2026-01-01 wren-abbott`);
    expect(wasLightened(visit.client, [], visit)).toBe(true);
  });

  it('counts an earlier bowl of the visit itself', () => {
    const visit = lastOf(
      `${CLIENT}visit 2026-01-01 wren-abbott\nbowl A 30 clay + 60 dev-6\nbowl T 20 toner 9/1 + 20 gloss-act\non 10:00 A\noff 10:30 A\non 10:40 T\noff 10:50 T`,
    );
    expect(wasLightened(visit.client, [], visit)).toBe(false);
    expect(wasLightened(visit.client, [], visit, 600)).toBe(false);
    expect(wasLightened(visit.client, [], visit, 640)).toBe(true);
  });
});

import { describe, expect, test } from 'vitest';
import { forgetRecent, lasting, recently } from '../../src/text/recently.ts';

type Counted = { readonly asked: (key: object) => number; readonly works: () => number };

const counting = (keep: typeof recently): Counted => {
  let works = 0;
  return { asked: keep(() => ++works), works: () => works };
};

describe.each([
  ['recently', recently, 2],
  ['lasting', lasting, 1],
])('%s', (_name, keep, worksAfter) => {
  test('works an answer out once, undefined too', () => {
    const { asked, works } = counting(keep);
    const key = {};
    expect([asked(key), asked(key), works()]).toEqual([1, 1, 1]);
    let times = 0;
    const nothing = keep((_key: object): undefined => {
      times++;
    });
    expect([nothing(key), nothing(key), times]).toEqual([undefined, undefined, 1]);
  });

  test('once answers are let go', () => {
    const { asked, works } = counting(keep);
    const key = {};
    asked(key);
    forgetRecent();
    asked(key);
    expect(works()).toBe(worksAfter);
  });

  test('keeps a bounded number', () => {
    const { asked, works } = counting(keep);
    const keys = Array.from({ length: 30_000 }, () => ({}));
    for (const key of keys) asked(key);
    expect(works()).toBe(30_000);
    asked(keys[29_999] as object);
    expect(works()).toBe(30_000);
    asked(keys[0] as object);
    expect(works()).toBe(30_001);
  });
});

import type { SalonSettings } from '../journal/salon.ts';

type Zones = SalonSettings['zones'];

/** First zones that are kept of one salon; a journal names a few hundred. */
const MOST = 5_000;

/**
 * Keeps what was worked out of two zones: the same few pairs are asked for at every visit. What comes out may hang on
 * the pair and on the salon's own places alone.
 */
export const pairMemo = <R>(work: (a: string, b: string, zones: Zones) => R): typeof work => {
  const ofSalon = new WeakMap<Zones, Map<string, Map<string, R>>>();
  // Nearly always the salon that was asked for last.
  let last: Zones | undefined;
  let ofFirst: Map<string, Map<string, R>> = new Map();
  return (a, b, zones) => {
    if (zones !== last || ofFirst.size > MOST) {
      const known = ofSalon.get(zones);
      ofFirst = known === undefined || known.size > MOST ? new Map() : known;
      ofSalon.set(zones, ofFirst);
      last = zones;
    }
    let ofBoth = ofFirst.get(a);
    if (ofBoth === undefined || ofBoth.size > MOST) {
      ofBoth = new Map();
      ofFirst.set(a, ofBoth);
    }
    const before = ofBoth.get(b);
    if (before !== undefined || ofBoth.has(b)) return before as R;
    const now = work(a, b, zones);
    ofBoth.set(b, now);
    return now;
  };
};

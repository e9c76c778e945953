/** Troubles of several kinds, each told once while it lasts; one that is over may begin again. */
export type Troubles = {
  /** What of a kind is the matter now: keys, and the sentence that tells it. */
  readonly are: (kind: string, now: ReadonlyMap<string, string>) => void;
};

/** Keeps track of troubles; `tell` gets each that begins. */
export const troublesTo = (tell: (what: string) => void): Troubles => {
  const lasting = new Map<string, Set<string>>();
  return {
    are: (kind, now) => {
      const before = lasting.get(kind) ?? new Set();
      lasting.set(kind, new Set(now.keys()));
      for (const [key, what] of now) if (!before.has(key)) tell(what);
    },
  };
};

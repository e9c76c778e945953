/** Values by key, in the order they came. */
export const grouped = <T>(all: readonly T[], keyOf: (one: T) => string): Map<string, T[]> => {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const key = keyOf(one);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return groups;
};

/** The mean of values; of none not a number. */
export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** All values together. */
export const sum = (values: readonly number[]): number => values.reduce((whole, value) => whole + value, 0);

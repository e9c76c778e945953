/** How many items at the front of a list fit, where none fits after one that does not: looked for by halves. */
export const countAtFront = <T>(list: readonly T[], fits: (item: T) => boolean): number => {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (fits(list[middle] as T)) low = middle + 1;
    else high = middle;
  }
  return low;
};

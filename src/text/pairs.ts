/** The values of two lists side by side, as far as the shorter goes. */
export const pairs = <A, B>(first: readonly A[], second: readonly B[]): (readonly [A, B])[] => {
  const beside = second.values();
  return first.flatMap((value) => {
    const next = beside.next();
    return next.done === true ? [] : [[value, next.value] as const];
  });
};

/** Every month from one to another, both counted, `YYYY-MM`. */
export const monthsFrom = (first: string, last: string): string[] => {
  const numberOf = (month: string): number => Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7)) - 1;
  const from = numberOf(first);
  return Array.from({ length: Math.max(0, numberOf(last) - from + 1) }, (_, index) => {
    const month = from + index;
    return `${String(Math.floor(month / 12)).padStart(4, '0')}-${String((month % 12) + 1).padStart(2, '0')}`;
  });
};

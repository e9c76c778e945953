/**
 * What counts as one device, by the address it asks from. Whoever has an address of the long kind has the 2^64 beside it
 * as well (RFC 4291, 2.5.4), so those count as one; several devices of one network may then count as one too.
 */
export const deviceOf = (address: string): string => {
  const plain = address.replace(/%.*$/, '').replace(/^::ffff:(?=\d+\.)/i, '');
  if (!plain.includes(':')) return plain;
  const [before, after] = plain.split('::').map((side) => side.split(':').filter((part) => part !== '')) as [
    string[],
    string[] | undefined,
  ];
  const left = after === undefined ? 0 : Math.max(0, 8 - before.length - after.length);
  const parts = [...before, ...Array<string>(left).fill('0'), ...(after ?? [])];
  return `${parts
    .slice(0, 4)
    .map((part) => Number.parseInt(part, 16).toString(16))
    .join(':')}::/64`;
};

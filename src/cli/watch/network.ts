import { networkInterfaces } from 'node:os';
import { refusal } from '../refusal.ts';

/** An address of this machine on a network: as it is listened at, and as it stands in the address of a page. */
export type NetworkAddress = { readonly at: string; readonly name: string };

/** Addresses that hold on one wire only; browsers take none of them. */
const LINK_LOCAL = /^(169\.254\.|fe[89ab])/i;

/**
 * The addresses by which other machines reach this one. The newer, longer kind counts only where there is no other, since
 * it is hard to type. Throws a refusal when the machine is on no network.
 */
export const networkAddresses = (interfaces: typeof networkInterfaces = networkInterfaces): NetworkAddress[] => {
  const all = Object.values(interfaces())
    .flatMap((some) => some ?? [])
    .filter(({ internal, address }) => !internal && !LINK_LOCAL.test(address));
  const short = all.filter(({ family }) => family === 'IPv4');
  const found = short.length > 0 ? short : all;
  if (found.length === 0)
    throw refusal('This machine is on no network, so nothing is shared.', 'Join the network first.');
  return found.map(({ address, family }) => ({ at: address, name: family === 'IPv4' ? address : `[${address}]` }));
};

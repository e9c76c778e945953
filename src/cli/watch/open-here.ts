import { isSame, newCode } from './guard.ts';
import type { Kept } from './keep-current.ts';
import { livePageAt } from './live.ts';
import { type Answer, type Asked, type Served, serve } from './server.ts';

export const LOOPBACK = '127.0.0.1';

const NOT_THERE: Answer = { status: 404, body: 'There is nothing at this address.\n' };

/** The pages served to this machine alone. */
export type OpenHere = Pick<Served, 'tell' | 'stop'> & { readonly address: string };

export type HereOptions = {
  /** Minutes since midnight, with their part of a minute. */
  readonly minute: () => number;
  /** Gets a fault in the program while a page was asked for; the serving goes on. */
  readonly fault: (error: unknown) => void;
};

/**
 * Serves the pages on this machine's own address, on a free port. A code in the address keeps other users of the machine
 * out; it is the same for as long as the watching goes on. Nothing can be noted there.
 */
export const openHere = async (kept: Kept, { minute, fault }: HereOptions): Promise<OpenHere> => {
  const code = newCode();
  const answer = ({ method, path: [first = '', ...rest] }: Asked): Answer | 'events' => {
    if (!isSame(first, code)) return NOT_THERE;
    if (method === 'POST') return { status: 405, body: 'Pages are only read here.\n', headers: { allow: 'GET, HEAD' } };
    if (rest.length === 0) return { status: 308, body: '', headers: { location: `/${code}/` } };
    return livePageAt(rest.join('/'), kept, { minute, share: false }) ?? NOT_THERE;
  };
  const { port, tell, stop } = await serve({
    at: LOOPBACK,
    names: [LOOPBACK, 'localhost'],
    isIn: ({ path: [first = ''] }) => isSame(first, code),
    answer,
    fault,
  });
  return { tell, stop, address: `http://${LOOPBACK}:${port}/${code}/` };
};

import { performance } from 'node:perf_hooks';
import { deviceOf } from './device.ts';
import { isSame, newCode } from './guard.ts';
import type { Kept } from './keep-current.ts';
import { livePageAt } from './live.ts';
import { lockOut } from './lock-out.ts';
import type { NetworkAddress } from './network.ts';
import type { HereOptions } from './open-here.ts';
import { type Answer, type Asked, type Served, serve } from './server.ts';
import { type Stamped, stampHere } from './stamp-here.ts';

/** The pages served to the network, for a device at the chair. */
export type ShareHere = Pick<Served, 'tell' | 'stop'> & {
  /** The addresses with the code that holds now. */
  readonly addresses: () => readonly string[];
};

export type ShareOptions = HereOptions & {
  readonly at: readonly NetworkAddress[];
  /** A browser opened the pages; the code it came with is spent, and there is a new one. */
  readonly opened: (from: string) => void;
  /** A device tried so many wrong codes that it has to wait before it may try another. */
  readonly guessed: (from: string) => void;
  /** A line was noted from a page. */
  readonly noted: (stamped: Stamped & { readonly isNoted: true }, from: string) => void;
};

const LOCKED: Answer = {
  status: 403,
  body: 'This address needs the code that stands in the terminal where the notes are watched. A code works once.\n',
};
const NOT_THERE: Answer = { status: 404, body: 'There is nothing at this address.\n' };
const READ_ONLY: Answer = { status: 405, body: 'Pages are only read here.\n', headers: { allow: 'GET, HEAD' } };
const WAIT = 'Too many wrong codes came from this device, so none is looked at for a minute.\n';
const AHEAD: Answer = { status: 503, body: 'Not fetched ahead.\n' };

const isLikeCode = (word: string): boolean => /^[a-z2-9]{12}$/.test(word);

const cookieOf = (header: string | undefined, name: string): string | undefined => {
  const pairs = (header ?? '').split(';').map((pair) => pair.trim());
  return pairs.find((pair) => pair.startsWith(`${name}=`))?.slice(name.length + 1);
};

/**
 * Serves the pages on addresses of the network, each at a free port. The first browser that opens the code in the address
 * gets a cookie, and with it the pages until the watching ends; the code is spent then. All is read only but for the lines
 * offered on the live page, which are noted with the time. A device that tries wrong codes has to wait; one that is in has not.
 */
export const shareHere = async (kept: Kept, options: ShareOptions): Promise<ShareHere> => {
  const { at, minute, fault, opened, guessed, noted } = options;
  const guesses = lockOut(() => performance.now());
  // Cookies are told apart by their names alone where two programs serve on one machine.
  const cookieName = `bowlbook-${newCode()}`;
  const secrets: string[] = [];
  let code = newCode();

  const isKnown = (cookie: string | undefined): boolean => {
    const given = cookieOf(cookie, cookieName);
    return given !== undefined && secrets.some((secret) => isSame(secret, given));
  };

  const letIn = (from: string): Answer => {
    const secret = newCode() + newCode();
    secrets.push(secret);
    code = newCode();
    guesses.forgive(deviceOf(from));
    opened(from);
    const cookie = `${cookieName}=${secret}; Path=/; HttpOnly; SameSite=Strict`;
    return { status: 303, body: '', headers: { location: '/', 'set-cookie': cookie } };
  };

  /** What a device that is not in asks for: nothing but the code is anything to it. */
  const answerStranger = ({ method, path, from, isAhead }: Asked): Answer => {
    const [first = '', ...rest] = path;
    if (!isLikeCode(first) || rest.some((part) => part !== '')) return LOCKED;
    const waits = guesses.waits(deviceOf(from));
    if (waits > 0) return { status: 429, body: WAIT, headers: { 'retry-after': `${Math.ceil(waits / 1_000)}` } };
    if (method === 'GET' && isSame(first, code)) return isAhead ? AHEAD : letIn(from);
    if (guesses.wrong(deviceOf(from))) guessed(from);
    return LOCKED;
  };

  const take = ({ body, from, origin, type }: Asked): Answer => {
    // A browser names the origin of whatever it posts; what names none is no page of ours.
    if (origin === undefined || type?.split(';')[0]?.trim() !== 'application/json') return LOCKED;
    const stamped = stampHere(kept.state(), body, Math.floor(minute()));
    if (!stamped.isNoted) return { status: 409, body: `Nothing was noted. ${stamped.why}\n` };
    noted(stamped, from);
    kept.look();
    return { status: 200, body: `Noted: ${stamped.line}\n` };
  };

  const answer = (asked: Asked): Answer | 'events' => {
    const { method, path, cookie } = asked;
    if (!isKnown(cookie)) return answerStranger(asked);
    if (method === 'POST') return path.join('/') === 'stamp' ? take(asked) : READ_ONLY;
    // A device that is in already opens the next code, or goes back to the spent one.
    const [first = '', ...rest] = path;
    if (isLikeCode(first) && rest.every((part) => part === ''))
      return { status: 303, body: '', headers: { location: '/' } };
    return livePageAt(path.join('/'), kept, { minute, share: true }) ?? NOT_THERE;
  };

  const tried = await Promise.allSettled(
    at.map(async ({ at: address, name }) => ({
      name,
      ...(await serve({ at: address, names: [name], isIn: ({ cookie }) => isKnown(cookie), answer, fault })),
    })),
  );
  // Some machines have addresses of networks that nobody else is on, which may not be listened at.
  const served = tried.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
  if (served.length === 0) throw tried.find((one) => one.status === 'rejected')?.reason;
  return {
    addresses: () => served.map(({ name, port }) => `http://${name}:${port}/${code}/`),
    tell: (pages) => {
      for (const one of served) one.tell(pages);
    },
    stop: async () => {
      await Promise.all(served.map((one) => one.stop()));
    },
  };
};

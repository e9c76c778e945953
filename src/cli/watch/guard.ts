import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders, IncomingMessage } from 'node:http';

/** Letters and figures that are not taken for one another when they are typed from a screen. */
const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789';

/** Letters of a code, 59 bits: no one comes upon it by trying. */
const LENGTH = 12;

/** A new code for an address, by the system's own chance. */
export const newCode = (): string => {
  let code = '';
  while (code.length < LENGTH) {
    for (const byte of randomBytes(LENGTH)) {
      // Bytes past the last whole round would favour the first letters.
      if (byte < LETTERS.length * Math.floor(256 / LETTERS.length) && code.length < LENGTH)
        code += LETTERS[byte % LETTERS.length];
    }
  }
  return code;
};

/** Whether two secrets are the same, in a time that does not tell how much of them is. */
export const isSame = (a: string, b: string): boolean => {
  const [one, other] = [a, b].map((text) => createHash('sha256').update(text).digest()) as [Buffer, Buffer];
  return timingSafeEqual(one, other);
};

/** Headers that decide whether a request is ours; of two, one would be looked at here and the other elsewhere. */
const SAID_ONCE = ['host', 'origin', 'sec-fetch-site', 'cookie', 'content-type'];

/**
 * What is answered to a request of a form that no browser sends to a server of pages: another version of the protocol, a
 * target that is no path, no `Host` or two, a body of no stated length. Undefined for any other.
 */
export const misformed = ({
  httpVersion,
  url = '',
  headers,
  headersDistinct,
}: Pick<IncomingMessage, 'httpVersion' | 'url' | 'headers' | 'headersDistinct'>):
  | { readonly status: number; readonly body: string }
  | undefined => {
  if (!['1.0', '1.1'].includes(httpVersion)) return { status: 505, body: 'HTTP/1.1 is spoken here.\n' };
  if (!url.startsWith('/')) return { status: 400, body: 'The target is no path.\n' };
  if (headersDistinct.host === undefined) return { status: 400, body: 'The request names no host.\n' };
  const twice = SAID_ONCE.find((name) => (headersDistinct[name]?.length ?? 0) > 1);
  if (twice !== undefined) return { status: 400, body: `The request has two headers \`${twice}\`.\n` };
  if (headers['transfer-encoding'] !== undefined) return { status: 411, body: 'The length has to be stated.\n' };
  return undefined;
};

/**
 * Whether a request comes from one of our own pages, or from an address typed in. A page of another origin says so in
 * `Origin` or `Sec-Fetch-Site`; one that leads its own name to this machine says so in `Host`.
 */
export const isOurs = (headers: IncomingHttpHeaders, hosts: ReadonlySet<string>): boolean => {
  const { host = '', origin, 'sec-fetch-site': site = 'none' } = headers;
  if (!hosts.has(host.toLowerCase())) return false;
  if (origin !== undefined && !(origin === `http://${host.toLowerCase()}`)) return false;
  return site === 'none' || site === 'same-origin';
};

/** What every answer says: kept by nobody, shown in no frame, read by no other origin. */
export const HEADERS: Readonly<Record<string, string>> = {
  'cache-control': 'no-store',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=()',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
};

/** What a page of ours may load besides: nothing that is not from here. */
export const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

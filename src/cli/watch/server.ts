import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { reasonOf } from '../open-journal.ts';
import { refusal } from '../refusal.ts';
import { HEADERS, isOurs, POLICY } from './guard.ts';

/** An answer to a request for a page, or to one that notes something. */
export type Answer = {
  readonly status: number;
  readonly body: string;
  /** Plain text when none is given. */
  readonly type?: string;
  /** The page's own policy, in the place of the common one. */
  readonly policy?: string;
  readonly headers?: Readonly<Record<string, string>>;
};

/** A request that has passed the guard. */
export type Asked = {
  readonly method: string;
  /** Parts of the path, decoded. */
  readonly path: readonly string[];
  readonly cookie: string | undefined;
  readonly origin: string | undefined;
  readonly type: string | undefined;
  readonly body: string;
  /** The network address that asks. */
  readonly from: string;
  /** Whether a browser fetches it ahead, before anybody wants to see it. */
  readonly isAhead: boolean;
};

export type Served = {
  readonly port: number;
  /** Tells every page that listens. */
  readonly tell: (pages: readonly string[]) => void;
  readonly stop: () => Promise<void>;
};

export type ServeOptions = {
  /** The address to listen at. */
  readonly at: string;
  /** Names by which it is reached, without the port. */
  readonly names: readonly string[];
  /** The answer, or `events` to listen to changes. */
  readonly answer: (asked: Asked) => Answer | 'events';
  /** A fault in the program while a request was answered, or of the system while it listens; the serving goes on. */
  readonly fault: (error: unknown) => void;
  /** For tests: the port, in the place of a free one. */
  readonly port?: number;
};

/** Bytes that a request may bring, pages that may listen at once, milliseconds between two signs of life to them. */
const MOST_BYTES = 2_000;
const MOST_LISTENERS = 50;
const ALIVE = 15_000;

const REFUSED: Answer = { status: 403, body: 'This address answers its own pages only.\n' };
const NOT_THERE: Answer = { status: 404, body: 'There is nothing at this address.\n' };
const FAULT: Answer = {
  status: 500,
  body: 'A fault in the program; the terminal says which. The notes are as they were.\n',
};

const send = (
  response: ServerResponse,
  { status, body, type = 'text/plain', policy = POLICY, headers }: Answer,
): void => {
  const bytes = Buffer.from(body, 'utf8');
  response.writeHead(status, {
    ...HEADERS,
    'content-security-policy': policy,
    'content-type': `${type}; charset=utf-8`,
    'content-length': bytes.length,
    ...headers,
  });
  response.end(response.req.method === 'HEAD' ? undefined : bytes);
};

/** The parts of a path, decoded; undefined for one that leads up or is not well written: none of our pages does. */
const pathOf = (url: string): string[] | undefined => {
  try {
    const parts = (url.split('?')[0] as string).split('/').slice(1).map(decodeURIComponent);
    return parts.some((part) => part === '.' || part === '..' || part.includes('/')) ? undefined : parts;
  } catch {
    return undefined;
  }
};

/** The whole body of a request; why there is none where it is longer than any of ours, or its connection broke off. */
const bodyOf = async (request: IncomingMessage): Promise<{ readonly text: string } | 'long' | 'broken'> => {
  const chunks: Buffer[] = [];
  let length = 0;
  try {
    for await (const chunk of request) {
      length += (chunk as Buffer).length;
      if (length > MOST_BYTES) return 'long';
      chunks.push(chunk as Buffer);
    }
  } catch {
    return 'broken';
  }
  return { text: Buffer.concat(chunks).toString('utf8') };
};

/**
 * Serves on a free port. Requests that do not come from our own pages are refused before anything is looked up. Throws a
 * refusal when the system does not let it listen.
 */
export const serve = async ({ at, names, answer, fault, port = 0 }: ServeOptions): Promise<Served> => {
  const hosts = new Set<string>();
  const listening = new Set<ServerResponse>();

  const listen = (response: ServerResponse): void => {
    if (listening.size >= MOST_LISTENERS) {
      send(response, { status: 503, body: 'Too many pages listen already.\n' });
      return;
    }
    response.writeHead(200, { ...HEADERS, 'content-type': 'text/event-stream' });
    response.write('retry: 1000\n\n');
    listening.add(response);
    response.on('close', () => listening.delete(response));
  };

  const take = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const { method = '', url = '', headers } = request;
    if (!isOurs(headers, hosts)) return send(response, REFUSED);
    const path = pathOf(url);
    // Browsers ask for a picture of the whole address on their own.
    if (path?.join('/') === 'favicon.ico') return send(response, { status: 204, body: '' });
    if (path === undefined) return send(response, NOT_THERE);
    if (!['GET', 'HEAD', 'POST'].includes(method))
      return send(response, { status: 405, body: 'Pages are only read here.\n', headers: { allow: 'GET, HEAD' } });
    const body = await bodyOf(request);
    if (body === 'broken') return void response.destroy();
    if (body === 'long')
      return send(response, { status: 413, body: 'That is too long.\n', headers: { connection: 'close' } });
    const { cookie, origin, 'content-type': type, purpose, 'sec-purpose': ahead = purpose ?? '' } = headers;
    const from = request.socket.remoteAddress ?? '';
    const isAhead = ahead.toString().includes('prefetch');
    const answered = answer({ method, path, cookie, origin, type, body: body.text, from, isAhead });
    if (answered === 'events') listen(response);
    else send(response, answered);
  };

  const server = createServer((request, response) => {
    // A page that goes away while it is written to is nobody's fault.
    response.on('error', () => response.destroy());
    take(request, response).catch((error: unknown) => {
      fault(error);
      if (response.headersSent) response.destroy();
      else send(response, FAULT);
    });
  });
  await new Promise<void>((done, failed) => {
    server.once('error', (error) => failed(refusal(`No page can be served at ${at}: ${reasonOf(error)}.`)));
    server.listen(port, at, done);
  });
  server.on('error', fault);
  const { port: taken } = server.address() as AddressInfo;
  for (const name of names) hosts.add(`${name}:${taken}`);
  const alive = setInterval(() => {
    for (const one of listening) one.write(': \n\n');
  }, ALIVE);

  return {
    port: taken,
    tell: (pages) => {
      for (const one of listening) one.write(`event: change\ndata: ${JSON.stringify(pages)}\n\n`);
    },
    stop: () =>
      new Promise((done) => {
        clearInterval(alive);
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
};

import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { reasonOf } from '../open-journal.ts';
import { refusal } from '../refusal.ts';
import { keepConnections, MOST_BYTES, MOST_HEAD } from './connections.ts';
import { deviceOf } from './device.ts';
import { HEADERS, isOurs, misformed, POLICY } from './guard.ts';
import { takeTurns } from './turns.ts';

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
  /** Whether a request comes from a device that is in. Any other is answered, its body unread, and its connection ends. */
  readonly isIn: (asked: Pick<Asked, 'path' | 'cookie'>) => boolean;
  /** The answer, or `events` to listen to changes. */
  readonly answer: (asked: Asked) => Answer | 'events';
  /** A fault in the program while a request was answered, or of the system while it listens; the serving goes on. */
  readonly fault: (error: unknown) => void;
  /** For tests: the port, in the place of a free one. */
  readonly port?: number;
};

/** Pages that may listen at once: in all, and of one device, where the oldest gives way. */
const MOST_LISTENERS = 50;
const LISTENERS_A_DEVICE = 12;

/** Bytes that may wait for a page that listens and takes nothing in, such as one on a phone that is out of reach. */
const MOST_UNREAD = 65_536;

/** Milliseconds between two signs of life to whoever listens. */
const ALIVE = 15_000;

/** Milliseconds that the head of a request may take, the whole of it, and the wait for the next; how often that is looked at. */
const TIMES = {
  headersTimeout: 5_000,
  requestTimeout: 10_000,
  keepAliveTimeout: 5_000,
  connectionsCheckingInterval: 1_000,
};

const REFUSED: Answer = { status: 403, body: 'This address answers its own pages only.\n' };
const NOT_THERE: Answer = { status: 404, body: 'There is nothing at this address.\n' };
const BUSY: Answer = { status: 503, body: 'This device asks too much at once.\n' };

/** Reading changes no notes; a press may have noted its line before the fault. */
const faultIn = (method: string | undefined): Answer => {
  const notes = method === 'POST' ? 'Look whether it was noted before you press again.' : 'The notes are as they were.';
  return { status: 500, body: `A fault in the program; the terminal says which. ${notes}\n` };
};

const closing = (answer: Answer): Answer => ({ ...answer, headers: { ...answer.headers, connection: 'close' } });

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
export const serve = async ({ at, names, isIn, answer, fault, port = 0 }: ServeOptions): Promise<Served> => {
  const hosts = new Set<string>();
  const listening = new Map<ServerResponse, string>();
  /** Connections that were answered for the last time. */
  const spent = new WeakSet<Socket>();
  const connections = keepConnections();
  const inTurn = takeTurns();

  const listen = (response: ServerResponse, device: string): void => {
    const same = [...listening].flatMap(([one, other]) => (other === device ? [one] : []));
    if (same.length >= LISTENERS_A_DEVICE) same[0]?.destroy();
    else if (listening.size >= MOST_LISTENERS) {
      send(response, { status: 503, body: 'Too many pages listen already.\n' });
      return;
    }
    response.writeHead(200, { ...HEADERS, 'content-type': 'text/event-stream' });
    response.write('retry: 1000\n\n');
    listening.set(response, device);
    response.on('close', () => listening.delete(response));
  };

  const tellAll = (text: string): void => {
    for (const one of listening.keys()) {
      if (one.writableLength > MOST_UNREAD) one.destroy();
      else one.write(text);
    }
  };

  const end = (request: IncomingMessage, response: ServerResponse, last: Answer): void => {
    spent.add(request.socket);
    send(response, closing(last));
  };

  /** Answers a request of a device that is in. */
  const takeOurs = async (request: IncomingMessage, response: ServerResponse, asked: Asked): Promise<void> => {
    if (!connections.ours(request.socket)) return end(request, response, BUSY);
    const body = await bodyOf(request);
    if (body === 'broken') return void response.destroy();
    if (body === 'long') return end(request, response, { status: 413, body: 'That is too long.\n' });
    const answered = answer({ ...asked, body: body.text });
    if (answered === 'events') listen(response, deviceOf(asked.from));
    else send(response, answered);
  };

  const take = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    if (spent.has(request.socket)) return;
    const { method = '', url = '', headers } = request;
    const wrong = misformed(request);
    if (wrong !== undefined) return end(request, response, wrong);
    if (!isOurs(headers, hosts)) return end(request, response, REFUSED);
    const path = pathOf(url);
    // Browsers ask for a picture of the whole address on their own.
    if (path?.join('/') === 'favicon.ico') return end(request, response, { status: 204, body: '' });
    if (path === undefined) return end(request, response, NOT_THERE);
    if (!['GET', 'HEAD', 'POST'].includes(method))
      return end(request, response, {
        status: 405,
        body: 'Pages are only read here.\n',
        headers: { allow: 'GET, HEAD' },
      });
    const { cookie, origin, 'content-type': type, purpose, 'sec-purpose': ahead = purpose ?? '' } = headers;
    const from = request.socket.remoteAddress ?? '';
    const isAhead = ahead.toString().includes('prefetch');
    const asked: Asked = { method, path, cookie, origin, type, body: '', from, isAhead };
    if (isIn(asked)) return takeOurs(request, response, asked);
    const answered = answer(asked);
    end(request, response, answered === 'events' ? NOT_THERE : answered);
  };

  const server = createServer({ ...TIMES, maxHeaderSize: MOST_HEAD }, (request, response) => {
    // A page that goes away while it is written to is nobody's fault.
    response.on('error', () => response.destroy());
    inTurn(deviceOf(request.socket.remoteAddress ?? ''), () => take(request, response))
      .then((isTaken) => {
        if (!isTaken && !spent.has(request.socket)) end(request, response, BUSY);
      })
      .catch((error: unknown) => {
        fault(error);
        if (response.headersSent) response.destroy();
        else send(response, faultIn(request.method));
      });
  });
  // The server's own reader of requests gets a connection only when something was asked on it.
  const readers = server.listeners('connection') as ((this: typeof server, socket: Socket) => void)[];
  server.removeAllListeners('connection');
  server.on('connection', (socket) => {
    connections.take(socket, () => {
      for (const reader of readers) reader.call(server, socket);
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
    tellAll(': \n\n');
  }, ALIVE);

  return {
    port: taken,
    tell: (pages) => tellAll(`event: change\ndata: ${JSON.stringify(pages)}\n\n`),
    stop: () =>
      new Promise((done) => {
        clearInterval(alive);
        server.close(() => done());
        connections.closeAll();
      }),
  };
};

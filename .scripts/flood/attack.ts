import { connect, type Socket } from 'node:net';

/** What a device of the flood does to the address, over and over. */
export const ATTACKS = {
  /** Holds connections open and asks nothing. */
  hold: () => '',
  /** Begins a request and never ends its head. */
  halfOpen: () => 'GET / HTTP/1.1\r\nHost: a\r\nX-',
  /** Begins a body and never ends it. */
  halfBody: (host) => `POST /stamp HTTP/1.1\r\nHost: ${host}\r\nContent-Length: 900\r\n\r\n{`,
  /** Tries codes. */
  guess: (host, nth) => `GET /${`${nth}`.padStart(12, 'a').replaceAll(/[01]/g, 'b')} HTTP/1.1\r\nHost: ${host}\r\n\r\n`,
  /** Asks two thousand times at once. */
  pipelined: (host) => `GET / HTTP/1.1\r\nHost: ${host}\r\n\r\n`.repeat(2_000),
  /** Sends a head of 100 KB. */
  longHead: (host) => `GET / HTTP/1.1\r\nHost: ${host}\r\nX: ${'x'.repeat(100_000)}\r\n\r\n`,
  /** Posts 100 KB. */
  longBody: (host) => `POST /stamp HTTP/1.1\r\nHost: ${host}\r\nContent-Length: 100000\r\n\r\n${'x'.repeat(100_000)}`,
  /** Sends what is no request. */
  noise: () => '\0\x01\x02 \r\n\r\n'.repeat(50),
} as const satisfies Readonly<Record<string, (host: string, nth: number) => string>>;

export type Attack = keyof typeof ATTACKS;

export type Flood = {
  /** Where the pages are served. */
  readonly port: number;
  /** The loopback addresses that stand for devices, such as 127.0.0.2. */
  readonly from: readonly string[];
  readonly attacks: readonly Attack[];
  /** New connections of each device a second, and how many it keeps open at most. */
  readonly rate: number;
  readonly open: number;
};

export type Flooding = {
  /** Connections made, and the answers by their status; `none` for one that was closed without. */
  readonly counts: () => { readonly made: number; readonly answers: Readonly<Record<string, number>> };
  readonly stop: () => void;
};

const HOST = '127.0.0.1';
/** Milliseconds between two rounds. */
const ROUND = 20;

/** Begins a flood of the pages at this machine's own address, bounded in its rate and in what it holds open. */
export const flood = ({ port, from, attacks, rate, open }: Flood): Flooding => {
  const sockets = new Map<string, Set<Socket>>(from.map((address) => [address, new Set()]));
  const answers: Record<string, number> = {};
  let made = 0;
  let owed = 0;

  const one = (localAddress: string, mine: Set<Socket>): void => {
    const attack = attacks[made % attacks.length] as Attack;
    const socket = connect({ port, host: HOST, localAddress });
    made += 1;
    mine.add(socket);
    let come = '';
    const text = ATTACKS[attack](`${HOST}:${port}`, made);
    socket.on('connect', () => socket.write(text));
    socket.on('data', (bytes) => {
      if (come.length < 12) come += bytes.toString('latin1');
    });
    socket.on('error', () => socket.destroy());
    socket.on('close', () => {
      mine.delete(socket);
      const status = /^HTTP\/1\.1 (\d+)/.exec(come)?.[1] ?? 'none';
      answers[status] = (answers[status] ?? 0) + 1;
    });
  };

  const timer = setInterval(() => {
    owed += (rate * ROUND) / 1_000;
    for (; owed >= 1; owed -= 1) for (const [address, mine] of sockets) if (mine.size < open) one(address, mine);
  }, ROUND);

  return {
    counts: () => ({ made, answers }),
    stop: () => {
      clearInterval(timer);
      for (const mine of sockets.values()) for (const socket of mine) socket.destroy();
    },
  };
};

import type { Socket } from 'node:net';
import { deviceOf } from './device.ts';

/*
 * Who may stay connected. A connection is a stranger's until a request on it shows that its device is in, and few of those
 * are kept: of one device, and of all together. The newest is always taken and the oldest gives way, so that nobody who
 * holds connections open keeps a device out. What is known to be ours gives way to no stranger.
 */

/** Strangers' connections that are kept: of one device (a browser opens up to six to one place), and of all. */
const STRANGERS_A_DEVICE = 6;
const STRANGERS = 32;

/** Connections of devices that are in: of one, and of all. */
const OURS_A_DEVICE = 24;
const OURS = 120;

/** Devices that are in and are remembered, so that a stranger elsewhere does not push out their next connection. */
const REMEMBERED = 64;

/** Bytes that the head of a request may have, and bytes that may have come behind the first. */
export const MOST_HEAD = 8_192;
export const MOST_BYTES = 2_000;

/** Milliseconds in which the head of the first request has to come. */
const HEAD_WAIT = 5_000;

const HEAD_END = '\r\n\r\n';
const TOO_LONG = 'HTTP/1.1 413 Content Too Large\r\nConnection: close\r\nContent-Length: 0\r\n\r\n';

export type Connections = {
  /** Takes a new connection, and hands it on once it has asked something. */
  readonly take: (socket: Socket, handOn: () => void) => void;
  /** Marks a connection as one of a device that is in; false where that has too many already. */
  readonly ours: (socket: Socket) => boolean;
  /** Connections that are kept now: strangers', and ours. */
  readonly counts: () => { readonly strangers: number; readonly ours: number };
  readonly closeAll: () => void;
};

/**
 * Waits until the head of a request is whole, and hands the connection on; a reader of requests takes in all of what came
 * at once, so one with hundreds behind the first is refused here.
 */
const awaitHead = (socket: Socket, handOn: () => void): void => {
  let come: Buffer = Buffer.alloc(0);
  const timer = setTimeout(() => socket.destroy(), HEAD_WAIT);
  const leave = (): void => {
    clearTimeout(timer);
    socket.off('data', more).off('end', ended).off('close', leave);
  };
  const ended = (): void => void socket.destroy();
  const more = (bytes: Buffer): void => {
    come = come.length === 0 ? bytes : Buffer.concat([come, bytes]);
    const end = come.indexOf(HEAD_END);
    // A head that is too long, or in lines of another kind, is refused by the reader of requests.
    if (end < 0 && come.length <= MOST_HEAD && !come.includes('\n\n')) return;
    leave();
    if (end >= 0 && end <= MOST_HEAD && come.length > end + HEAD_END.length + MOST_BYTES) {
      socket.end(TOO_LONG, () => socket.destroy());
      return;
    }
    socket.pause();
    socket.unshift(come.subarray(0, MOST_HEAD + HEAD_END.length + MOST_BYTES));
    handOn();
    socket.resume();
  };
  socket.on('data', more).on('end', ended).on('close', leave);
};

/** Connections with nobody connected. */
export const keepConnections = (): Connections => {
  const strangers = new Map<Socket, string>();
  const ours = new Map<Socket, string>();
  const remembered = new Set<string>();

  const remember = (device: string): void => {
    remembered.delete(device);
    remembered.add(device);
    const [oldest = ''] = remembered;
    if (remembered.size > REMEMBERED) remembered.delete(oldest);
  };

  const of = (among: ReadonlyMap<Socket, string>, device: string): Socket[] =>
    [...among].flatMap(([socket, other]) => (other === device ? [socket] : []));

  /** The oldest goes; the map keeps them in the order in which they came. */
  const drop = (socket: Socket | undefined): void => {
    if (socket === undefined) return;
    strangers.delete(socket);
    socket.destroy();
  };

  return {
    take: (socket, handOn) => {
      const device = deviceOf(socket.remoteAddress ?? '');
      const same = of(strangers, device);
      if (same.length >= STRANGERS_A_DEVICE) drop(same[0]);
      if (strangers.size >= STRANGERS) {
        const unknown = [...strangers].find(([, other]) => !remembered.has(other));
        drop(unknown?.[0] ?? strangers.keys().next().value);
      }
      strangers.set(socket, device);
      socket.on('error', () => socket.destroy());
      socket.on('close', () => {
        strangers.delete(socket);
        ours.delete(socket);
      });
      awaitHead(socket, handOn);
    },
    ours: (socket) => {
      const device = deviceOf(socket.remoteAddress ?? '');
      remember(device);
      if (ours.has(socket)) return true;
      if (ours.size >= OURS || of(ours, device).length >= OURS_A_DEVICE) return false;
      strangers.delete(socket);
      // One that broke off meanwhile is counted no more.
      if (!socket.destroyed) ours.set(socket, device);
      return true;
    },
    counts: () => ({ strangers: strangers.size, ours: ours.size }),
    closeAll: () => {
      for (const socket of [...strangers.keys(), ...ours.keys()]) socket.destroy();
    },
  };
};

import { readFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect, type Socket } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ATTACKS, type Attack, type Flooding, flood } from '../../.scripts/flood/attack.ts';
import { keepConnections } from '../../src/cli/watch/connections.ts';
import { deviceOf } from '../../src/cli/watch/device.ts';
import { lockOut } from '../../src/cli/watch/lock-out.ts';
import { type ShareHere, shareHere } from '../../src/cli/watch/share-here.ts';
import { takeTurns } from '../../src/cli/watch/turns.ts';
import { ask, type Got } from './asking.ts';
import { sendRaw, statusesIn } from './raw.ts';
import { DAY, notesOf, SHELF, until, type Watched, watchFolder } from './watching.ts';

const VISIT = `visit ${DAY} 14:00 wren
  bowl A 40 clay + 20vol 1:2
  bowl B 40 clay + 20vol 1:2
  on 14:20 A crown
`;

let watched: Watched;
let shared: ShareHere;
const faults: unknown[] = [];
const told: string[] = [];

const address = (): URL => new URL(shared.addresses()[0] ?? '');
const port = (): number => Number(address().port);

beforeAll(async () => {
  watched = await watchFolder({ 'shelf.bowl': SHELF, 'a.bowl': notesOf('wren') + VISIT });
  shared = await shareHere(watched.kept, {
    at: [{ at: '127.0.0.1', name: '127.0.0.1' }],
    minute: () => 14 * 60 + 35,
    fault: (error) => faults.push(error),
    opened: (from) => told.push(`opened from ${from}`),
    guessed: (from) => told.push(`guessed from ${from}`),
    noted: ({ line }) => told.push(`noted ${line}`),
  });
});

afterAll(() => shared?.stop());

const letIn = async (): Promise<string> => {
  const { headers } = await ask(address().href);
  return String(headers['set-cookie']).split(';')[0] ?? '';
};

const press = (cookie: string, line: string): Promise<Got> =>
  ask(
    `${address().origin}/stamp`,
    { cookie, origin: address().origin, 'content-type': 'application/json' },
    'POST',
    JSON.stringify({ client: 'wren', line }),
  );

const known = (text: string): Promise<void> =>
  until('the notes are taken in', () =>
    [...watched.kept.state().settled.journal.sources.values()].some(({ lines }) =>
      lines.some((line) => line.includes(text)),
    ),
  );

describe('a request of a form that no page of ours sends', () => {
  const host = (): string => `Host: ${address().host}\r\n`;

  /** Each with the code that lets in, so that nothing but its form keeps it out. */
  const FORMS: readonly (readonly [string, number | undefined, (code: string) => string])[] = [
    ['two hosts', 400, (code) => `GET ${code} HTTP/1.1\r\n${host()}Host: salon.example\r\n\r\n`],
    ['two hosts, the other first', 400, (code) => `GET ${code} HTTP/1.1\r\nHost: salon.example\r\n${host()}\r\n`],
    ['twice the same host', 400, (code) => `GET ${code} HTTP/1.1\r\n${host()}${host()}\r\n`],
    ['no host', 400, (code) => `GET ${code} HTTP/1.1\r\n\r\n`],
    ['no host, in HTTP/1.0', 400, (code) => `GET ${code} HTTP/1.0\r\n\r\n`],
    ['an empty host', 403, (code) => `GET ${code} HTTP/1.1\r\nHost:\r\n\r\n`],
    ['another host in HTTP/1.0', 403, (code) => `GET ${code} HTTP/1.0\r\nHost: salon.example\r\n\r\n`],
    ['a host with a name before it', 403, (code) => `GET ${code} HTTP/1.1\r\nHost: a@${address().host}\r\n\r\n`],
    ['a blank before the colon of the host', 400, (code) => `GET ${code} HTTP/1.1\r\nHost : ${address().host}\r\n\r\n`],
    ['HTTP/2.0', 505, (code) => `GET ${code} HTTP/2.0\r\n${host()}\r\n`],
    ['HTTP/0.9', undefined, (code) => `GET ${code}\r\n`],
    ['the whole address as its target', 400, (code) => `GET ${address().origin}${code} HTTP/1.1\r\n${host()}\r\n`],
    ['another address as its target', 400, (code) => `GET http://salon.example${code} HTTP/1.1\r\n${host()}\r\n`],
    ['a star as its target', 400, () => `OPTIONS * HTTP/1.1\r\n${host()}\r\n`],
    ['a way through', undefined, () => `CONNECT salon.example:80 HTTP/1.1\r\n${host()}\r\n`],
    ['a carriage return in a header', 400, (code) => `GET ${code} HTTP/1.1\r\n${host()}X: a\rOrigin: b\r\n\r\n`],
    ['bare line feeds', 400, (code) => `GET ${code} HTTP/1.1\nHost: ${address().host}\n\n`],
    ['a line feed in a header', 400, (code) => `GET ${code} HTTP/1.1\r\n${host()}X: a\nb\r\n\r\n`],
    ['a null in a header', 400, (code) => `GET ${code} HTTP/1.1\r\n${host()}X: a\0b\r\n\r\n`],
    ['a null in its target', 400, (code) => `GET ${code}\0 HTTP/1.1\r\n${host()}\r\n`],
    ['a folded header', 400, (code) => `GET ${code} HTTP/1.1\r\n${host()}X: a\r\n b\r\n\r\n`],
    ['a folded host', 400, (code) => `GET ${code} HTTP/1.1\r\nHost:\r\n ${address().host}\r\n\r\n`],
    ['a header that begins with a blank', 400, (code) => `GET ${code} HTTP/1.1\r\n X: a\r\n${host()}\r\n`],
    [
      'chunks and a length',
      400,
      (code) => `POST ${code} HTTP/1.1\r\n${host()}Transfer-Encoding: chunked\r\nContent-Length: 4\r\n\r\n0\r\n\r\n`,
    ],
    ['chunks', 411, (code) => `POST ${code} HTTP/1.1\r\n${host()}Transfer-Encoding: chunked\r\n\r\n0\r\n\r\n`],
    ['chunks of another kind', 400, (code) => `POST ${code} HTTP/1.1\r\n${host()}Transfer-Encoding: xchunked\r\n\r\n0`],
    ['two lengths', 400, (code) => `POST ${code} HTTP/1.1\r\n${host()}Content-Length: 0\r\nContent-Length: 5\r\n\r\n`],
    ['a length below nothing', 400, (code) => `POST ${code} HTTP/1.1\r\n${host()}Content-Length: -1\r\n\r\n`],
    ['two origins', 400, (code) => `GET ${code} HTTP/1.1\r\n${host()}Origin: null\r\nOrigin: null\r\n\r\n`],
    ['a head of 9 KB', 431, (code) => `GET ${code} HTTP/1.1\r\n${host()}X: ${'x'.repeat(9_000)}\r\n\r\n`],
    ['a head of 100 KB', 431, (code) => `GET ${code} HTTP/1.1\r\n${host()}X: ${'x'.repeat(100_000)}\r\n\r\n`],
    [
      'a change to another protocol',
      403,
      () => `GET / HTTP/1.1\r\n${host()}Connection: Upgrade\r\nUpgrade: h2c\r\n\r\n`,
    ],
  ];

  test.each(FORMS)('is refused: %s', async (_, status, form) => {
    const before = address().href;
    const come = await sendRaw({ port: port(), isLast: status === undefined }, form(address().pathname));
    expect(statusesIn(come)).toEqual(status === undefined ? [] : [status]);
    expect(come).not.toMatch(/set-cookie|wren/i);
    expect(address().href).toBe(before);
  });

  test('writes no header of its own into an answer', async () => {
    for (const path of ['/%0d%0aset-cookie:%20a=b/', '/a%0aX:%20b', '/?%0d%0aX: b'])
      expect(await sendRaw({ port: port() }, `GET ${path} HTTP/1.1\r\n${host()}\r\n`)).not.toMatch(
        /^(set-cookie|x):/im,
      );
  });
});

describe('several requests at once on one connection', () => {
  const get = (path: string, cookie = ''): string =>
    `GET ${path} HTTP/1.1\r\nHost: ${address().host}\r\n${cookie === '' ? '' : `Cookie: ${cookie}\r\n`}\r\n`;

  test('are answered in order to a device that is in', async () => {
    const cookie = await letIn();
    const paths = ['/part', '/live.css', '/nothing', '/live.js', '/index.html'];
    const last = get('/nothing', `${cookie}\r\nConnection: close`);
    const come = await sendRaw({ port: port() }, paths.map((path) => get(path, cookie)).join('') + last);
    const answers = come
      .split(/(?=HTTP\/1\.1 \d)/)
      .map((answer) => [statusesIn(answer)[0], /^content-type: ([^;]*)/m.exec(answer)?.[1]]);
    expect(answers).toEqual([
      [200, 'text/html'],
      [200, 'text/css'],
      [404, 'text/plain'],
      [200, 'text/javascript'],
      [200, 'text/html'],
      [404, 'text/plain'],
    ]);
  });

  test('are one answer to a stranger, and his connection ends', async () => {
    expect(statusesIn(await sendRaw({ port: port() }, get('/part').repeat(30)))).toEqual([403]);
  });

  test('let a stranger in by the first alone, and by none behind one that is refused', async () => {
    const before = address().href;
    expect(statusesIn(await sendRaw({ port: port() }, get('/part') + get(address().pathname)))).toEqual([403]);
    expect(address().href).toBe(before);
    const come = await sendRaw({ port: port() }, get(address().pathname) + get('/part'));
    expect(statusesIn(come)).toEqual([303]);
  });

  test('by the thousand are refused whole', async () => {
    expect(statusesIn(await sendRaw({ port: port() }, get('/part').repeat(2_000)))).toEqual([413]);
  });
});

/** Opens a line to the changes of the pages; gives whether it was closed. */
const listen = (cookie: string): Promise<{ readonly isClosed: () => boolean; readonly end: () => void }> =>
  new Promise((done, failed) => {
    let closed = false;
    const asked = request(`${address().origin}/events`, { headers: { cookie }, agent: false }, (answer) => {
      answer.resume();
      answer.on('error', () => undefined);
      answer.on('close', () => {
        closed = true;
      });
      done({ isClosed: () => closed, end: () => void asked.destroy() });
    });
    asked.on('error', failed);
    asked.end();
  });

test('of one device twelve pages listen at once, and the oldest gives way', async () => {
  const cookie = await letIn();
  const all: Awaited<ReturnType<typeof listen>>[] = [];
  for (let times = 0; times < 14; times++) all.push(await listen(cookie));
  await until('two gave way', () => all.filter(({ isClosed }) => isClosed()).length === 2);
  expect(all.slice(0, 2).every(({ isClosed }) => isClosed())).toBe(true);
  for (const { end } of all) end();
});

describe('trying codes', () => {
  const tryCode = (nth: number, from: string): Promise<string> =>
    sendRaw({ port: port(), from }, `GET /${'abcdefghjkm'}${nth + 2}/ HTTP/1.1\r\nHost: ${address().host}\r\n\r\n`);

  test('makes a device wait, for the right one too, and no other, nor one that is in', async () => {
    const cookie = await letIn();
    told.length = 0;
    const from = '127.0.0.1';
    const statuses: number[] = [];
    for (let nth = 0; nth < 7; nth++) statuses.push(...statusesIn(await tryCode(nth, from)));
    expect(statuses).toEqual([403, 403, 403, 403, 403, 429, 429]);
    expect(told).toEqual(['guessed from 127.0.0.1']);
    const before = address().href;
    const right = await ask(before);
    expect([right.status, right.headers['set-cookie']]).toEqual([429, undefined]);
    expect(Number(right.headers['retry-after'])).toBeGreaterThan(0);
    expect(address().href).toBe(before);
    // The device that is in asks from the very same address.
    expect((await ask(`${address().origin}/part`, { cookie })).status).toBe(200);
    expect((await press(cookie, 'on B')).body).toBe('Noted: on 14:35 B\n');
    await known('on 14:35 B');
    // Another one has its five tries, and comes in.
    expect(statusesIn(await tryCode(0, '127.0.0.9'))).toEqual([403]);
    const other = await sendRaw(
      { port: port(), from: '127.0.0.9' },
      `GET ${address().pathname} HTTP/1.1\r\nHost: ${address().host}\r\n\r\n`,
    );
    expect(statusesIn(other)).toEqual([303]);
  });

  test('is remembered of so many devices and no more, and forgiven after a minute each', () => {
    let now = 0;
    const guesses = lockOut(() => now);
    for (let device = 0; device < 10_000; device++) guesses.wrong(`${device}`);
    expect(guesses.size()).toBe(256);
    for (let tries = 1; tries <= 4; tries++) expect(guesses.wrong('one')).toBe(false);
    expect(guesses.waits('one')).toBe(0);
    expect(guesses.wrong('one')).toBe(true);
    expect(guesses.waits('one')).toBe(60_000);
    expect(guesses.waits('other')).toBe(0);
    now = 60_000;
    expect(guesses.waits('one')).toBe(0);
    // One more try, and the wait begins anew.
    expect(guesses.wrong('one')).toBe(true);
    expect(guesses.waits('one')).toBe(60_000);
    guesses.forgive('one');
    expect(guesses.waits('one')).toBe(0);
    expect(guesses.wrong('one')).toBe(false);
  });
});

test('a device is an address of the short kind, and the first half of one of the long kind', () => {
  expect(['192.0.2.7', '::ffff:192.0.2.7', '::FFFF:192.0.2.7'].map(deviceOf)).toEqual(Array(3).fill('192.0.2.7'));
  expect(
    ['2001:db8:0:7::1', '2001:db8:0:7:ffff:ffff:ffff:ffff', '2001:0db8::7:0:0:0:9', '2001:DB8:0:7::%eth0'].map(
      deviceOf,
    ),
  ).toEqual(Array(4).fill('2001:db8:0:7::/64'));
  expect(deviceOf('2001:db8:0:8::1')).not.toBe(deviceOf('2001:db8:0:7::1'));
  expect(['::1', '::', '2001:db8::'].map(deviceOf)).toEqual(['0:0:0:0::/64', '0:0:0:0::/64', '2001:db8:0:0::/64']);
  expect(deviceOf('')).toBe('');
});

describe('turns', () => {
  test('are one after another for a device, with others in between', async () => {
    const inTurn = takeTurns();
    const order: string[] = [];
    const work = (name: string) => (): Promise<void> => {
      order.push(name);
      return Promise.resolve();
    };
    const many = ['a1', 'a2', 'a3', 'a4'].map((name) => inTurn('a', work(name)));
    await Promise.all([...many, inTurn('b', work('b1'))]);
    expect(order).toEqual(['a1', 'b1', 'a2', 'a3', 'a4']);
  });

  test('are refused to a device of which too many wait, and go on after a fault and after work that never ends', async () => {
    const inTurn = takeTurns();
    const never = (): Promise<void> => new Promise(() => undefined);
    void inTurn('a', never);
    const failing = inTurn('a', () => Promise.reject(new Error('a fault')));
    const waiting = Array.from({ length: 63 }, () => inTurn('a', () => Promise.resolve()));
    expect(await inTurn('a', never)).toBe(false);
    expect(await inTurn('b', () => Promise.resolve())).toBe(true);
    await expect(failing).rejects.toThrow('a fault');
    expect(await Promise.all(waiting.slice(0, 62))).toEqual(Array(62).fill(true));
  });
});

/** A connection that notes what is done to it. */
const fakeSocket = (remoteAddress: string): { readonly socket: Socket; readonly isCut: () => boolean } => {
  let destroyed = false;
  const socket = {
    remoteAddress,
    get destroyed() {
      return destroyed;
    },
    on: () => socket,
    off: () => socket,
    destroy: () => {
      destroyed = true;
    },
  };
  return { socket: socket as unknown as Socket, isCut: () => destroyed };
};

describe('connections', () => {
  test('of strangers are few, the oldest gives way, and one of a device that is in gives way to none', () => {
    const connections = keepConnections();
    const take = (from: string): ReturnType<typeof fakeSocket> => {
      const one = fakeSocket(from);
      connections.take(one.socket, () => undefined);
      return one;
    };
    const ours = take('192.0.2.1');
    expect(connections.ours(ours.socket)).toBe(true);
    const begun = take('192.0.2.1');
    const first = Array.from({ length: 8 }, () => take('192.0.2.2'));
    expect(first.map(({ isCut }) => isCut())).toEqual([true, true, ...Array(6).fill(false)]);
    for (let device = 3; device < 200; device++) take(`192.0.2.${device}`);
    expect(connections.counts()).toEqual({ strangers: 32, ours: 1 });
    expect(first.every(({ isCut }) => isCut())).toBe(true);
    expect([ours.isCut(), begun.isCut()]).toEqual([false, false]);
    connections.closeAll();
    expect([ours.isCut(), begun.isCut()]).toEqual([true, true]);
  });

  test('of one device that is in are bounded too', () => {
    const connections = keepConnections();
    const are = Array.from({ length: 30 }, () => {
      const { socket } = fakeSocket('192.0.2.1');
      connections.take(socket, () => undefined);
      return connections.ours(socket);
    });
    expect(are.filter(Boolean)).toHaveLength(24);
  });
});

/** Whether this system lets a device be stood for by another address of its own; some know one alone. */
const hasOthers = (): Promise<boolean> =>
  new Promise((done) => {
    const socket = connect({ port: port(), host: '127.0.0.1', localAddress: '127.0.0.2' }, () => {
      socket.destroy();
      done(true);
    });
    socket.on('error', () => done(false));
  });

test('a flood of half requests, guesses and thousands at once keeps no other device from its pages and presses', async () => {
  if (!(await hasOthers())) return;
  // The device that tried codes above is the one that this one shares its address with; it waits, and comes in later.
  const from = ['127.0.0.9', '127.0.0.2', '127.0.0.3', '127.0.0.4'];
  const get = `GET ${address().pathname} HTTP/1.1\r\nHost: ${address().host}\r\n\r\n`;
  const cookie = /^set-cookie: ([^;]*)/im.exec(await sendRaw({ port: port(), from: '127.0.0.7' }, get))?.[1] ?? '';
  expect(cookie).not.toBe('');
  let flooding: Flooding | undefined;
  try {
    flooding = flood({ port: port(), from, attacks: Object.keys(ATTACKS) as Attack[], rate: 30, open: 40 });
    const { counts } = flooding;
    await until('it has begun', () => counts().made > 60);
    const lines = ['check A crown', 'off A crown', 'off B'];
    for (const line of lines) {
      for (let times = 0; times < 5; times++)
        expect((await ask(`${address().origin}/part`, { cookie })).status).toBe(200);
      const stamped = line.replace(' ', ' 14:35 ');
      expect((await press(cookie, line)).body).toBe(`Noted: ${stamped}\n`);
      await known(stamped);
    }
    await until('it has gone on', () => counts().made > 200);
    const { answers } = counts();
    expect(
      Object.keys(answers).every((status) => ['none', '400', '403', '408', '413', '429', '431'].includes(status)),
    ).toBe(true);
    expect(answers['403']).toBeGreaterThan(0);
    expect(answers['413']).toBeGreaterThan(0);
  } finally {
    flooding?.stop();
  }
  const notes = readFileSync(join(watched.root, 'a.bowl'), 'utf8');
  expect(notes.slice(notes.indexOf('  on 14:35 B'))).toBe(
    '  on 14:35 B\n  check 14:35 A crown\n  off 14:35 A crown\n  off 14:35 B\n',
  );
  expect(faults).toEqual([]);
});

import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { networkAddresses } from '../../src/cli/watch/network.ts';
import { type ShareHere, shareHere } from '../../src/cli/watch/share-here.ts';
import { ask } from './asking.ts';
import { DAY, notesOf, SHELF, until, type Watched, watchFolder } from './watching.ts';

const VISIT = `visit ${DAY} 14:00 wren
  bowl A 40 clay + 20vol 1:2
  bowl B 30 clay + 20vol 1:2
  on 14:20 A crown
`;

/** What stands after her visit in the same file, and stays where it is. */
const AFTER = `
client nia "NIA"
  natural 5
`;

let watched: Watched;
let shared: ShareHere;
const told: string[] = [];
const faults: unknown[] = [];

const file = (): string => join(watched.root, 'a.bowl');
const origin = (): string => new URL(shared.addresses()[0] ?? '').origin;

/** Lets a device in with the code that holds now; gives what it sends from then on. */
const letIn = async (): Promise<Record<string, string>> => {
  const { headers } = await ask(shared.addresses()[0] ?? '');
  return { cookie: String(headers['set-cookie']).split(';')[0] ?? '' };
};

const press = async (
  line: string,
  { client = 'wren', headers = {}, cookie }: { client?: string; headers?: Record<string, string>; cookie: string },
): Promise<[number, string]> => {
  const sent = { cookie, origin: origin(), 'content-type': 'application/json', ...headers };
  const { status, body } = await ask(`${origin()}/stamp`, sent, 'POST', JSON.stringify({ client, line }));
  return [status, body];
};

/** Waits until the notes are known as they stand, so that a press is not refused for that. */
const known = (text: string): Promise<void> =>
  until('the notes are taken in', () => {
    const { sources } = watched.kept.state().settled.journal;
    return sources.get(file())?.lines.some((line) => line.includes(text)) === true;
  });

beforeAll(async () => {
  watched = await watchFolder({ 'shelf.bowl': SHELF, 'a.bowl': notesOf('wren') + VISIT + AFTER });
  shared = await shareHere(watched.kept, {
    at: [{ at: '127.0.0.1', name: '127.0.0.1' }],
    minute: () => 14 * 60 + 35.9,
    fault: (error) => faults.push(error),
    opened: (from) => told.push(`opened from ${from}`),
    guessed: (from) => told.push(`guessed from ${from}`),
    noted: ({ line, at }, from) => told.push(`${from} noted ${line} at ${at}`),
  });
});

afterAll(() => shared?.stop());

describe('the code in the address', () => {
  test('lets one browser in, and is spent', async () => {
    const [address = ''] = shared.addresses();
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/[a-z2-9]{12}\/$/);
    const first = await ask(address);
    expect([first.status, first.headers.location]).toEqual([303, '/']);
    expect(String(first.headers['set-cookie'])).toMatch(
      /^bowlbook-[a-z2-9]{12}=[a-z2-9]{24}; Path=\/; HttpOnly; SameSite=Strict$/,
    );
    expect(told.pop()).toBe('opened from 127.0.0.1');
    const second = await ask(address);
    expect([second.status, second.headers['set-cookie']]).toEqual([403, undefined]);
    expect(second.body).toContain('needs the code that stands in the terminal');
    expect(shared.addresses()[0]).not.toBe(address);
  });

  test('is not spent by a look at its headers, a page fetched ahead, nor a page of another origin', async () => {
    const [address = ''] = shared.addresses();
    const host = 'salon.example';
    const tries: [number, string, Record<string, string>][] = [
      [403, 'HEAD', {}],
      [403, 'POST', { origin: origin() }],
      [503, 'GET', { 'sec-purpose': 'prefetch;prerender' }],
      [503, 'GET', { purpose: 'prefetch' }],
      [403, 'GET', { 'sec-fetch-site': 'cross-site' }],
      [403, 'GET', { origin: 'http://salon.example' }],
      [403, 'GET', { host }],
    ];
    for (const [status, method, headers] of tries)
      expect([headers, (await ask(address, headers, method)).status]).toEqual([headers, status]);
    expect(shared.addresses()[0]).toBe(address);
    expect((await ask(address)).status).toBe(303);
  });

  test('opened again by a device that is in leads it to the pages, and is not spent by it', async () => {
    const spent = shared.addresses()[0] ?? '';
    const device = await letIn();
    const fresh = shared.addresses()[0] ?? '';
    for (const address of [spent, fresh, fresh.slice(0, -1)]) {
      const { status, headers } = await ask(address, device);
      expect([status, headers.location, headers['set-cookie']]).toEqual([303, '/', undefined]);
    }
    expect(shared.addresses()[0]).toBe(fresh);
  });
});

describe('the pages', () => {
  const PATHS = ['', 'part', 'events', 'index.html', 'findings.html', 'clients/wren.html', 'live.js', 'live.css'];

  test.each(PATHS)('are kept from whoever has no cookie: %j', async (path) => {
    const { cookie } = await letIn();
    const [name, secret = ''] = cookie?.split('=') ?? [];
    for (const tried of [undefined, `${name}=`, `${name}=${secret.slice(1)}`, `x=${secret}`, `x${cookie}`]) {
      const { status, body } = await ask(`${origin()}/${path}`, tried === undefined ? {} : { cookie: tried });
      expect([tried, status]).toEqual([tried, 403]);
      expect(body.toLowerCase()).not.toContain('wren');
    }
  });

  test('are there for a device that was let in, among other cookies, and for a second one', async () => {
    for (const { cookie } of [await letIn(), await letIn()])
      for (const path of PATHS.filter((one) => one !== 'events')) {
        const { status, headers } = await ask(`${origin()}/${path}`, { cookie: `a=b; ${cookie}; c=d` });
        expect([path, status]).toEqual([path, 200]);
        expect(headers['access-control-allow-origin']).toBeUndefined();
        expect(headers['content-security-policy']).not.toMatch(/unsafe|\*/);
      }
  });

  test('answer no other name, no other origin and no other place, cookie or not', async () => {
    const device = await letIn();
    for (const headers of [
      { host: 'salon.example' },
      { origin: 'http://127.0.0.1:1' },
      { 'sec-fetch-site': 'same-site' },
    ])
      expect((await ask(`${origin()}/part`, { ...device, ...headers })).status).toBe(403);
    for (const path of ['a.bowl', '../a.bowl', '%2e%2e/a.bowl', 'clients/', 'stamp'])
      expect([path, (await ask(`${origin()}/${path}`, device)).status]).toEqual([path, 404]);
  });

  test('offer large buttons for what is on, and for what can go on', async () => {
    const { body } = await ask(`${origin()}/`, await letIn());
    expect([...body.matchAll(/data-line="([^"]*)"/g)].map(([, line]) => line)).toEqual([
      'check A crown',
      'off A crown',
      'on B',
    ]);
  });
});

describe('a press', () => {
  test('adds the line with the time to her visit, and no other byte changes', async () => {
    const device = await letIn();
    told.length = 0;
    const before = readFileSync(file(), 'utf8');
    expect(await press('check A crown', { cookie: device.cookie ?? '' })).toEqual([
      200,
      'Noted: check 14:35 A crown\n',
    ]);
    expect(readFileSync(file(), 'utf8')).toBe(
      before.replace('  on 14:20 A crown\n', '  on 14:20 A crown\n  check 14:35 A crown\n'),
    );
    expect(told).toEqual(['127.0.0.1 noted check 14:35 A crown at 10']);
    await known('check 14:35 A crown');
    expect((await ask(`${origin()}/part`, device)).body).toContain('Looked at <time>14:35</time>');
  });

  test('is taken for nothing but what is offered', async () => {
    const { cookie = '' } = await letIn();
    const before = readFileSync(file(), 'utf8');
    const nothing = 'Nothing was noted. The notes have changed, and that is no longer offered.\n';
    for (const line of [
      'check A',
      'note hello',
      'off B',
      'check A crown\n  because all "x"',
      'check 09:00 A crown',
      '',
    ])
      expect([line, ...(await press(line, { cookie }))]).toEqual([line, 409, nothing]);
    for (const client of ['nia', 'nobody', '__proto__'])
      expect([client, ...(await press('check A crown', { cookie, client }))]).toEqual([client, 409, nothing]);
    const sent = { cookie, origin: origin(), 'content-type': 'application/json' };
    for (const body of ['', 'null', '[]', '{', '{"client":1,"line":"on B"}', '{"line":"on B"}'])
      expect((await ask(`${origin()}/stamp`, sent, 'POST', body)).status).toBe(409);
    expect(readFileSync(file(), 'utf8')).toBe(before);
  });

  test('is taken from our own page alone', async () => {
    const { cookie = '' } = await letIn();
    const before = readFileSync(file(), 'utf8');
    const refused: Record<string, string>[] = [
      { origin: 'http://salon.example' },
      { origin: 'null' },
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
      { 'content-type': 'text/plain' },
      { 'content-type': 'application/x-www-form-urlencoded' },
      { cookie: 'bowlbook=1' },
      { host: 'salon.example' },
    ];
    for (const headers of refused)
      expect([headers, (await press('on B', { cookie, headers }))[0]]).toEqual([headers, 403]);
    const body = JSON.stringify({ client: 'wren', line: 'on B' });
    const json = { cookie, 'content-type': 'application/json' };
    expect((await ask(`${origin()}/stamp`, json, 'POST', body)).status).toBe(403);
    for (const [method, path] of [
      ['POST', ''],
      ['POST', 'a.bowl'],
      ['PUT', 'stamp'],
      ['DELETE', 'clients/wren.html'],
    ] as const)
      expect((await ask(`${origin()}/${path}`, { ...json, origin: origin() }, method, body)).status).toBe(405);
    expect(readFileSync(file(), 'utf8')).toBe(before);
  });

  test('adds nothing to a file that has changed since it was read', async () => {
    const { cookie = '' } = await letIn();
    // No look in between: what is known is what was read before.
    appendFileSync(file(), '  note typed meanwhile\n');
    const before = readFileSync(file(), 'utf8');
    const [status, said] = await press('on B', { cookie });
    expect([status, said]).toEqual([
      409,
      expect.stringContaining('has changed since it was read, so nothing is added.'),
    ]);
    expect(said).toMatch(/^Nothing was noted\. /);
    expect(readFileSync(file(), 'utf8')).toBe(before);
    await known('typed meanwhile');
    expect((await press('on B', { cookie }))[0]).toBe(200);
    await known('on 14:35 B');
  });

  test('made twice at once notes one line', async () => {
    const { cookie = '' } = await letIn();
    const both = await Promise.all([press('off B', { cookie }), press('off B', { cookie })]);
    expect(both.map(([status]) => status).sort()).toEqual([200, 409]);
    expect(readFileSync(file(), 'utf8').match(/off 14:35 B\n/g)).toHaveLength(1);
    await known('off 14:35 B');
  });

  test('keeps the endings of a file’s lines', async () => {
    const { cookie = '' } = await letIn();
    writeFileSync(file(), `${notesOf('wren')}${VISIT}  note crlf\n`.replaceAll('\n', '\r\n'));
    await known('note crlf');
    expect(await press('on B', { cookie })).toEqual([200, 'Noted: on 14:35 B\n']);
    expect(readFileSync(file(), 'utf8')).toMatch(/ {2}note crlf\r\n {2}on 14:35 B\r\n$/);
    await known('on 14:35 B');
  });

  test('is not guessed onto one of two visits', async () => {
    const { cookie = '' } = await letIn();
    writeFileSync(file(), `${notesOf('wren')}${VISIT}${VISIT.replace('14:00', '16:00')}`);
    await known('16:00');
    const before = readFileSync(file(), 'utf8');
    expect(await press('on B', { cookie })).toEqual([
      409,
      'Nothing was noted. Two visits of the day can be meant; type the line into the file.\n',
    ]);
    expect(readFileSync(file(), 'utf8')).toBe(before);
  });
});

test('no fault of the program came of all that', () => {
  expect(faults).toEqual([]);
});

test('an address that cannot be listened at is left out, and refused where it is the only one', async () => {
  const options = {
    minute: () => 0,
    fault: () => undefined,
    opened: () => undefined,
    guessed: () => undefined,
    noted: () => undefined,
  };
  // Kept for documents (RFC 5737), so no machine's own.
  const nowhere = { at: '203.0.113.1', name: '203.0.113.1' };
  const here = { at: '127.0.0.1', name: '127.0.0.1' };
  await expect(shareHere(watched.kept, { ...options, at: [nowhere] })).rejects.toThrow(
    'No page can be served at 203.0.113.1',
  );
  const one = await shareHere(watched.kept, { ...options, at: [nowhere, here] });
  expect(one.addresses()).toEqual([expect.stringContaining('127.0.0.1')]);
  await one.stop();
});

describe('the addresses that are listened at', () => {
  const one = (address: string, family: 'IPv4' | 'IPv6', internal = false) =>
    ({ address, family, internal, netmask: '', mac: '', cidr: null, scopeid: 0 }) as const;

  test('are those of the network, the short ones where there are any', () => {
    const lo = [one('127.0.0.1', 'IPv4', true), one('::1', 'IPv6', true)];
    const wire = [one('192.0.2.7', 'IPv4'), one('2001:db8::7', 'IPv6'), one('fe80::7', 'IPv6')];
    expect(networkAddresses(() => ({ lo, wire }))).toEqual([{ at: '192.0.2.7', name: '192.0.2.7' }]);
    expect(networkAddresses(() => ({ lo, wire: wire.slice(1) }))).toEqual([
      { at: '2001:db8::7', name: '[2001:db8::7]' },
    ]);
    expect(() => networkAddresses(() => ({ lo, wire: [one('169.254.1.1', 'IPv4')] }))).toThrow('is on no network');
  });
});

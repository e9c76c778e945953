import { request } from 'node:http';
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Kept } from '../../src/cli/watch/keep-current.ts';
import { type OpenHere, openHere } from '../../src/cli/watch/open-here.ts';
import { ask } from './asking.ts';
import { DAY, notesOf, SHELF, until, type Watched, watchFolder } from './watching.ts';

let watched: Watched;
let here: OpenHere;
const faults: unknown[] = [];

beforeAll(async () => {
  watched = await watchFolder({
    'shelf.bowl': SHELF,
    'a.bowl': `${notesOf('wren')}visit ${DAY} 14:00 wren\n  bowl A 40 clay + 20vol 1:2\n  on 14:20 A crown\n`,
  });
  here = await openHere(watched.kept, { minute: () => 862.5, fault: (error) => faults.push(error) });
});

afterAll(() => here?.stop());

describe('the pages on this machine', () => {
  test('are at a code of the loopback address alone', () => {
    expect(here.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/[a-z2-9]{12}\/$/);
  });

  test.each(['', 'part', 'index.html', 'findings.html', 'clients/wren.html', 'live.js', 'live.css', 'refresh.js'])(
    'answer to our own pages: %j',
    async (path) => {
      for (const site of [{}, { 'sec-fetch-site': 'none' }, { 'sec-fetch-site': 'same-origin' }]) {
        const { status, headers, body } = await ask(here.address + path, site);
        expect([path, status]).toEqual([path, 200]);
        expect(body.length).toBeGreaterThan(100);
        expect(headers).toMatchObject({
          'cache-control': 'no-store',
          'cross-origin-resource-policy': 'same-origin',
          'x-content-type-options': 'nosniff',
          'x-frame-options': 'DENY',
        });
        expect(headers['content-security-policy']).toMatch(/^default-src 'none'.*frame-ancestors 'none'/);
        expect(headers['content-security-policy']).not.toMatch(/unsafe|\*/);
        expect(headers['access-control-allow-origin']).toBeUndefined();
      }
    },
  );

  test.each([
    { host: 'salon.example' },
    { host: '127.0.0.1' },
    { host: '127.0.0.1:1' },
    { origin: 'http://salon.example' },
    { origin: 'null' },
    { origin: 'https://127.0.0.1' },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
  ])('answer nothing to %j', async (headers) => {
    for (const path of ['', 'part', 'events', 'clients/wren.html', 'live.js']) {
      const { status, body } = await ask(here.address + path, headers);
      expect(status).toBe(403);
      expect(body.toLowerCase()).not.toContain('wren');
    }
  });

  test.each(['/', '/index.html', '/aaaaaaaaaaaa/', '/aaaaaaaaaaaa/clients/wren.html', '//', '/%E0%A4%A'])(
    'are nowhere else: %j',
    async (path) => {
      const { status } = await ask(new URL(here.address).origin + path);
      expect(status).toBe(404);
    },
  );

  test.each([
    '../a.bowl',
    '%2e%2e/a.bowl',
    'clients/../../a.bowl',
    'clients%2fwren.html/..',
    'a.bowl',
    'clients/',
    'stamp',
  ])('hold no file but pages: %j', async (path) => {
    const { status, body } = await ask(here.address + path);
    expect([path, status]).toEqual([path, 404]);
    expect(body).not.toContain('mark-1-end');
  });

  test('are only read', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS'])
      expect((await ask(`${here.address}stamp`, { 'content-type': 'application/json' }, method, '{}')).status).toBe(
        405,
      );
  });

  test('take nothing long', async () => {
    const { status } = await ask(here.address, {}, 'POST', 'x'.repeat(100_000)).catch(() => ({ status: 413 }));
    expect(status).toBe(413);
  });

  test('are led to without the last stroke', async () => {
    const { status, headers } = await ask(here.address.slice(0, -1));
    expect([status, headers.location]).toEqual([308, new URL(here.address).pathname]);
  });

  test('tell whoever listens of a change', async () => {
    let heard = '';
    const listening = request(`${here.address}events`, (answer) => {
      answer.on('data', (chunk: Buffer) => {
        heard += chunk.toString();
      });
    });
    listening.on('error', () => undefined);
    listening.end();
    await until('the line opens', () => heard.includes('retry'));
    here.tell(['clients/wren.html']);
    await until('the change', () => heard.includes('event: change\ndata: ["clients/wren.html"]\n\n'));
    listening.destroy();
  });

  test('show the day: what is on, since when, when to look', async () => {
    const { body } = await ask(here.address);
    expect(body).toContain('data-now="862.5"');
    expect(body).toContain('<h3>Bowl A, crown</h3>');
    expect(body).toMatch(/data-on="860"/);
    expect(body).toContain('<a href="clients/wren.html">');
  });

  test('say of a visit what could hurt, and that nobody described has the name', async () => {
    watched.write(
      'd.bowl',
      `range tint "Bay tint" permanent
client iris "Iris"
visit ${DAY} 15:00 iris
  bowl A 40 tint 6/0 + 40 dev-6
visit ${DAY} 16:00 irsi
  note came early
`,
    );
    await until('her card', () => watched.page('clients/irsi.html').includes('came early'));
    const part = (await ask(`${here.address}part`)).body;
    expect(part).toMatch(/Card of Iris<\/a>.*\n<ul class="stops">\n<li><strong>stop<\/strong> .*tint/u);
    expect(part).toMatch(/Card of irsi<\/a> <strong>No client entry has this name/u);
  });

  test('lead back to the day', async () => {
    const wayTo = async (path: string): Promise<string | undefined> =>
      /<a href="([^"]*)">Today</.exec((await ask(here.address + path)).body)?.[1];
    expect(await wayTo('index.html')).toBe('./');
    expect(await wayTo('findings.html')).toBe('./');
    expect(await wayTo('clients/wren.html')).toBe('../');
  });

  test('ask for no picture of the address', async () => {
    expect((await ask(`${new URL(here.address).origin}/favicon.ico`)).status).toBe(204);
  });

  test('hold no script in the folder', () => {
    for (const name of ['index.html', 'clients/wren.html', 'findings.html'])
      expect(watched.page(name)).not.toContain('<script');
  });
});

describe('a fault in the program while a page is asked for', () => {
  test('is told, answered with, and ends neither the serving nor the watching', async () => {
    const kept: Kept = {
      ...watched.kept,
      page: () => {
        throw new Error('drawing failed');
      },
    };
    const told: unknown[] = [];
    const faulty = await openHere(kept, { minute: () => 862.5, fault: (error) => told.push(error) });
    try {
      for (let times = 0; times < 2; times += 1) {
        const { status, body } = await ask(`${faulty.address}clients/wren.html`);
        expect([status, body]).toEqual([
          500,
          'A fault in the program; the terminal says which. The notes are as they were.\n',
        ]);
      }
      expect((await ask(faulty.address)).status).toBe(200);
      expect(told).toEqual([new Error('drawing failed'), new Error('drawing failed')]);
    } finally {
      await faulty.stop();
    }
    watched.write('b.bowl', notesOf('otto'));
    await watched.shows('otto', 1);
  });

  test('is not what a connection is that breaks off', async () => {
    const { port, hostname } = new URL(here.address);
    const socket = connect(Number(port), hostname);
    socket.write(
      `POST ${new URL(here.address).pathname} HTTP/1.1\r\nHost: ${hostname}:${port}\r\nContent-Length: 9\r\n\r\nx`,
    );
    await new Promise((done) => socket.once('connect', done));
    socket.destroy();
    expect((await ask(here.address)).status).toBe(200);
    expect(faults).toEqual([]);
  });
});

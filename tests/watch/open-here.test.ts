import { request } from 'node:http';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenHere, openHere } from '../../src/cli/watch/open-here.ts';
import { DAY, notesOf, SHELF, until, type Watched, watchFolder } from './watching.ts';

type Got = { readonly status: number; readonly headers: Record<string, unknown>; readonly body: string };

/** Asks as no browser would let a page ask: with any header. */
const ask = (address: string, headers: Record<string, string> = {}, method = 'GET', body = ''): Promise<Got> =>
  new Promise((done, failed) => {
    const length = Buffer.byteLength(body);
    // The path goes out as written; a URL would be put in order first.
    const { hostname, port, origin } = new URL(address);
    const path = address.slice(origin.length);
    const asked = request(
      { hostname, port, path, method, headers: { ...headers, 'content-length': length } },
      (answer) => {
        let text = '';
        answer.on('data', (chunk: Buffer) => {
          text += chunk.toString();
        });
        answer.on('end', () => done({ status: answer.statusCode ?? 0, headers: answer.headers, body: text }));
      },
    );
    asked.on('error', failed);
    asked.end(body);
  });

let watched: Watched;
let here: OpenHere;

beforeAll(async () => {
  watched = await watchFolder({
    'shelf.bowl': SHELF,
    'a.bowl': `${notesOf('wren')}visit ${DAY} 14:00 wren\n  bowl A 40 clay + 20vol 1:2\n  on 14:20 A crown\n`,
  });
  here = await openHere(watched.kept);
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
    expect(body).toContain('<h3>Bowl A, crown</h3>');
    expect(body).toMatch(/data-on="860"/);
    expect(body).toContain('<a href="clients/wren.html">');
  });

  test('hold no script in the folder', () => {
    for (const name of ['index.html', 'clients/wren.html', 'findings.html'])
      expect(watched.page(name)).not.toContain('<script');
  });
});

import { appendFileSync, readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import axe, { type AxeResults } from 'axe-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { openHere } from '../../src/cli/watch/open-here.ts';
import { shareHere } from '../../src/cli/watch/share-here.ts';
import { startBrowser } from '../pages/browser.ts';
import { DAY, type Watched, watchFolder } from './watching.ts';

const SHELF = `product clay "Grey clay" lightener
  mix 1:2
  time 20-50 min from first-on, check every 10 min
product dev-6 "Cream developer" developer 6%
`;
const CLIENT = 'client wren "Wren Abbott"\n  natural 6\n';
const VISIT = `visit ${DAY} 14:00 wren\n  bowl A 40 clay + 80 dev-6\n  bowl B 30 clay + 60 dev-6\n`;
const LONG = `client long "${'Wide'.repeat(30)}"\nvisit ${DAY} 13:00 long\n  bowl A 40 clay + 80 dev-6\n  on 13:10 A ${'wide'.repeat(30)}\n`;

const at = (hours: number, minutes: number): number => hours * 60 + minutes;

let browser: Browser;

beforeAll(async () => {
  browser = await startBrowser();
}, 120_000);

afterAll(async () => {
  await browser?.close();
});

/** A salon's day in a browser: its notes, its page, and a clock that both go by. */
type Chair = {
  readonly watched: Watched;
  readonly page: Page;
  /** What the page or the browser complained of. */
  readonly logged: readonly string[];
  readonly type: (text: string) => void;
  /** Lets minutes go by, for the machine and the browser. */
  readonly pass: (minutes: number) => Promise<void>;
  readonly faults: readonly unknown[];
};

const chair = async (
  notes: string,
  start: number,
  { share = false, script = '', ...options }: BrowserContextOptions & { share?: boolean; script?: string } = {},
): Promise<Chair & { readonly address: string }> => {
  const watched = await watchFolder({ 'shelf.bowl': SHELF, 'a.bowl': notes });
  let now = start;
  const faults: unknown[] = [];
  const minute = (): number => now;
  const fault = (error: unknown): void => void faults.push(error);
  const served = share
    ? await shareHere(watched.kept, {
        at: [{ at: '127.0.0.1', name: '127.0.0.1' }],
        minute,
        fault,
        opened: () => undefined,
        guessed: () => undefined,
        noted: () => undefined,
      })
    : await openHere(watched.kept, { minute, fault });
  let told = 0;
  const telling = setInterval(() => {
    for (; told < watched.changes.length; told += 1) served.tell(watched.changes[told]?.pages ?? []);
  }, 10);
  const context = await browser.newContext(options);
  // One page stands open at a time: many at once, each with its watcher, leave a busy machine none in time.
  onTestFinished(async () => {
    clearInterval(telling);
    await context.close();
    await served.stop();
    await watched.stop();
  });
  // Only a bound: a busy machine may need a good part of it.
  context.setDefaultTimeout(60_000);
  const page = await context.newPage();
  await page.clock.install();
  if (script !== '') await page.addInitScript(script);
  const logged: string[] = [];
  page.on('console', (message) => logged.push(message.text()));
  page.on('pageerror', (error) => logged.push(String(error)));
  const address = 'address' in served ? served.address : (served.addresses()[0] ?? '');
  await page.goto(address);
  await page.evaluate('window.sameAllAlong = true');
  return {
    watched,
    page,
    logged,
    faults,
    address,
    type: (text) => appendFileSync(join(watched.root, 'a.bowl'), text),
    pass: async (minutes) => {
      now += minutes;
      await page.clock.fastForward(minutes * 60_000);
    },
  };
};

const shows = (page: Page, what: string, text: string): Promise<void> =>
  page.locator(what).filter({ hasText: text }).first().waitFor();

/** Waits for an expression to be true. The browser's own wait needs `eval` in the page, which its policy forbids. */
const comesTrue = (page: Page, expression: string): Promise<void> =>
  expect.poll(() => page.evaluate<boolean>(`Boolean(${expression})`), { timeout: 30_000 }).toBe(true);

const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

const breaches = async (page: Page, runOnly: readonly string[]): Promise<string[]> => {
  const { violations } = await page.evaluate<AxeResults>(`axe.run(document, { runOnly: ${JSON.stringify(runOnly)} })`);
  return violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html ?? ''}`);
};

const width = (page: Page): Promise<number> => page.evaluate('document.documentElement.scrollWidth');

test('a visit that is being typed is followed without reloading: what is on, since when, the next look, past its time', async () => {
  const { watched, page, logged, faults, type, pass } = await chair(CLIENT, at(14, 20));
  await shows(page, '#live', 'No visit is noted for the day.');
  type(VISIT);
  await shows(page, 'section', 'Nothing is on yet.');
  type('  on 14:2');
  type('0 A crown\n');
  await shows(page, '.run h3', 'Bowl A, crown');
  await shows(page, '.clock', '0 min on, since 14:20');
  await shows(page, '.look', 'Next look 14:30 (in 10 min)');
  await shows(page, '.run', 'Grey clay takes 20 to 50 min from first on: 14:40 to 15:10 (50 min left at most)');

  await pass(9);
  await shows(page, '.clock', '9 min on');
  await shows(page, '#clock', '14:29');
  await shows(page, '.look', '(in 1 min)');
  await pass(2);
  await shows(page, '.run[data-state="look"].due .look', 'Next look 14:30 (1 min late)');
  expect(await page.title()).toBe('Look: Bowl A, crown');

  type('  check 14:31 A crown gold\n');
  await shows(page, '.run[data-state="on"] .look', 'Looked at 14:31. Next look 14:41 (in 10 min)');
  expect(await page.title()).toBe('Today');
  const past = page.locator('.past');
  expect(await past.isVisible()).toBe(false);
  await pass(40);
  await past.waitFor();
  expect(await past.textContent()).toMatch(/^Past its time\. Lightener can burn skin/);
  expect(await past.getAttribute('role')).toBe('alert');
  await shows(page, '.run[data-state="past"]', '(1 min past)');
  expect(await page.title()).toBe('Past its time: Bowl A, crown');

  type('  off 15:11 A\n');
  await shows(page, 'section', 'All is off.');
  expect(await page.title()).toBe('Today');
  expect(await page.evaluate('window.sameAllAlong')).toBe(true);
  expect([logged, faults, watched.troubles]).toEqual([[], [], []]);
});

test('a card that stands open takes in what is typed, and leads back to the day', async () => {
  const { page, type, logged } = await chair(CLIENT + VISIT, at(14, 20));
  await page.getByRole('link', { name: 'Card of Wren Abbott' }).click();
  await page.evaluate('window.sameAllAlong = true');
  type('  note brighter at the front\n');
  await shows(page, 'main', 'brighter at the front');
  expect(await page.evaluate('window.sameAllAlong')).toBe(true);
  await page.getByRole('link', { name: 'Today' }).click();
  await shows(page, 'h1', 'Today');
  expect(logged).toEqual([]);
});

test('it says when the notes are out of reach, and lets the minutes run on', async () => {
  const { page, pass, address } = await chair(`${CLIENT}${VISIT}  on 14:20 A\n`, at(14, 20));
  await shows(page, '.clock', '0 min on');
  expect(await page.locator('#away').isVisible()).toBe(false);
  await page.context().setOffline(true);
  await page.route(`${address}**`, (route) => route.abort());
  await page.evaluate(`document.dispatchEvent(new Event('visibilitychange'))`);
  await page.locator('#away').waitFor();
  await pass(5);
  await shows(page, '.clock', '5 min on');
});

describe('with the keyboard alone', () => {
  test('every link and button is reached in order, and a change leaves the focus where it was', async () => {
    const { page, type } = await chair(`${CLIENT}${VISIT}  on 14:20 A crown\n`, at(14, 25), { share: true });
    const reached: string[] = [];
    for (let step = 0; step < 7; step += 1) {
      await page.keyboard.press('Tab');
      reached.push(await page.evaluate('document.activeElement.textContent'));
    }
    expect(reached).toEqual([
      'All clients',
      'Findings',
      'Sound at every look, screen lit: off',
      'Card of Wren Abbott',
      'Looked at: bowl A, crown',
      'Off: bowl A, crown',
      'On: bowl B',
    ]);
    type('  note typed meanwhile\n  on 14:24 B nape\n');
    await shows(page, '.run h3', 'Bowl B, nape');
    // What she stood on is gone; on what is still there she stays.
    await page.getByRole('button', { name: 'Off: bowl A, crown' }).focus();
    type('  check 14:25 B nape\n');
    await shows(page, '.look', 'Looked at 14:25.');
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Off: bowl A, crown');
    await page.keyboard.press('Enter');
    await shows(page, '#noted', 'Noted: off 14:25 A crown');
  });
});

describe('at the chair', () => {
  const COUNT = `
    window.tones = 0;
    const make = AudioContext.prototype.createOscillator;
    AudioContext.prototype.createOscillator = function () { window.tones += 1; return make.call(this); };
  `;

  test('a press notes the line, says so, and the page goes on from there', async () => {
    const { page, watched, pass, logged } = await chair(`${CLIENT}${VISIT}  on 14:20 A crown\n`, at(14, 25), {
      share: true,
      viewport: { width: 320, height: 640 },
      hasTouch: true,
    });
    for (const button of await page.locator('.stamps button').all()) {
      const { height = 0, width: wide = 0 } = (await button.boundingBox()) ?? {};
      expect(height).toBeGreaterThanOrEqual(60);
      expect(wide).toBeGreaterThanOrEqual(250);
    }
    await pass(6);
    await page.getByRole('button', { name: 'Looked at: bowl A, crown' }).tap();
    await shows(page, '#noted', 'Noted: check 14:31 A crown');
    await shows(page, '.look', 'Looked at 14:31. Next look 14:41');
    await page.getByRole('button', { name: 'Off: bowl A, crown' }).tap();
    await shows(page, 'section', 'All is off.');
    await page.getByRole('button', { name: 'On: bowl B' }).tap();
    await shows(page, '.run h3', 'Bowl B');
    expect(readFileSync(join(watched.root, 'a.bowl'), 'utf8')).toBe(
      `${CLIENT}${VISIT}  on 14:20 A crown\n  check 14:31 A crown\n  off 14:31 A crown\n  on 14:31 B\n`,
    );
    expect(await page.evaluate('window.sameAllAlong')).toBe(true);
    expect(logged).toEqual([]);
  });

  test('after one press it sounds once at a look and once past its time, and not before', async () => {
    const { page, pass } = await chair(`${CLIENT}${VISIT}  on 14:20 A crown\n`, at(14, 25), {
      share: true,
      script: COUNT,
    });
    const tones = (): Promise<number> => page.evaluate('window.tones');
    await page.getByRole('button', { name: 'Sound' }).click();
    await shows(page, 'button', 'Sound at every look, screen lit: on');
    const pressed = await tones();
    expect(pressed).toBe(3);
    await pass(4);
    expect(await tones()).toBe(pressed);
    await pass(1);
    expect(await tones()).toBe(pressed + 3);
    await pass(8);
    expect(await tones()).toBe(pressed + 3);
    await pass(33);
    expect(await tones()).toBe(pressed + 6);
    await page.getByRole('button', { name: 'Sound' }).click();
    await shows(page, 'button', 'Sound at every look, screen lit: off');
    expect(await tones()).toBe(pressed + 6);
  });

  test('the screen is kept on by the means made for it', async () => {
    const { page } = await chair(CLIENT, at(14, 25), {
      share: true,
      script: `
        window.asked = [];
        const lock = { request: (what) => { asked.push(what); return Promise.resolve({ release: () => asked.push('release') }); } };
        Object.defineProperty(navigator, 'wakeLock', { value: lock });
      `,
    });
    expect(await page.evaluate('asked')).toEqual([]);
    await page.getByRole('button', { name: 'Sound' }).click();
    await comesTrue(page, 'asked.length === 1');
    // A lock ends when the page is out of sight, and is asked for again when it is back.
    await page.evaluate(`document.dispatchEvent(new Event('visibilitychange'))`);
    await comesTrue(page, 'asked.length === 2');
    await page.getByRole('button', { name: 'Sound' }).click();
    await comesTrue(page, 'asked.length === 3');
    expect(await page.evaluate('asked')).toEqual(['screen', 'screen', 'release']);
  });

  test('where browsers withhold those, a picture plays', async () => {
    const { page, logged } = await chair(CLIENT, at(14, 25), {
      share: true,
      script: `Object.defineProperty(navigator, 'wakeLock', { value: undefined });`,
    });
    await page.getByRole('button', { name: 'Sound' }).click();
    await comesTrue(page, `document.getElementById('awake')?.currentTime > 0`);
    expect(await page.evaluate(`document.getElementById('awake').srcObject.getAudioTracks().length`)).toBe(1);
    await page.getByRole('button', { name: 'Sound' }).click();
    expect(await page.locator('#awake').count()).toBe(0);
    expect(logged).toEqual([]);
  });

  test('where there is neither, it says so', async () => {
    const { page } = await chair(CLIENT, at(14, 25), {
      share: true,
      script: `
        Object.defineProperty(navigator, 'wakeLock', { value: undefined });
        HTMLMediaElement.prototype.play = () => Promise.reject(new Error('not allowed'));
      `,
    });
    await page.getByRole('button', { name: 'Sound' }).click();
    await shows(page, '#noted', 'This browser does not keep the screen on.');
  });
});

describe('in any window', () => {
  const NOTES = `${CLIENT}${VISIT}  on 14:20 A crown\n${LONG}`;

  // The page at the chair has all that the other one has.
  test('no rule of WCAG 2.2 AA that axe can see is broken, light or dark, and nothing is scrolled sideways', async () => {
    const { page } = await chair(NOTES, at(14, 31), {
      share: true,
      colorScheme: 'light',
      viewport: { width: 320, height: 640 },
    });
    await shows(page, '.run[data-state="look"]', 'crown');
    await shows(page, '.run[data-state="past"]', 'wide');
    for (const wide of [1280, 768, 320]) {
      await page.setViewportSize({ width: wide, height: 640 });
      expect(await width(page)).toBe(wide);
    }
    await page.getByRole('button', { name: 'Looked at: bowl A, crown' }).click();
    await shows(page, '#noted', 'Noted');
    await shows(page, '.run[data-state="on"]', 'crown');
    await page.evaluate(axe.source);
    expect(await breaches(page, WCAG)).toEqual([]);
    // Nothing but the colours is another in the dark.
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await breaches(page, ['color-contrast'])).toEqual([]);
  });
});

describe('a page of another origin', () => {
  /** Tries all that a page can; what it saw of the other side is in `got`. */
  const TRIES = `
    const got = [];
    const soon = (work) => Promise.race([work, new Promise((done) => setTimeout(() => done('nothing'), 3000))]);
    const tried = async (what, work) => got.push(what + ': ' + await soon(work().catch(() => 'nothing')));
    const text = (options) => async () => { const answer = await fetch(there + 'part', options); return (await answer.text()) || answer.type; };
    const loaded = (tag, name) => () => new Promise((done, failed) => {
      const element = document.createElement(tag);
      element.onload = () => done('loaded');
      element.onerror = failed;
      element[tag === 'link' ? 'href' : 'src'] = there + name;
      if (tag === 'link') element.rel = 'stylesheet';
      document.body.append(element);
    });
    const framed = () => new Promise((done) => {
      const frame = document.createElement('iframe');
      frame.onload = () => { try { done(frame.contentDocument.body.innerText || 'nothing'); } catch { done('nothing'); } };
      frame.src = there;
      document.body.append(frame);
    });
    const heard = () => new Promise((done, failed) => {
      const source = new EventSource(there + 'events', { withCredentials: true });
      source.onopen = () => done('open');
      source.onerror = failed;
    });
    const posted = (type, mode) => async () => (await fetch(there + 'stamp', { method: 'POST', mode, credentials: 'include', headers: { 'content-type': type }, body: press })).type;
    (async () => {
      await tried('fetch', text({ credentials: 'include' }));
      await tried('fetch without asking', text({ mode: 'no-cors', credentials: 'include' }));
      await tried('script', loaded('script', 'live.js'));
      await tried('style', loaded('link', 'live.css'));
      await tried('picture', loaded('img', 'part'));
      await tried('frame', framed);
      await tried('events', heard);
      await tried('press', posted('application/json', 'cors'));
      await tried('press without asking', posted('text/plain', 'no-cors'));
      document.title = 'done';
      window.got = got;
    })();
  `;

  const other = (there: string): Promise<Server> => {
    const press = JSON.stringify(JSON.stringify({ client: 'wren', line: 'check A crown' }));
    const html = `<!doctype html><title>other</title><body><script>const there = ${JSON.stringify(there)}, press = ${press};${TRIES}</script>`;
    const server = createServer((_request, response) => {
      response.setHeader('content-type', 'text/html');
      response.end(html);
    });
    return new Promise((done) => server.listen(0, '127.0.0.1', () => done(server)));
  };

  test.each([true, false])('gets nothing and notes nothing, shared: %s', async (share) => {
    const { page, watched, address } = await chair(`${CLIENT}${VISIT}  on 14:20 A crown\n`, at(14, 25), { share });
    const before = readFileSync(join(watched.root, 'a.bowl'), 'utf8');
    // The device was let in, so the browser has the cookie; without sharing, the other page knows the code.
    const server = await other(share ? page.url() : address);
    onTestFinished(async () => {
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
    });
    // The first is the same site at another port, the second another site.
    for (const host of ['127.0.0.1', 'localhost']) {
      const evil = await page.context().newPage();
      const seen: string[] = [];
      evil.on('response', (answer) => {
        if (answer.url().startsWith(new URL(address).origin)) seen.push(`${answer.status()}`);
      });
      await evil.goto(`http://${host}:${(server.address() as AddressInfo).port}/`);
      await comesTrue(evil, 'window.got');
      const got = await evil.evaluate<string[]>('got');
      expect(got).toHaveLength(9);
      // An answer that may not be read is opaque; here it is a refusal besides.
      for (const one of got) expect([host, one]).toEqual([host, expect.stringMatching(/: (nothing|opaque)$/)]);
      expect([host, [...new Set(seen)]]).toEqual([host, ['403']]);
      for (const frame of evil.frames().slice(1)) expect(await frame.content()).not.toContain('Wren');
      await evil.close();
    }
    expect(readFileSync(join(watched.root, 'a.bowl'), 'utf8')).toBe(before);
    await shows(page, '.run h3', 'Bowl A, crown');
  });
});

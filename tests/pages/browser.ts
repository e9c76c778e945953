import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser'];

const ARGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Starts the machine's Chromium. Throws with what to install when there is none. */
export const startBrowser = (): Promise<Browser> => {
  const executablePath = PLACES.find(existsSync);
  if (executablePath === undefined)
    throw new Error(`These tests need Chromium at ${PLACES.join(' or ')}; install the package \`chromium\`.`);
  return chromium.launch({ executablePath, args: ARGS });
};

/** A page opened from a file, every address it asked for, and what it wrote to the console. */
export type Opened = {
  readonly page: Page;
  readonly asked: readonly string[];
  readonly logged: readonly string[];
  readonly address: string;
};

/** Opens HTML as a file, as a colourist would; `close` takes the page and the file away again. */
export const openPage = async (
  browser: Browser,
  html: string,
  options: BrowserContextOptions,
): Promise<Opened & { readonly close: () => Promise<void> }> => {
  const folder = mkdtempSync(join(tmpdir(), 'bowlbook-page-'));
  const file = join(folder, 'page.html');
  writeFileSync(file, html);
  const context = await browser.newContext(options);
  const close = async (): Promise<void> => {
    await context.close();
    rmSync(folder, { recursive: true });
  };
  try {
    const page = await context.newPage();
    const [asked, logged]: [string[], string[]] = [[], []];
    page.on('request', (request) => asked.push(request.url()));
    page.on('console', (message) => logged.push(message.text()));
    const address = pathToFileURL(file).href;
    await page.goto(address);
    return { page, asked, logged, address, close };
  } catch (error) {
    await close();
    throw error;
  }
};

/** Opens HTML as a file, runs the check, and closes it again. */
export const withPage = async (
  browser: Browser,
  html: string,
  options: BrowserContextOptions,
  check: (opened: Opened) => Promise<void>,
): Promise<void> => {
  const { close, ...opened } = await openPage(browser, html, options);
  try {
    await check(opened);
  } finally {
    await close();
  }
};

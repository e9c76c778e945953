// Floods the shared pages from test addresses of this machine, and times a device that is in meanwhile: npm run flood --
// [--seconds 10] [--devices 8] [--rate 40] [--open 100]. Each device goes through the ways of .scripts/flood/attack.ts.
// Exit code 1 when an answer to the device took 300 ms or longer, or was another than it should be.
import { fork } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { keepCurrent } from '../src/cli/watch/keep-current.ts';
import { openPageFolder } from '../src/cli/watch/page-folder.ts';
import { shareHere } from '../src/cli/watch/share-here.ts';
import { ATTACKS, type Attack, flood } from './flood/attack.ts';

const LIMIT = 300;
const DAY = '2026-11-25';
const HOST = '127.0.0.1';

type Got = { readonly status: number; readonly took: number; readonly cookie: string | undefined };

/** Asks as a device does, each time on a connection of its own, which is the hardest. */
const ask = (port: number, path: string, cookie: string, body?: string): Promise<Got> =>
  new Promise((done, failed) => {
    const start = performance.now();
    const origin = `http://${HOST}:${port}`;
    const headers = {
      cookie,
      ...(body !== undefined && {
        origin,
        'content-type': 'application/json',
        'content-length': Buffer.byteLength(body),
      }),
    };
    const asked = request(
      { host: HOST, port, path, method: body === undefined ? 'GET' : 'POST', headers, agent: false },
      (answer) => {
        answer.resume();
        answer.on('end', () => {
          const set = answer.headers['set-cookie']?.[0]?.split(';')[0];
          done({ status: answer.statusCode ?? 0, took: performance.now() - start, cookie: set });
        });
      },
    );
    asked.on('error', failed);
    asked.end(body);
  });

const sleep = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

type Told = {
  readonly ready?: true;
  readonly cookie?: string;
  readonly gets?: number[];
  readonly presses?: number[];
  readonly odd?: string[];
};

/** The device: reads the day's page and presses, again and again, until its time is over. */
const device = async (port: number, cookie: string, seconds: number): Promise<void> => {
  const [gets, presses, odd]: [number[], number[], string[]] = [[], [], []];
  const press = JSON.stringify({ client: 'flood-guest', line: 'check A crown' });
  const timed = async (into: number[], wanted: number, path: string, body?: string): Promise<void> => {
    try {
      const { status, took } = await ask(port, path, cookie, body);
      into.push(took);
      if (status !== wanted) odd.push(`${path} ${status}`);
    } catch (error) {
      odd.push(`${path} ${error}`);
    }
  };
  const end = performance.now() + seconds * 1_000;
  while (performance.now() < end) {
    for (let times = 0; times < 5; times++) {
      await timed(gets, 200, '/part');
      await sleep(40);
    }
    await timed(presses, 200, '/stamp', press);
    // The notes are read again after a press.
    await sleep(800);
  }
  process.send?.({ gets, presses, odd });
};

const child = (role: object): { readonly told: Promise<Told>; readonly stop: () => void } => {
  const started = fork(fileURLToPath(import.meta.url), ['--role', JSON.stringify(role)]);
  return {
    told: new Promise((done, failed) => {
      started.on('message', (told: Told) => done(told));
      started.on('exit', () => failed(new Error('a part of the flood ended early')));
    }),
    stop: () => void started.kill(),
  };
};

const figures = (of: readonly number[]): string => {
  const sorted = [...of].sort((a, b) => a - b);
  const at = (share: number): string =>
    (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0).toFixed(0);
  return `${of.length} times: half under ${at(0.5)} ms, nineteen of twenty under ${at(0.95)} ms, the slowest ${at(1)} ms`;
};

const main = async (): Promise<void> => {
  const { values } = parseArgs({
    options: {
      seconds: { type: 'string', default: '10' },
      devices: { type: 'string', default: '8' },
      rate: { type: 'string', default: '40' },
      open: { type: 'string', default: '100' },
      role: { type: 'string' },
    },
  });
  if (values.role !== undefined) {
    const role = JSON.parse(values.role);
    if (role.attacks === undefined) return device(role.port, role.cookie, role.seconds);
    flood(role);
    process.send?.({ ready: true });
    return;
  }
  const seconds = Number(values.seconds);
  const root = realpathSync(mkdtempSync(join(tmpdir(), 'bowlbook-flood-')));
  cpSync('journals/harbour-row', root, { recursive: true });
  const files = readdirSync(root, { recursive: true }).length;
  writeFileSync(
    join(root, 'flood-guest.bowl'),
    `client flood-guest "Flood Guest"\nvisit ${DAY} 14:00 flood-guest\n  bowl A 40 clay + 20vol 1:2\n  on 14:20 A crown\n`,
  );
  const faults: unknown[] = [];
  const kept = await keepCurrent({
    root,
    folder: openPageFolder(join(root, 'pages'), root),
    dayOf: () => DAY,
    events: true,
    told: { progress: () => undefined, changed: () => undefined, trouble: (what) => faults.push(what) },
  });
  const shared = await shareHere(kept, {
    at: [{ at: HOST, name: HOST }],
    minute: () => 14 * 60 + 35,
    fault: (error) => faults.push(error),
    opened: () => undefined,
    guessed: () => undefined,
    noted: () => undefined,
  });
  process.stdout.write(`${files} files and folders of notes; ${values.devices} devices, ${seconds} s a way\n`);
  let isLate = false;
  try {
    const address = new URL(shared.addresses()[0] ?? '');
    const port = Number(address.port);
    const { cookie = '' } = await ask(port, address.pathname, '');
    const ways: readonly (readonly Attack[])[] = [
      [],
      ...(Object.keys(ATTACKS) as Attack[]).map((attack) => [attack]),
      Object.keys(ATTACKS) as Attack[],
    ];
    for (const attacks of ways) {
      const from = Array.from({ length: Number(values.devices) }, (_, at) => `127.0.0.${at + 2}`);
      const flooding =
        attacks.length > 0
          ? child({ port, from, attacks, rate: Number(values.rate), open: Number(values.open) })
          : undefined;
      await flooding?.told;
      const busy = process.cpuUsage();
      const { gets = [], presses = [], odd = [] } = await child({ port, cookie, seconds }).told;
      const { user, system } = process.cpuUsage(busy);
      flooding?.stop();
      const what = attacks.length === 0 ? 'no flood' : attacks.length === 1 ? attacks[0] : 'all at once';
      process.stdout.write(
        `${what}; the server worked ${((user + system) / 10_000 / seconds).toFixed(0)} % of the time\n`,
      );
      process.stdout.write(`  pages   ${figures(gets)}\n  presses ${figures(presses)}\n`);
      for (const one of new Set(odd)) process.stdout.write(`  not as it should be: ${one}\n`);
      isLate ||= odd.length > 0 || presses.length === 0 || Math.max(...gets, ...presses) >= LIMIT;
    }
    const noted = readFileSync(join(root, 'flood-guest.bowl'), 'utf8').match(/check 14:35 A crown/g) ?? [];
    process.stdout.write(`${noted.length} presses stand in the notes; faults of the program: ${faults.length}\n`);
    for (const one of faults) process.stdout.write(`  ${one}\n`);
  } finally {
    await Promise.all([shared.stop(), kept.stop()]);
    rmSync(root, { recursive: true, force: true });
  }
  process.exitCode = isLate || faults.length > 0 ? 1 : 0;
};

await main();

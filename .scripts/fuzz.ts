// Tries notes of every kind against what reading promises: npm run fuzz -- --cases 10000000 --seed 1 [--workers 2]
// [--from 0] [--kind line|file|edit|journal|chain|links|hands] [--prefixes]; one case again: --seed 1 --case 1234. Exit code 1 when a promise breaks.
import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { KINDS, type Kind, makeCase, tryCase } from './fuzz/cases.ts';
import { readCorpus } from './fuzz/corpus.ts';
import { tryPrefixes } from './fuzz/prefixes.ts';
import { type Part, runPart, type Tried } from './fuzz/run-part.ts';
import { classOf } from './fuzz/shrink.ts';

/** A part that gives no sign of life for so many milliseconds hangs; on a busy machine it may not get to run for long. */
const PATIENCE = 300_000;

/** What a part tells: the case it is at, a failure, what it tried in all. Bytes go as their base64. */
type Told = {
  readonly at?: number;
  readonly failure?: {
    readonly index: number;
    readonly message: string;
    readonly kind: Kind;
    readonly files: string[];
  };
  readonly tried?: Tried;
};

/** Milliseconds between two signs of life of a part. */
const SIGN = 100;

const runChild = (part: Part): void => {
  let last = 0;
  const tell = (told: Told): void => void process.send?.(told);
  const tried = runPart(
    part,
    readCorpus(),
    (index) => {
      const now = performance.now();
      if (now - last > SIGN) tell({ at: index });
      if (now - last > SIGN) last = now;
    },
    ({ index, message, small: { kind, files } }) =>
      tell({ failure: { index, message, kind, files: files.map((bytes) => bytes.toString('base64')) } }),
  );
  process.send?.({ tried }, () => process.disconnect());
};

type Asked = {
  readonly seed: number;
  readonly from: number;
  readonly cases: number;
  readonly workers: number;
  readonly kind: Kind | undefined;
};

const children = new Set<ChildProcess>();

/** Runs one part in a process of its own, so that the processor's time is its own too. */
const runOne = (part: Part, told: (told: Told) => void): Promise<void> =>
  new Promise((resolve, reject) => {
    const child = fork(fileURLToPath(import.meta.url), ['--part', JSON.stringify(part)]);
    children.add(child);
    let [at, since, ended] = [part.first, performance.now(), false];
    // A machine that was held up lets this clock run on too, so the part is given the time once more.
    let overdue = false;
    const watch = setInterval(() => {
      if (performance.now() - since < PATIENCE) return;
      since = performance.now();
      if (!overdue) {
        overdue = true;
        return;
      }
      child.kill('SIGKILL');
      reject(new Error(`a case of seed ${part.seed} at or soon after ${at} hangs`));
    }, 1000);
    child.on('message', (message: Told) => {
      since = performance.now();
      overdue = false;
      if (message.at !== undefined) at = message.at;
      if (message.tried !== undefined) ended = true;
      told(message);
    });
    child.on('exit', (code) => {
      clearInterval(watch);
      if (ended) resolve();
      else reject(new Error(`the part at case ${at} of seed ${part.seed} ended with ${code}`));
    });
  });

const runAll = async ({ seed, from, cases, workers, kind }: Asked): Promise<number> => {
  const start = performance.now();
  const ways = new Set<string>();
  const tried: Tried[] = [];
  const at = Array.from({ length: workers }, (_, worker) => from + worker);
  const seconds = (): number => (performance.now() - start) / 1000;
  const progress = setInterval(() => {
    const count = Math.min(...at) - from;
    const rate = Math.round(count / seconds());
    process.stderr.write(`${count} of ${cases} cases, ${rate} a second, ${ways.size} ways to fail\n`);
  }, 15_000);
  const told = (first: number, message: Told): void => {
    if (message.at !== undefined) at[first - from] = message.at;
    if (message.tried !== undefined) tried.push(message.tried);
    const { failure } = message;
    if (failure === undefined || ways.has(classOf(failure.message))) return;
    ways.add(classOf(failure.message));
    const texts = failure.files.map((bytes) => JSON.stringify(Buffer.from(bytes, 'base64').toString('utf8')));
    process.stdout.write(
      `case ${failure.index} of seed ${seed} (${failure.kind}): ${failure.message}\n  ${texts.join('\n  ')}\n`,
    );
  };
  const parts = at.map((first): Part => ({ seed, first, end: from + cases, step: workers, kind }));
  try {
    await Promise.all(parts.map((part) => runOne(part, (message) => told(part.first, message))));
  } finally {
    clearInterval(progress);
    for (const child of children) child.kill('SIGKILL');
  }
  const counts = KINDS.map((name) => `${tried.reduce((sum, one) => sum + one.counts[name], 0)} ${name}`);
  const slowest = Math.max(...tried.map((one) => one.slowest));
  process.stdout.write(
    `seed ${seed}: ${cases} cases (${counts.join(', ')}) in ${Math.round(seconds())} s, ` +
      `${Math.round(cases / seconds())} a second; the slowest took ${Math.round(slowest)} ms; ` +
      `${ways.size} ways to fail\n`,
  );
  return ways.size;
};

const main = async (): Promise<void> => {
  const { values } = parseArgs({
    options: {
      cases: { type: 'string', default: '100000' },
      from: { type: 'string', default: '0' },
      seed: { type: 'string', default: '1' },
      case: { type: 'string' },
      kind: { type: 'string' },
      workers: { type: 'string', default: String(availableParallelism()) },
      part: { type: 'string' },
      prefixes: { type: 'boolean', default: false },
    },
  });
  if (values.part !== undefined) return runChild(JSON.parse(values.part) as Part);
  const seed = Number(values.seed);
  const kind = KINDS.find((name) => name === values.kind);
  if (values.case !== undefined) {
    const one = makeCase(seed, Number(values.case), readCorpus(), kind);
    process.stdout.write(`${one.kind}\n${one.files.map(String).join('\n----\n')}\n`);
    tryCase(one);
    return;
  }
  if (values.prefixes) {
    const start = performance.now();
    const count = tryPrefixes(readCorpus().files, (text) => process.stderr.write(`${text}\n`));
    process.stdout.write(`${count} beginnings of files in ${Math.round((performance.now() - start) / 1000)} s\n`);
    return;
  }
  const failed = await runAll({
    seed,
    from: Number(values.from),
    cases: Number(values.cases),
    workers: Number(values.workers),
    kind,
  });
  process.exitCode = failed > 0 ? 1 : 0;
};

await main();

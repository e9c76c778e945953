import { factAt } from '../journal/thing-at.ts';
import type { Looked, PutOn, Run, Unclocked, VisitReckoned } from '../reckon/model.ts';
import type { VisitFact } from '../records/schema/entry.ts';
import { clockText } from '../text/dates.ts';
import { escapeText } from './escape.ts';
import { commas, joined, type Noted, quote } from './noted.ts';
import { counted, hedged } from './say-numbers.ts';
import { allSeen, zonesText } from './seen.ts';
import { type Column, table } from './tables.ts';
import { visitItem } from './visit-lines.ts';

/** The course of a visit: one row a bowl and place, and beneath it what the rows do not say. */

const COLUMNS: readonly Column[] = [
  { head: 'Bowl and place' },
  { head: 'On' },
  { head: 'Looked at' },
  { head: 'Off' },
  { head: 'Minutes' },
];

const onCell = ({ firstOn, allOn, spanned, about, meant }: Run): string =>
  commas([
    hedged(about, spanned ? `${clockText(firstOn)}–${clockText(allOn)}` : clockText(firstOn)),
    meant !== undefined && `meant ${counted(meant, 'min')}`,
  ]);

const whereCell = (run: PutOn): string =>
  joined([run.bowl && escapeText(run.bowl), run.zone === '' ? 'no place named' : escapeText(run.zone)], ' · ');

/** `15:10 6 of 12, 15:25 the rest`. */
const partsCell = (off: Run['off'], parts: NonNullable<Run['partsOff']>): string =>
  commas([
    ...parts.map(
      ({ minute, sections, placed }) =>
        `${clockText(minute)} ${placed === undefined ? counted(sections, 'section') : `${sections} of ${placed}`}`,
    ),
    off === undefined ? 'the rest not noted' : `${clockText(off)} the rest`,
  ]);

const offCell = ({ off, told, sections, partsOff }: Run): string => {
  if (partsOff !== undefined) return partsCell(off, partsOff);
  if (off === undefined) return told === undefined ? 'not noted' : 'no clock';
  return sections === undefined || sections.firstOff === off
    ? clockText(off)
    : `${clockText(sections.firstOff)}–${clockText(off)}`;
};

/** What was seen at a look; its place is not said again where the row says it. */
const lookText = (noted: Noted, visit: VisitReckoned, run: PutOn, look: Looked): string => {
  const fact = factAt(visit.visit.entry, look.place.line);
  const here = look.seen.map((one) => (zonesText(one.zones) === escapeText(run.zone) ? { ...one, zones: [] } : one));
  const seen = fact === undefined ? '' : allSeen(noted, fact, here);
  // A bare figure beside a time would read as one of its minutes.
  const said = /^(about )?\d/.test(seen) ? `depth ${seen}` : seen || (fact?.says === undefined && 'looked at');
  const words = fact?.says && quote(fact.says.text);
  return joined([look.at !== undefined && hedged(look.about, clockText(look.at)), said, words], ' ');
};

const unclockedMinutes = ({ minutes, last, about }: Unclocked): string =>
  minutes === undefined
    ? 'not noted'
    : `${last ? 'the last ' : ''}${hedged(about, minutes.least === minutes.most ? `${minutes.least}` : `${minutes.least}–${minutes.most}`)}${last ? ' of its bowl' : ''}`;

/** What went on without a clock: no time of day is made up for it. */
const unclockedRow = (noted: Noted, visit: VisitReckoned, run: Unclocked): string[] => [
  whereCell(run),
  'no clock',
  looksCell(noted, visit, run),
  run.offPlace === undefined ? '' : 'no clock',
  unclockedMinutes(run),
];

const looksCell = (noted: Noted, visit: VisitReckoned, run: PutOn): string =>
  joined(
    run.checks.map((look) => lookText(noted, visit, run, look)),
    '; ',
  );

const minutesCell = ({ fromFirst, fromAll, spanned, heat, told, sections }: Run): string =>
  commas([
    told !== undefined && `${told} as noted`,
    sections?.untold && `${sections.most} or more the longest section`,
    sections !== undefined &&
      !sections.untold &&
      sections.least !== sections.most &&
      `${sections.least} to ${sections.most} a section`,
    fromFirst !== undefined && (spanned ? `${fromFirst} from first on` : `${fromFirst}`),
    spanned && fromAll !== undefined && `${fromAll} from all on`,
    heat > 0 && `${heat} under heat`,
  ]);

const rowOf = (noted: Noted, visit: VisitReckoned, run: Run): string[] => [
  whereCell(run),
  onCell(run),
  looksCell(noted, visit, run),
  offCell(run),
  minutesCell(run),
];

/** What a clock line says beyond the rows: a remark, a claim, another's hand, or all of it where no row holds it. */
const saysMore = (fact: VisitFact, inRows: ReadonlySet<number>, line: number): boolean =>
  (fact.says !== undefined && fact.word !== 'check') ||
  fact.by !== undefined ||
  fact.rest !== undefined ||
  (fact.word === 'off' && fact.claim !== undefined) ||
  !inRows.has(line);

const CLOCK_WORDS: ReadonlySet<string> = new Set(['zero', 'on', 'check', 'off']);

/** The clock of a visit as a table and a list; nothing when the visit has no clock line. */
export const clockBlocks = (noted: Noted, visit: VisitReckoned): string[] => {
  const { runs, unclocked } = visit.clock;
  const rows = [
    ...runs.map((run) => rowOf(noted, visit, run)),
    ...unclocked.map((run) => unclockedRow(noted, visit, run)),
  ];
  const inRows = new Set(
    [...runs, ...unclocked].flatMap(({ onPlace, offPlace, checks, ...run }) => [
      onPlace.line,
      ...(('partsOff' in run && run.partsOff) || []).map(({ place }) => place.line),
      offPlace?.line ?? -1,
      ...checks.map(({ place }) => place.line),
    ]),
  );
  const more = visit.visit.entry.facts.filter(
    (fact) => CLOCK_WORDS.has(fact.word) && saysMore(fact, inRows, fact.line),
  );
  return [
    ...(rows.length > 0 ? [table(COLUMNS, rows, '**Times**')] : []),
    ...(more.length > 0 ? [more.map((fact) => visitItem(noted, fact)).join('\n')] : []),
  ];
};

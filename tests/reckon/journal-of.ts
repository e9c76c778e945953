import { type Journal, joinSources } from '../../src/journal/journal.ts';
import type { Stood } from '../../src/journal/source.ts';
import { readSource } from '../../src/journal/source.ts';
import { reckonClock } from '../../src/reckon/clock/clock.ts';
import type { ClockReckoned, Run } from '../../src/reckon/model.ts';
import type { Visit } from '../../src/records/schema/entry.ts';
import { clockText } from '../../src/text/dates.ts';

/** The journal of one file of notes. */
export const journalOf = (text: string): Journal => joinSources([readSource('t.bowl', Buffer.from(text))]);

/** The visits of a journal's client, oldest first. */
export const visitsOf = (journal: Journal, client = 'wren-abbott'): readonly Stood<Visit>[] =>
  journal.clients.get(client)?.visits ?? [];

/** The clock of a visit with bowls A, B and T, in a salon with the lines given. */
export const clockOf = (lines: string, { salon = '', head = '2026-09-04', bowls = 'A B T' } = {}): ClockReckoned => {
  const mixed = bowls.split(' ').filter((bowl) => bowl !== '');
  const journal = journalOf(
    `salon harbour\n${salon}\nvisit ${head} wren-abbott\n${mixed.map((bowl) => `bowl ${bowl} 40 clay + 80 dev-6\n`).join('')}${lines}`,
  );
  const [visit] = visitsOf(journal);
  if (visit === undefined) throw new Error('the note holds no visit');
  return reckonClock(visit, journal.salon);
};

const time = (minute: number | undefined): string => (minute === undefined ? '?' : clockText(minute));

/** A run in one line: `A roots 10:00-10:12 off 10:40: 40/28`. */
export const runText = (run: Run): string =>
  [
    run.bowl ?? '-',
    run.zone,
    `${time(run.firstOn)}${run.spanned ? `-${time(run.allOn)}` : ''}`,
    `off ${time(run.off)}: ${run.fromFirst ?? '?'}/${run.fromAll ?? '?'}`,
  ]
    .filter((part) => part !== '')
    .join(' ');

export const runsOf = (lines: string, given?: Parameters<typeof clockOf>[1]): string[] =>
  clockOf(lines, given).runs.map(runText);

export const problemsOf = (lines: string, given?: Parameters<typeof clockOf>[1]): string[] =>
  clockOf(lines, given).problems.map(({ kind, message }) => `${kind}: ${message}`);

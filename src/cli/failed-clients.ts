import { leftOutText } from '../pages/left-out.ts';
import type { ClientFault } from '../reckon/client-fault.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { type Judged, judge } from '../rules/judging.ts';
import { withoutControls } from '../text/width.ts';
import { type Opened, openJournal } from './open-journal.ts';
import { remark } from './print.ts';

/** Clients at whose notes the program fails: every command answers for the others, names them, and ends with 3. */

/** A journal as read, with each client worked out whom the program can work out. */
export type Reckoned = Opened & {
  readonly judged: Judged;
  /** Clients with their visits worked out, by name. */
  readonly all: ReadonlyMap<string, readonly VisitReckoned[]>;
  /** Those at whose notes the program failed, of whom nothing stands there. */
  readonly faults: readonly ClientFault[];
};

/**
 * Reads the journal that the paths belong to and works out its clients; `on` is the day it is judged on. Throws a refusal
 * as `openJournal` does.
 */
export const openReckoned = (paths: readonly string[], on?: string): Reckoned => {
  const opened = openJournal(paths);
  const judged = judge(opened.journal, on);
  const all = judged.everyone();
  return { ...opened, judged, all, faults: judged.faults() };
};

/** Throws the fault at the notes of a client who is asked for by name. */
export const failAt = (client: string, faults: readonly ClientFault[]): void => {
  const own = faults.find((one) => one.client === client);
  if (own !== undefined) throw own.fault;
};

/** What is said where the program fails at one client, on one line. */
export const clientFaultText = ({ client, fault: { message } }: ClientFault): string =>
  `A fault in the program while the notes of \`${client}\` were worked out: ${message.replace(/\.$/, '')}. Nothing is said of her, and no sum counts her; the others are as they should be.`;

/** The same for JSON: nothing where nobody is left out. */
export const failedJson = (faults: readonly ClientFault[]): object =>
  faults.length === 0
    ? {}
    : { failedClients: faults.map(({ client, fault: { message } }) => ({ client, fault: message })) };

/** The same for a report that is plain text. */
export const leftOutLines = (faults: readonly ClientFault[]): string[] => {
  const text = leftOutText(faults, withoutControls);
  return text === undefined ? [] : [text];
};

/**
 * Names the clients at whose notes the program failed, and gives the exit code: 3 where there are any, 2 where a file could
 * not be read, else the command's own.
 */
export const ended = ({ faults, unreadable }: Pick<Reckoned, 'faults' | 'unreadable'>, own = 0): number => {
  for (const fault of faults) remark(clientFaultText(fault));
  return faults.length > 0 ? 3 : unreadable.length > 0 ? 2 : own;
};

import type { ClientFault } from '../reckon/client-fault.ts';
import { compareFindings, type Finding } from '../text/finding.ts';

/**
 * What the compiler found, in order of report. A finding with a reason leaves `findings` for `answered`; an answered `stop`
 * stands in both, with its reason, and no longer counts against the notes.
 */
export type AllFound = {
  readonly findings: readonly Finding[];
  readonly answered: readonly Finding[];
  /** Clients whose notes the program could not work out; nothing is said of them. */
  readonly faults?: readonly ClientFault[];
};

/** Sorts findings into those to report and those that a `because` line explains. */
export const reported = (all: Finding[]): AllFound => {
  all.sort(compareFindings);
  return {
    findings: all.filter(({ reason, severity }) => reason === undefined || severity === 'stop'),
    answered: all.filter(({ reason }) => reason !== undefined),
  };
};

/** Whether a finding counts against the notes: a `stop` or a `fix` that no `because` line explains. */
export const counts = ({ severity, reason }: Finding): boolean => severity !== 'mind' && reason === undefined;

import type { ClientFile } from '../journal/journal.ts';
import { forgetRecent } from '../text/recently.ts';

/** A fault of the program while it worked out one client's notes. */
export type ClientFault = { readonly client: string; readonly full: string; readonly fault: Error };

/**
 * Works something out of one client's notes; what is thrown on the way stays with her, so that one client's trouble costs
 * no other her page.
 */
export const withinClient = <T extends object>({ name, full }: ClientFile, work: () => T): T | ClientFault => {
  try {
    return work();
  } catch (thrown) {
    forgetRecent();
    return { client: name, full, fault: thrown instanceof Error ? thrown : new Error(String(thrown)) };
  }
};

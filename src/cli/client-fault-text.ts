import { withoutControls } from '../text/width.ts';

/** What is said where the program fails at one client: nothing of her is shown, and what went wrong, without paths. */
export const clientFaultText = (client: string, { message }: Error): string =>
  `A fault in the program while ${withoutControls(client)} was worked out: ${withoutControls(message)}\nNothing is said of her notes; the others are checked.`;

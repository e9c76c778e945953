import { guardOutput } from './print.ts';
import { run } from './program.ts';
import { tellFailure } from './tell-failure.ts';

guardOutput();

// What is thrown outside the command itself would be told by Node, as it is.
process.on('uncaughtException', (thrown) => process.exit(tellFailure(thrown)));

/** Settles when the command has ended; nothing is thrown out of it. */
export const ended: Promise<void> = run(process.argv.slice(2))
  .catch(tellFailure)
  .then((code) => {
    process.exitCode = code;
  });

import type { Command, CommanderError } from 'commander';
import { nearNames } from '../text/near.ts';
import { lessonOf } from './lessons.ts';
import { offered, type Refusal, refusal } from './refusal.ts';

const quotedIn = (message: string): string => /'([^']*)'/.exec(message)?.[1] ?? '';

/** What commands and options were called before, with what they are called now. */
const RENAMED: ReadonlyMap<string, string> = new Map([
  ['backtest', 'hindsight'],
  ['explain', 'why'],
  ['tidy', 'neaten'],
  ['--allowed', '--reasons'],
]);

/** A word in the place of a command that is none, with the near ones. */
export const unknownCommand = (typed: string, program: Command): Refusal => {
  const near = nearNames(
    typed,
    program.commands.map((one) => one.name()),
  );
  const help = '`bowlbook --help` lists the commands.';
  const now = RENAMED.get(typed);
  if (now !== undefined) return refusal(`\`${typed}\` is called \`${now}\` now.`, `Type \`bowlbook ${now}\`.`);
  return refusal(`\`${typed}\` is not a command.`, near.length > 0 ? `Near: ${offered(near)}. ${help}` : help);
};

/** A wrong command line, in our words: what is wrong, the near names, and where to read on. */
export const usageRefusal = (error: CommanderError, words: readonly string[], program: Command): Refusal => {
  const name = words.find((word) => lessonOf(word) !== undefined);
  const command = program.commands.find((one) => one.name() === name);
  const help = `\`bowlbook ${name === undefined ? '' : `${name} `}--help\` shows how it is written.`;
  const what = quotedIn(error.message);
  const near = (names: readonly string[]): string => {
    const found = nearNames(what, names);
    return found.length > 0 ? `Near: ${offered(found)}. ${help}` : help;
  };
  const of = name === undefined ? '' : ` of \`${name}\``;
  switch (error.code) {
    case 'commander.unknownCommand':
      return unknownCommand(what, program);
    case 'commander.unknownOption': {
      const now = RENAMED.get(what);
      if (now !== undefined) return refusal(`\`${what}\` is called \`${now}\` now.`, help);
      const known = [...program.options, ...(command?.options ?? [])].flatMap(({ long }) => long ?? []);
      return refusal(`\`${what}\` is not an option${of}.`, near([...known, '--help']));
    }
    case 'commander.missingArgument':
      return refusal(`\`${name}\` needs its ${what}.`, help);
    case 'commander.optionMissingArgument':
      return refusal(`The option \`${what}\`${of} needs its value.`, help);
    case 'commander.excessArguments':
      return refusal(`There is more on the command line than \`${name}\` takes.`, help);
    case 'commander.conflictingOption': {
      const [, first = '', second = ''] = /'([^']*)'.*'([^']*)'/.exec(error.message) ?? [];
      return refusal(`\`${first}\` and \`${second}\` do not go together.`, 'Leave one out.');
    }
    default:
      return refusal(error.message.replace(/^error: /, ''), help);
  }
};

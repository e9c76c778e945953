import { Command, CommanderError, Option } from 'commander';
import { version } from '../../package.json';
import { commandHelp, programHelp } from './help.ts';
import { print, remarkLines } from './print.ts';
import { unknownCommand, usageRefusal } from './usage-refusal.ts';

const ON = '--on <DATE>';
const onOption = (says: string): Option => new Option(ON, says);
const htmlOption = (): Option =>
  new Option('--html', 'a whole page instead of Markdown, as -o FILE.html').conflicts('json');
const csvOption = (): Option => new Option('--csv', 'comma-separated values, RFC 4180').conflicts(['json', 'html']);
const outputOption = (): Option => new Option('-o, --output <FILE>', 'into a file instead of standard output');

const listOf = (word: string, earlier: readonly string[] = []): readonly string[] => [
  ...earlier,
  ...word.split(',').filter((one) => one !== ''),
];

/** Commands are loaded when they run, so that help never loads the reader of notes. */
const commandsOf = (program: Command, done: (code: number) => void): void => {
  program
    .command('now')
    .argument('<LINE>')
    .argument('[PATH...]')
    .option('--at <TIME>', 'the time to stamp, HH:MM (default: the machine’s clock)')
    .option('--client <NAME>', 'whose visit')
    .addOption(onOption('the day whose visits are looked at (default: the machine’s date)'))
    .action(async (line, paths, options) => done((await import('./now.ts')).now(line, paths, options)));
  program
    .command('mix')
    .argument('<BOWL...>')
    .option('--shelf <PATH>', 'a file or folder whose products are used (default: the current folder’s notes)')
    .option('--no-shelf', 'by no shelf, whatever stands in the current folder')
    .option('--scale <GRAMS>', 'what the scales can show, such as 0.1 (default: the salon’s, else 1)')
    .option('--json', 'the bowl and its findings as JSON')
    .addOption(onOption('the day whose prices hold (default: the machine’s date)'))
    .action(async (words, options) => done((await import('./mix.ts')).mix(words, options)));
  program
    .command('card')
    .argument('<CLIENT>')
    .argument('[PATH...]')
    .addOption(htmlOption())
    .option('--json', 'the visits as worked out, as JSON')
    .option('--money', 'with what the products cost')
    .option('--last <N>', 'the newest visits only')
    .addOption(new Option('--summary', 'the first page alone, without the visits').conflicts(['last', 'json']))
    .addOption(outputOption())
    .addOption(onOption('the day the card is for (default: the machine’s date)'))
    .action(async (name, paths, options) => done(await (await import('./card.ts')).card(name, paths, options)));
  program
    .command('clients')
    .argument('[PATH...]')
    .addOption(htmlOption())
    .option('--json', 'the list as JSON')
    .addOption(outputOption())
    .addOption(onOption('the day the list is for (default: the machine’s date)'))
    .action(async (paths, options) => done(await (await import('./clients.ts')).clients(paths, options)));
  program
    .command('prep')
    .argument('<DATE|CLIENT>')
    .argument('[PATH...]')
    .addOption(htmlOption())
    .addOption(outputOption())
    .addOption(onOption('the day of the client’s visit (default: the machine’s date)'))
    .action(async (word, paths, options) => done(await (await import('./prep.ts')).prep(word, paths, options)));
  program
    .command('rebook')
    .argument('<CLIENT>')
    .argument('[PATH...]')
    .addOption(onOption('the day of the visit (default: as the last `next` says)'))
    .option('--append <FILE>', 'add to a file; auto: to the file of the last visit')
    .action(async (name, paths, options) => done((await import('./rebook.ts')).rebook(name, paths, options)));
  program
    .command('check')
    .argument('[PATH...]')
    .option('--only <NAME>', 'one rule or severity; several with commas, or said again', listOf)
    .option('--reasons', 'what `because` lines explain, with the reasons, instead of what is open')
    .option('--all', 'every finding, also when one rule has more than 15 in a file')
    .option('--json', 'the findings as JSON')
    .addOption(onOption('the day to check for: its bowls may still be on, and later visits are named'))
    .action(async (paths, options) => done((await import('./check.ts')).check(paths, options)));
  program
    .command('watch')
    .argument('[FOLDER]')
    .option('--out <FOLDER>', 'where the pages are put (default: pages, in the folder itself)')
    .option('--open', 'serve the pages to this machine, with a live page of today')
    .option('--share', 'serve them to a phone or tablet on the network, which can note times')
    .option('--no-events', 'look through the files every half second, without the system’s events')
    .addOption(onOption('the day the pages are for (default: the machine’s date, as it turns)'))
    .action(async (path, options) => done(await (await import('./watch/watch.ts')).watchJournal(path, options)));
  program
    .command('usage')
    .argument('[PATH...]')
    .option('--from <DATE>', 'the first day')
    .option('--to <DATE>', 'the last day')
    .option('--by <WHAT>', 'one table: product, shade, kind, stylist, client or month')
    .addOption(htmlOption())
    .addOption(csvOption())
    .option('--json', 'the figures as JSON')
    .addOption(outputOption())
    .addOption(onOption('the day whose year is meant without --from and --to (default: the machine’s date)'))
    .action(async (paths, options) => done(await (await import('./usage.ts')).usage(paths, options)));
  program
    .command('money')
    .argument('[PATH...]')
    .option('--from <DATE>', 'the first day')
    .option('--to <DATE>', 'the last day')
    .option('--by <WHAT>', 'one table: visit, client, service, stylist or month')
    .addOption(htmlOption())
    .addOption(csvOption())
    .option('--json', 'the figures as JSON')
    .addOption(outputOption())
    .addOption(onOption('the day whose year is meant without --from and --to (default: the machine’s date)'))
    .action(async (paths, options) => done(await (await import('./money.ts')).money(paths, options)));
  program
    .command('hindsight')
    .argument('<SUBJECT>')
    .argument('[PATH...]')
    .option('--others', 'estimate each visit from all others, later ones too')
    .option('--json', 'every place and guess as JSON')
    .action(async (subject, paths, options) =>
      done(await (await import('./hindsight.ts')).hindsight(subject, paths, options)),
    );
  program
    .command('shelf')
    .argument('[PATH...]')
    .addOption(htmlOption())
    .addOption(csvOption())
    .option('--json', 'the figures as JSON')
    .addOption(outputOption())
    .addOption(onOption('the day at whose end the shelf is shown (default: the machine’s date)'))
    .action(async (paths, options) => done(await (await import('./shelf.ts')).shelf(paths, options)));
  program
    .command('order')
    .argument('[PATH...]')
    .option('--weeks <N>', 'how many weeks it is to last (default: 4)')
    .addOption(htmlOption())
    .addOption(csvOption())
    .option('--json', 'the figures as JSON')
    .addOption(outputOption())
    .addOption(onOption('the day of the order (default: the machine’s date)'))
    .action(async (paths, options) => done(await (await import('./order.ts')).order(paths, options)));
  program
    .command('trace')
    .argument('[LOT]')
    .argument('[PATH...]')
    .option('--client <NAME>', 'every lot that touched one client, instead of one lot’s clients')
    .addOption(htmlOption())
    .addOption(csvOption())
    .option('--json', 'the touches as JSON')
    .addOption(outputOption())
    .action(async (lot, paths, options) => done(await (await import('./trace.ts')).trace(lot, paths, options)));
  program
    .command('due')
    .argument('[PATH...]')
    .option('--weeks <N>', 'how many weeks ahead (default: 4)')
    .addOption(htmlOption())
    .addOption(csvOption())
    .addOption(new Option('--ics', 'a calendar, RFC 5545').conflicts(['json', 'html', 'csv']))
    .option('--json', 'who is due as JSON')
    .addOption(outputOption())
    .addOption(onOption('the day from which the weeks count (default: the machine’s date)'))
    .action(async (paths, options) => done(await (await import('./due.ts')).due(paths, options)));
  program
    .command('neaten')
    .argument('[PATH...]')
    .option('--check', 'name the files that would change and write none')
    .action(async (paths, options) => done(await (await import('./neaten.ts')).neaten(paths, options)));
  program
    .command('new')
    .argument('<FOLDER>')
    .addOption(onOption('the day of the example visit (default: the machine’s date)'))
    .action(async (folder, options) => done((await import('./new.ts')).begin(folder, options)));
  program
    .command('why')
    .argument('[RULE]')
    .action(async (name) => done(await (await import('./why.ts')).why(name)));
};

/** `help` and `help COMMAND`, in the place of the parser's own, which takes any word. */
const addHelp = (program: Command): void => {
  program
    .helpCommand(false)
    .command('help')
    .argument('[COMMAND]')
    .action((name: string | undefined) => {
      const command = program.commands.find((one) => one.name() === name);
      if (name !== undefined && command === undefined) throw unknownCommand(name, program);
      (command ?? program).outputHelp();
    });
};

/** Whether a parser's error is only the end of a help or version text that has been shown. */
const isShown = (error: CommanderError): boolean => error.exitCode === 0 || error.code === 'commander.help';

/**
 * Runs the command that the words name, and gives its exit code. Throws a refusal for a command line that is wrong or
 * a request that cannot be met.
 */
export const run = async (words: readonly string[]): Promise<number> => {
  let code = 0;
  const program = new Command('bowlbook')
    .version(version, '--version')
    .exitOverride()
    .configureOutput({ writeOut: print, writeErr: remarkLines, outputError: () => undefined })
    .configureHelp({ formatHelp: (command) => `${command.parent === null ? programHelp() : commandHelp(command)}\n` })
    .showSuggestionAfterError(false);
  const noColour = (): void => {
    process.env.NO_COLOR = '1';
  };
  for (const flag of ['no-colour', 'no-color'])
    program.addOption(new Option(`--${flag}`).hideHelp()).on(`option:${flag}`, noColour);
  commandsOf(program, (given) => {
    code = given;
  });
  addHelp(program);
  if (words.length === 0) {
    print(programHelp());
    return 0;
  }
  try {
    await program.parseAsync(words, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    if (!isShown(error)) throw usageRefusal(error, words, program);
  }
  return code;
};

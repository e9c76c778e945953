import type { Command } from 'commander';
import { GROUPS, LESSONS, lessonOf } from './lessons.ts';

/** Columns in which the help is set. */
const MEASURE = 88;

const wrapped = (text: string, indent: string): string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && indent.length + line.length + 1 + word.length > MEASURE) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, indent + line];
};

/** Pairs of a term and what it says, the terms in a column; a term too wide for it stands on a line of its own. */
const listed = (pairs: readonly (readonly [string, string])[], most = 28): string[] => {
  const wide = Math.max(...pairs.map(([term]) => term.length).filter((length) => length <= most), 0);
  const indent = ' '.repeat(wide + 4);
  return pairs.flatMap(([term, says]) => {
    const lines = wrapped(says, indent);
    if (term.length > wide) return [`  ${term}`, ...lines];
    return [`  ${term.padEnd(wide)}${lines[0]?.slice(wide + 2) ?? ''}`, ...lines.slice(1)];
  });
};

const EVERYWHERE: readonly (readonly [string, string])[] = [
  ['--no-colour', 'no colour, as NO_COLOR in the environment (FORCE_COLOR asks for it)'],
  ['-h, --help', 'this help'],
];

const EXITS: readonly (readonly [string, string])[] = [
  ['0', 'done, and nothing above `mind` found'],
  ['1', 'a `stop` or a `fix` found, or something that would not be written'],
  ['2', 'the command line is wrong, or a path cannot be read or written'],
  ['3', 'a fault in the program; where it is at one client’s notes, she is named, and the others are answered for'],
];

const examplesText = (examples: readonly (readonly [string, string])[]): string[] =>
  examples.flatMap(([words, says]) => [`  bowlbook ${words}`, `      ${says}`]);

/** The help of the whole program: the commands in groups, a first walk, the exit codes. */
export const programHelp = (): string =>
  [
    'bowlbook: a hair-colour journal in plain text, read, checked and worked out.',
    '',
    '  bowlbook COMMAND …        bowlbook COMMAND --help teaches one command',
    ...GROUPS.flatMap(([group, names]) => [
      '',
      group,
      ...listed(names.map((name) => [`${name} ${LESSONS[name].takes}`, LESSONS[name].says] as const)),
    ]),
    '',
    'A first walk',
    ...examplesText([
      ['new journal', 'makes a small journal to write over'],
      ['check journal', 'says what does not hold together'],
      ['mix "40 clay + 20vol 1:2"', 'works out a bowl, with no journal at all'],
    ]),
    '',
    'Options of every command',
    ...listed([...EVERYWHERE, ['--version', 'the version']]),
    '',
    'Exit codes',
    ...listed(EXITS),
    '',
    ...wrapped(
      'PATH is a file or a folder; without one it is the current folder. Notes are judged with the whole journal they belong to: all below the nearest folder with a file that opens a `salon`. A PATH inside it chooses what is shown.',
      '',
    ),
    '',
    ...wrapped(
      'Hair colour can hurt people. The makers’ instructions, local law and licensed practice come first; this program says what the notes show, and what they do not.',
      '',
    ),
  ].join('\n');

/** The help of one command: what it does, its options, examples to copy, its exit codes. */
export const commandHelp = (command: Command): string => {
  const lesson = lessonOf(command.name());
  if (lesson === undefined) return programHelp();
  const options = command.options.filter(({ hidden }) => !hidden);
  return [
    lesson.says,
    '',
    `  bowlbook ${command.name()} ${lesson.takes}`,
    '',
    ...lesson.more.flatMap((text) => [...wrapped(text, ''), '']),
    'Options',
    ...listed([...options.map(({ flags, description }) => [flags, description] as const), ...EVERYWHERE]),
    '',
    'Examples',
    ...examplesText(lesson.examples),
    '',
    'Exit codes',
    ...listed(lesson.exits.map(([code, says]) => [String(code), says] as const)),
  ].join('\n');
};

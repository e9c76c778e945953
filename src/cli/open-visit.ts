import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import { whereIs } from '../journal/where.ts';
import { withinClient } from '../reckon/client-fault.ts';
import { reckonClock } from '../reckon/clock/clock.ts';
import { salonOf } from '../reckon/salon-of.ts';
import type { Visit } from '../records/schema/entry.ts';
import { findClient } from './find-client.ts';
import { placeText } from './finding-text.ts';
import type { Shown } from './open-journal.ts';
import { type Refusal, refusal } from './refusal.ts';
import { timeText } from './today.ts';

/**
 * How far a visit is: nothing has gone on yet, something is on the hair, all is off, or it is finished, with a result or
 * paid. `untold`: the program failed at it, and it can be any.
 */
type Stage = 'begun' | 'running' | 'off' | 'finished' | 'untold';

/** A visit of the day, and how far it is. */
export type DayVisit = { readonly client: ClientFile; readonly visit: Stood<Visit>; readonly stage: Stage };

/** How a visit is named to its colourist: `Wren Abbott, 14:00, at clients/wren-abbott.bowl:351:1`. */
export const visitText = (journal: Journal, { client, visit }: DayVisit): string => {
  const { time } = visit.entry;
  const at = time?.minutes === undefined ? '' : `, ${timeText(time.minutes)}`;
  return `${client.full}${at}, at ${placeText(whereIs(journal, { in: visit, line: 0, at: 0 }))}`;
};

const minutesOf = ({ visit }: DayVisit): number => visit.entry.time?.minutes ?? -1;

/** Words that end a visit, unless something goes on after them. */
const LAST_WORDS: ReadonlySet<string> = new Set(['result', 'paid']);

const stageOf = (journal: Journal, visit: Stood<Visit>): Stage => {
  const { facts } = visit.entry;
  const ended = facts.findLastIndex(({ word }) => LAST_WORDS.has(word));
  if (ended > facts.findLastIndex(({ word }) => word === 'on')) return 'finished';
  const { runs } = reckonClock(visit, salonOf(journal, visit));
  if (runs.some(({ off, told }) => off === undefined && told === undefined)) return 'running';
  return runs.length > 0 || facts.some(({ word }) => word === 'off') ? 'off' : 'begun';
};

/** The visits of a day, the earliest first. */
const visitsOn = (journal: Journal, day: string): DayVisit[] =>
  [...journal.clients.values()]
    .flatMap((client) =>
      client.visits
        .filter(({ entry }) => entry.date?.date === day)
        .map((visit) => {
          const told = withinClient(client, () => ({ stage: stageOf(journal, visit) }));
          return { client, visit, stage: 'fault' in told ? 'untold' : told.stage };
        }),
    )
    .sort((a, b) => minutesOf(a) - minutesOf(b));

const clientsOf = (visits: readonly DayVisit[]): string[] => [...new Set(visits.map(({ client }) => client.name))];

/** Words of what comes after the colour: they may belong to a head that everything is off. */
const AFTER_WORDS: ReadonlySet<string> = new Set([
  ...['wash', 'rinse', 'dry', 'cut', 'left', 'home', 'result', 'photo', 'care', 'note'],
  ...['charge', 'deposit', 'paid', 'split', 'next', 'call', 'reaction', 'fit', 'hold', 'about'],
]);

/** The visits that a line with this first word can be meant for. */
const choiceOf = (visits: readonly DayVisit[], word: string, minute: number): readonly DayVisit[] => {
  const at = (stage: Stage): DayVisit[] => visits.filter((one) => one.stage === stage);
  const running = at('running');
  const begun = at('begun').filter((one) => minutesOf(one) <= minute);
  const off = AFTER_WORDS.has(word) ? at('off') : [];
  const choice = [...running, ...off, ...(running.length === 0 ? begun : []), ...at('untold')];
  // Where the day has one visit alone, she may have come early.
  return choice.length === 0 && visits.length === 1 ? at('begun') : choice;
};

/** Why no visit is taken, all of the day's, and whose to name. */
const undecided = (
  journal: Journal,
  day: string,
  visits: readonly DayVisit[],
  choice: readonly DayVisit[],
): Refusal => {
  const named = (list: readonly DayVisit[]): string => list.map((one) => visitText(journal, one)).join('; ');
  const [meant, rest] = choice.length === 0 ? [visits, []] : [choice, visits.filter((one) => !choice.includes(one))];
  const running = choice.every(({ stage }) => stage === 'running') ? 'have something on' : 'can be meant';
  const why = choice.length === 0 ? `No visit of ${day} is under way` : `${choice.length} visits of ${day} ${running}`;
  const others = rest.length === 0 ? '' : ` Also on the day: ${named(rest)}.`;
  return refusal(
    `${why}: ${named(meant)}.${others}`,
    `Say whose it is: ${clientsOf(meant)
      .map((name) => `\`--client ${name}\``)
      .join(' or ')}.`,
  );
};

/**
 * The visit that a line with this first word belongs to: of the day's visits the only one with something still on, else
 * the only one that had begun by `minute`, of the files that are shown; what comes after the colour may go to one that all is off. With a client named
 * it is hers, a finished one too. Throws a refusal when there is none or more than one: a line is never guessed onto the
 * wrong head.
 */
export const openVisit = (
  journal: Journal,
  { day, minute, word }: { readonly day: string; readonly minute: number; readonly word: string },
  name: string | undefined,
  shown: Pick<Shown, 'has'>,
): DayVisit => {
  const client = name === undefined ? undefined : findClient(journal, name);
  const visits = visitsOn(journal, day).filter(
    (one) => shown.has(one.visit.file) && (client === undefined || one.client.name === client.name),
  );
  if (visits.length === 0) {
    const of = client === undefined ? '' : ` of ${client.full}`;
    throw refusal(
      `No visit${of} is dated ${day} in these notes.`,
      `Open one with a line such as \`visit ${day} ${client?.name ?? 'wren-abbott'}\`, or with \`bowlbook rebook ${client?.name ?? 'CLIENT'} --on ${day} --append auto\`.`,
    );
  }
  const choice = choiceOf(visits, word, minute);
  const [only] = choice;
  if (only !== undefined && choice.length === 1) return only;
  if (client === undefined) throw undecided(journal, day, visits, choice);
  const last = visits.findLast((one) => minutesOf(one) <= minute) ?? visits[0];
  if (choice.length === 0 && last !== undefined) return last;
  throw refusal(
    `${client.full} has ${choice.length} visits on ${day} that can be meant: ${choice.map((one) => visitText(journal, one)).join('; ')}.`,
    'Type the line into the file.',
  );
};

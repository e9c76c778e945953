import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import { reckonClock } from '../reckon/clock.ts';
import { salonOf } from '../reckon/salon-of.ts';
import type { Visit } from '../records/schema/entry.ts';
import { findClient } from './find-client.ts';
import { placeText } from './finding-text.ts';
import { refusal } from './refusal.ts';
import { timeText } from './today.ts';

/** A visit of the day, and whether something is still on the hair. */
export type DayVisit = { readonly client: ClientFile; readonly visit: Stood<Visit>; readonly running: boolean };

/** How a visit is named to its colourist: `Wren Abbott, 14:00, at clients/wren-abbott.bowl:351:1`. */
export const visitText = ({ client, visit }: DayVisit): string => {
  const { time } = visit.entry;
  const at = time?.minutes === undefined ? '' : `, ${timeText(time.minutes)}`;
  return `${client.full}${at}, at ${placeText({ file: visit.file, line: visit.line, at: 0 })}`;
};

const minutesOf = ({ visit }: DayVisit): number => visit.entry.time?.minutes ?? -1;

/** The visits of a day, the earliest first. */
const visitsOn = (journal: Journal, day: string): DayVisit[] =>
  [...journal.clients.values()]
    .flatMap((client) =>
      client.visits
        .filter(({ entry }) => entry.date?.date === day)
        .map((visit) => {
          const { runs } = reckonClock(visit, salonOf(journal, visit));
          return { client, visit, running: runs.some(({ off }) => off === undefined) };
        }),
    )
    .sort((a, b) => minutesOf(a) - minutesOf(b));

/**
 * The visit that a line of the clock belongs to: of the day's visits the only one with something still on, else the
 * latest that had begun by `minute`. Throws a refusal when there is none, or when several have something on: a line of
 * the clock is never guessed onto the wrong head.
 */
export const openVisit = (journal: Journal, day: string, minute: number, name: string | undefined): DayVisit => {
  const client = name === undefined ? undefined : findClient(journal, name);
  const visits = visitsOn(journal, day).filter((one) => client === undefined || one.client.name === client.name);
  if (visits.length === 0) {
    const of = client === undefined ? '' : ` of ${client.full}`;
    throw refusal(
      `No visit${of} is dated ${day} in these notes.`,
      `Open one with a line such as \`visit ${day} ${client?.name ?? 'wren-abbott'}\`, or with \`bowlbook rebook ${client?.name ?? 'CLIENT'} --on ${day} --append auto\`.`,
    );
  }
  const running = visits.filter((one) => one.running);
  const begun = visits.filter((one) => minutesOf(one) <= minute);
  const latest = Math.max(...begun.map(minutesOf));
  const choice =
    running.length > 0 ? running : begun.length > 0 ? begun.filter((one) => minutesOf(one) === latest) : visits;
  const [only] = choice;
  if (only !== undefined && choice.length === 1) return only;
  const why = running.length > 1 ? 'have something on' : 'can be meant';
  throw refusal(
    `${choice.length} visits of ${day} ${why}: ${choice.map(visitText).join('; ')}.`,
    `Say whose it is: ${choice.map((one) => `\`--client ${one.client.name}\``).join(' or ')}.`,
  );
};

import type { ClientFile } from '../journal/journal.ts';
import { type Awaited, awaitedOn } from '../reckon/ahead/awaited.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { clockText, daysBetween } from '../text/dates.ts';
import { dayText } from './days.ts';
import { awaitedText } from './due.ts';
import { escapeText } from './escape.ts';

/** Who is awaited on a day, in the order they come. */

type Coming = { readonly client: ClientFile; readonly awaited: Awaited };

/** Clients whose day is this far off are named where nobody is awaited: a week. A choice. */
const NEAR = 7;

/** The minute of the day that a client is noted or asked for; after the others where no note says. */
const minuteFor = ({ awaited: { time } }: Coming): number => time ?? Number.POSITIVE_INFINITY;

const comingBy = (all: ReadonlyMap<string, readonly VisitReckoned[]>, on: string): Coming[] =>
  [...all.values()].flatMap((visits) => {
    const [first] = visits;
    const awaited = awaitedOn(visits, on);
    return first === undefined || awaited === undefined ? [] : [{ client: first.client, awaited }];
  });

const inOrder = (a: Coming, b: Coming): number => {
  const [one, other] = [minuteFor(a), minuteFor(b)];
  if (one !== other) return one < other ? -1 : 1;
  return a.client.name < b.client.name ? -1 : 1;
};

/** The clients with a visit noted on the day, or who are awaited from it on by `next` or their rhythm, by the time they come. */
export const clientsOn = (all: ReadonlyMap<string, readonly VisitReckoned[]>, on: string): ClientFile[] =>
  comingBy(all, on)
    .filter(({ awaited }) => awaited.first === on)
    .sort(inOrder)
    .map(({ client }) => client);

/** `10:00 Beth Tarn; 13:00 Inês Figueiral`: who comes on a day and when, as the first words of its sheets. */
export const comingMarkdown = (all: ReadonlyMap<string, readonly VisitReckoned[]>, on: string): string => {
  const coming = comingBy(all, on)
    .filter(({ awaited }) => awaited.first === on)
    .sort(inOrder);
  const named = ({ client }: Coming): string => escapeText(client.full);
  const timed = coming.flatMap((one) => {
    const { time } = one.awaited;
    return time === undefined ? [] : [`${clockText(time)} ${named(one)}`];
  });
  const rest = coming.filter(({ awaited: { time } }) => time === undefined).map(named);
  const untimed = rest.length === 0 ? [] : [`awaited, no time noted: ${rest.join(', ')}`];
  const count = `${coming.length} ${coming.length === 1 ? 'client' : 'clients'}`;
  return `**${dayText(on)}** ${count}: ${[...timed, ...untimed].join('; ')}\n`;
};

/** A page for a day on which nobody is awaited, naming those who are near it. */
export const nobodyMarkdown = (all: ReadonlyMap<string, readonly VisitReckoned[]>, on: string): string => {
  const near = comingBy(all, on)
    .filter(({ awaited: { first } }) => Math.abs(daysBetween(on, first)) <= NEAR)
    .sort((a, b) => (a.awaited.first === b.awaited.first ? inOrder(a, b) : a.awaited.first < b.awaited.first ? -1 : 1));
  const items = near.map(({ client, awaited }) => `- ${awaitedText(awaited)}: ${escapeText(client.full)}`);
  const rest = near.length === 0 ? [] : [`Within a week of it:`, items.join('\n')];
  return `${[`# To prepare for ${dayText(on)}`, 'No visit is noted for this day, and no `next` line or rhythm names it.', ...rest].join('\n\n')}\n`;
};

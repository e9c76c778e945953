import { clockText } from '../../text/dates.ts';
import { capital } from '../../text/fold.ts';
import type { Place } from '../../text/span.ts';
import type { ClockProblem, Minute, PartOff } from '../model.ts';
import { listed } from '../say.ts';
import type { Applied } from './runs.ts';
import type { Doubt } from './settle.ts';

/** The wording of what the clock finds: figures first, and one thing to type. */

/** `A roots`, `A`, `roots`, or what was put on when neither is named. */
export const runName = ({ bowl, zone }: Pick<Applied, 'bowl' | 'zone'>): string =>
  [bowl === undefined ? '' : `bowl ${bowl}`, zone].filter((part) => part !== '').join(' ') || 'the colour';

export const halfDay = (
  { kind, read, other }: Doubt,
  place: Place,
  hours: { readonly from: Minute; readonly to: Minute },
): ClockProblem => {
  const both = [clockText(read), clockText(other)].sort();
  const open = `${clockText(hours.from)}-${clockText(hours.to)}`;
  const within =
    kind === 'either-half-day'
      ? `${both.join(' and ')} are both within the hours ${open}`
      : `Neither ${both.join(' nor ')} is within the hours ${open}`;
  return {
    kind,
    place,
    message: `${within}; the note is read as ${clockText(read)}.`,
    todo: `Write \`${both.join('` or `')}\`, with two figures for the hour, or \`am\` or \`pm\` after it.`,
  };
};

export const noSuchBowl = (place: Place, bowl: string, mixed: readonly string[]): ClockProblem => ({
  kind: 'no-such-bowl',
  place,
  message:
    mixed.length === 0
      ? `The line names bowl ${bowl}, and this visit mixes none.`
      : `The line names bowl ${bowl}, and this visit mixes ${listed(mixed)}.`,
  todo: `Write \`bowl ${bowl}\` and what is in it, or one of the bowls that are mixed.`,
});

export const bowlUnnamed = (run: Applied, mixed: readonly string[]): ClockProblem => ({
  kind: 'bowl-unnamed',
  place: run.place,
  message: `The line names no bowl, and this visit mixes ${listed(mixed)}.`,
  todo: `Write its letter, as in \`on ${clockText(run.firstOn)} ${[mixed[0], run.zone].filter(Boolean).join(' ')}\`, or where each is placed.`,
});

export const relativeWithoutOn = (place: Place, after: number, named: string): ClockProblem => ({
  kind: 'relative-without-on',
  place,
  message: `+${after} counts from an \`on\` line${named === '' ? '' : ` of ${named}`}, and none stands.`,
  todo: 'Write the time of day, as in `14:35`, or the `on` line it counts from.',
});

/** `0+25` in a visit that does not say when the clock of the head began. */
export const headWithoutZero = (place: Place, head: number): ClockProblem => ({
  kind: 'relative-without-on',
  place,
  message: `0+${head} counts from a \`zero\` line, and none stands.`,
  todo: 'Write when the first foil went on, as in `zero 9:40`.',
});

/** Of two `zero` lines the first counts. */
export const secondZero = (place: Place, first: Place): ClockProblem => ({
  kind: 'relative-without-on',
  place,
  message: 'A second `zero` line: the clock of the head begins once, and the first one counts.',
  todo: 'Take one of the two out.',
  also: [{ place: first, says: 'counts' }],
});

export const relativeToSeveral = (
  place: Place,
  after: number,
  running: readonly { readonly bowl: string; readonly firstOn: Minute }[],
): ClockProblem => {
  const named = running.flatMap(({ bowl }) => (bowl === '' ? [] : [`\`+${after} ${bowl}\``]));
  const ons = running.map(({ bowl, firstOn }) => `${bowl === '' ? 'an unnamed one' : bowl} from ${clockText(firstOn)}`);
  return {
    kind: 'relative-to-several',
    place,
    message: `+${after} counts from one \`on\` line, and ${running.length} bowls are running: ${listed(ons)}.`,
    todo: `Name the bowl after the time: ${listed(named, 'or')}.`,
  };
};

export const spanBackwards = (place: Place, from: Minute, to: Minute): ClockProblem => ({
  kind: 'span-backwards',
  place,
  message: `The span ${clockText(from)}-${clockText(to)} ends ${from - to} min before it begins.`,
  todo: 'Write the earlier time first.',
});

export const offBeforeOn = (place: Place, run: Applied, off: Minute): ClockProblem => ({
  kind: 'off-before-on',
  place,
  message: `Off at ${clockText(off)} is ${run.firstOn - off} min before ${runName(run)} went on, at ${clockText(run.firstOn)}.`,
  todo: 'Write the time it came off, or the time it went on, as it was.',
  also: [{ place: run.place, says: 'went on' }],
});

export const offBeforeAllOn = (place: Place, run: Applied, off: Minute): ClockProblem => ({
  kind: 'off-before-on',
  place,
  message: `Off at ${clockText(off)} is ${run.allOn - off} min before all of ${runName(run)} was on, at ${clockText(run.allOn)}.`,
  todo: 'Write the time it came off, or the span it went on in, as it was.',
  also: [{ place: run.place, says: 'went on' }],
});

export const checkBeforeOn = (place: Place, run: Applied, at: Minute): ClockProblem => ({
  kind: 'check-before-on',
  place,
  message: `A check at ${clockText(at)} is ${run.firstOn - at} min before ${runName(run)} went on, at ${clockText(run.firstOn)}.`,
  todo: 'Write the time of the check as it was.',
  also: [{ place: run.place, says: 'went on' }],
});

/** `parts`: what of it came off before. */
export const noOff = (run: Applied, names: readonly string[], parts: readonly PartOff[] = []): ClockProblem => {
  const last = parts.at(-1);
  return last?.placed === undefined ? noOffAtAll(run, names) : noOffOfRest(run, parts, last, last.placed);
};

const noOffOfRest = (run: Applied, parts: readonly PartOff[], last: PartOff, placed: number): ClockProblem => {
  const gone = parts.reduce((sum, { sections }) => sum + sections, 0);
  const rest = placed - gone;
  return {
    kind: 'no-off',
    place: last.place,
    message: `${capital(runName(run))}: ${gone} of ${placed} sections came off by ${clockText(last.minute)}, and no \`off\` line follows for the other ${rest}.`,
    todo: `Write when ${rest === 1 ? 'it' : 'they'} came off, as in \`off ${clockText(last.minute + 10)} ${[run.bowl, run.zone].filter(Boolean).join(' ')}\`.`,
    also: [{ place: run.place, says: 'went on' }],
  };
};

export const sectionsOver = (place: Place, gone: number, placed: number): ClockProblem => ({
  kind: 'sections-over',
  place,
  message: `${gone} sections have come off here, and ${placed} were placed.`,
  todo: 'Write how many came off, or how many were placed, as it was.',
});

const noOffAtAll = (run: Applied, names: readonly string[]): ClockProblem => ({
  kind: 'no-off',
  place: run.place,
  message: `${capital(listed(names))} went on at ${clockText(run.firstOn)}, and no \`off\` line follows.`,
  todo: `Write when it came off, as in \`off ${clockText(run.allOn + 30)}${run.bowl === undefined ? '' : ` ${run.bowl}`}\`.`,
});

/** `open` is what went on before and has no `off` line: the one that may be meant. */
export const offWithoutOn = (place: Place, named: string, open: Applied | undefined): ClockProblem => ({
  kind: 'off-without-on',
  place,
  message:
    named === ''
      ? 'Nothing is on at this time to take off.'
      : `No \`on\` line puts ${named} on${open === undefined ? '' : `, and ${runName(open)} has no \`off\` line`}.`,
  todo:
    open === undefined
      ? 'Write the `on` line, with the time it went on.'
      : `Write \`off\` with what came off, or the \`on\` line of ${named}.`,
  ...(open !== undefined && { also: [{ place: open.place, says: 'went on, no `off`' }] }),
});

export const saidMinutes = (place: Place, said: number, run: Applied, off: Minute): ClockProblem => {
  const [first, all] = [off - run.firstOn, off - run.allOn];
  const fromAll = all === first ? '' : `, ${all} min from all on`;
  return {
    kind: 'said-minutes',
    place,
    message: `${said} min is typed; ${clockText(run.firstOn)} to ${clockText(off)} is ${first} min${fromAll}.`,
    todo: 'Correct the minutes or a time, or leave the minutes out: they are worked out.',
    also: [{ place: run.place, says: 'went on' }],
  };
};

/** What went on with neither a time of day nor minutes, and no `off` line of its own. */
export const noMinutes = (run: Pick<Applied, 'bowl' | 'zone' | 'place'>, names: readonly string[]): ClockProblem => {
  const named = [run.bowl, run.zone].filter(Boolean).join(' ');
  return {
    kind: 'no-off',
    place: run.place,
    message: `${capital(listed(names))} went on, with neither a time nor minutes.`,
    todo: `Write when, as in \`on 14:35 ${named}\` and its \`off\`, or how long, as in \`on ${named} for 8min\`.`,
  };
};

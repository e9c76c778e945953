import type { Place } from '../../text/span.ts';
import type { ClockProblem, Minute } from '../model.ts';
import { relativeToSeveral, relativeWithoutOn } from './problems.ts';
import { type Applied, type Ending, endingsOf, type Mention, type SpokenOf } from './runs.ts';

type Spoken = { readonly run: Applied; readonly off: Minute | undefined };

/** What a time such as `+25` counts from, and what it stands on. */
export type After = {
  readonly after: number;
  readonly place: Place;
  readonly mention: Mention;
  /** The line takes things off: what has come off by a line of its own is not meant. */
  readonly ends: boolean;
};

/**
 * The minute that `+25` means: after the first `on` of the bowl and zone that its line names, else of the only bowl
 * running then. A problem when nothing it names is on, or several bowls are running.
 */
export const minuteAfterOn = (
  { after, place, mention, ends }: After,
  offs: readonly Ending[],
  spoken: SpokenOf,
): Minute | ClockProblem => {
  const ended = endingsOf(offs, spoken).of;
  const byBowl = new Map<string, Spoken[]>();
  for (const run of spoken(mention)) {
    const bowl = mention.bowls.length > 0 ? '' : (run.bowl ?? '');
    byBowl.set(bowl, [...(byBowl.get(bowl) ?? []), { run, off: ended.get(run)?.minute }]);
  }
  const groups = [...byBowl].map(([bowl, own]) => {
    const firstOn = Math.min(...own.map(({ run }) => run.firstOn));
    const at = firstOn + after;
    return { bowl, firstOn, running: own.some(({ off }) => off === undefined || (!ends && at <= off)) };
  });
  if (groups.length === 0)
    return relativeWithoutOn(
      place,
      after,
      [...mention.bowls.map((bowl) => `bowl ${bowl}`), ...mention.zones].join(' '),
    );
  const running = groups.filter((group) => group.running);
  const meant = groups.length === 1 ? groups : running;
  const [one] = meant;
  if (one !== undefined && meant.length === 1) return one.firstOn + after;
  return relativeToSeveral(place, after, running.length > 1 ? running : groups);
};

import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn } from '../../reckon/bowl/contents.ts';
import { depthsAt, depthText, meets, placeName, type SeenDepth, startsAt } from '../../reckon/head/seen-at.ts';
import { isLightening } from '../../reckon/head/services.ts';
import { STEPS } from '../../reckon/lift/aims.ts';
import type { BowlReckoned, Run, VisitReckoned } from '../../reckon/model.ts';
import { goesBack, placeOfStage, type SeenStage, stagesOf } from '../../reckon/timing/stages-seen.ts';
import { bowlOf } from '../../reckon/timing/timed-runs.ts';
import { clockText } from '../../text/dates.ts';
import { stageDepth } from '../../trade/stages.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** Minutes before it came off that a look still tells how it came off: a choice. */
const LAST = 10;

/** Depths beyond the last look before it is worth a word, and before it cannot be: choices, since a stage is a rough sign. */
const [ROOM, FAR] = [1.5, 2];

type LastLook = { readonly run: Run; readonly seen: SeenStage; readonly stage: string; readonly depth: number };

/** Kinds that lift: what they do after the last look is seen by no check. */
const LIFTS: ReadonlySet<string | undefined> = new Set(['lightener', 'high-lift', 'permanent']);

const lifts = (visit: VisitReckoned, run: Run): boolean => {
  const bowl = bowlOf(visit, run);
  return bowl === undefined || itemsIn(bowl).some(({ kind }) => LIFTS.has(kind));
};

/** What was seen last of each place of a run, where the look was about when it came off. */
const lastLooks = (run: Run): LastLook[] => {
  const last = new Map<string, LastLook>();
  for (const seen of stagesOf(run)) {
    for (const { place, stage, depth } of STEPS)
      if (place === seen.end) last.set(seen.zone, { run, seen, stage, depth });
  }
  return [...last.values()].filter(({ seen }) => run.off !== undefined && run.off - seen.look.at <= LAST);
};

/** The lightest look at a place that everything lifting there ended with; undefined where some of it was not looked at. */
const lookFor = (visit: VisitReckoned, zone: string): LastLook | undefined => {
  const own = visit.salon.zones;
  const runs = visit.clock.runs.filter((run) => lifts(visit, run) && meets(zone, [run.zone], own));
  const looks = runs.map((run) => lastLooks(run).filter(({ seen }) => meets(zone, [seen.zone], own)));
  if (looks.some((of) => of.length === 0)) return undefined;
  return looks.flat().toSorted((a, b) => b.depth - a.depth)[0];
};

const isTimed = ({ clock: { runs } }: VisitReckoned, { name }: BowlReckoned): boolean =>
  runs.some(({ bowl }) => bowl === name);

/** Whether something lightened, and all that lifts has its time: else it may have gone on after every look. */
const isLookedAt = (visit: VisitReckoned): boolean => {
  const bowls = bowlsPutOn(visit);
  return (
    bowls.some(isLightening) &&
    visit.clock.runs.every(({ bowl }) => bowl !== undefined) &&
    bowls.every((bowl) => isTimed(visit, bowl) || !itemsIn(bowl).some(({ kind }) => LIFTS.has(kind)))
  );
};

function* found(visit: VisitReckoned): Generator<Found> {
  for (const result of depthsAt(visit, 'result')) {
    const look = lookFor(visit, result.zone);
    if (look === undefined || result.seen.words.some(({ word }) => isNear(word, look.depth))) continue;
    const beyond = result.depth.low - Math.max(look.depth, ...lightestStart(visit, result.zone));
    // Looks that go back are a finding of their own, and the last of them tells nothing until that is mended.
    if (beyond >= ROOM && !goesBack(stagesOf(look.run))) yield told(result, look, beyond);
  }
}

/** A result that names the stage it was seen at agrees with the look, however its depth is counted. */
const isNear = (word: string, depth: number): boolean =>
  Math.abs((stageDepth(word) ?? Number.POSITIVE_INFINITY) - depth) < ROOM;

/** Hair that starts lighter than a stage is rough sign of is not darkened by lightener. */
const lightestStart = (visit: VisitReckoned, zone: string): number[] =>
  startsAt(visit, zone === '' ? [] : [zone]).map(({ depth }) => depth.high);

const told = (result: SeenDepth, { seen, stage, depth }: LastLook, beyond: number): Found => ({
  place: result.place,
  severity: beyond >= FAR ? 'fix' : 'mind',
  message: `${placeName(result.zone)}: result ${depthText(result.depth)}, and the last look, at ${clockText(seen.look.at)}, is ${stage}, about ${depth}.`,
  expected: 'Toner lightens nothing, so hair stays as light as it came off (an undercoat chart; a rough guide).',
  todo: 'Write the depth as it dried, the last look that is missing, or the bowl that lightened it further.',
  label: 'lighter than it came off',
  also: [{ place: placeOfStage(seen), says: 'the last look' }],
});

export default defineRule({
  name: 'result-beyond-look',
  family: 'result',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['result'] },
  what: 'The result is two depths or more lighter than the last look when the lightener came off; `mind` from one and a half.',
  why: 'One of the two is a slip, and the next visit would start two depths from where the hair is.',
  source: { kind: 'published', cites: 'US training page, "Underlying pigment chart", for the depth of a stage' },
  check: (visit) => (depthsAt(visit, 'result').length > 0 && isLookedAt(visit) ? found(visit) : NONE),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:30 A top orange
      off 14:31 A
      result top 10
                 ^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:30 A top orange
      off 14:31 A
      result top 6`,
});

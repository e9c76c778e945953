import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { placeOf } from '../../reckon/cite.ts';
import { isColour } from '../../reckon/head/services.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import type { VisitFact } from '../../records/schema/entry.ts';
import { defineRule, NONE } from '../rule.ts';

/** Words that end a visit's notes. */
const CLOSING: ReadonlySet<string> = new Set(['charge', 'paid', 'next']);

type Clock = VisitReckoned['clock'];

/** Words that say what came of it as well, or why nothing did. */
const TOLD: ReadonlySet<string> = new Set(['result', 'stopped', 'reaction', 'photo', 'declined']);

/** Whether a line says what came of it: a later word about it, by telephone, does as well. */
const isTold = (fact: VisitFact): boolean => TOLD.has(fact.word) || (fact.word === 'call' && fact.says !== undefined);

const isOver = ({ runs, unclocked }: Clock, bowl: string): boolean =>
  runs.some((run) => run.bowl === bowl && (run.off !== undefined || run.told !== undefined)) ||
  unclocked.some((run) => run.bowl === bowl && run.minutes !== undefined);

/** Whether a look at or after the last coming off gives a depth, or how much grey is covered. */
const isSeenAfter = ({ runs, looks }: Clock): boolean => {
  const offs = runs.flatMap(({ off }) => off ?? []);
  return looks.some(
    ({ at, seen }) =>
      (at === undefined ? offs.length === 0 : at >= Math.max(...offs)) &&
      seen.some(({ depth, grey }) => depth !== undefined || grey !== undefined),
  );
};

export default defineRule({
  name: 'result-missing',
  family: 'result',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  what: 'Colour was put on and taken off, the visit is charged or the next one set, and neither a result, a last look nor a later word is noted.',
  why: 'Without a result, next time cannot tell what this colour does on this hair.',
  source: { kind: 'common practice' },
  check: (visit) => {
    const { facts } = visit.visit.entry;
    if (facts.some(isTold) || !facts.some(({ word }) => CLOSING.has(word))) return NONE;
    const bowl = bowlsPutOn(visit).find(isColour);
    if (bowl === undefined || !isOver(visit.clock, bowl.name) || isSeenAfter(visit.clock)) return NONE;
    return [
      {
        place: placeOf(visit.visit, { line: 0 }, visit.visit.entry.date?.at),
        message: `Bowl ${bowl.name} went on and came off, and no \`result\` line follows.`,
        expected: 'Depth and tone by place, as in `result lengths 9 violet, roots 6`.',
        todo: 'Write a `result` line, in as few words as it takes.',
        label: 'no result',
      },
    ];
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
          ^^^^^^^^^^
      bowl A 30 neon teal
      on 14:00 A
      off 14:20 A
      charge brights 45`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      on 14:00 A
      off 14:20 A
      result teal
      charge brights 45`,
});

import type { ClientFile, Journal } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { firstLeave } from '../../reckon/client/letters.ts';
import { isLightening, isOxidative, testsFor } from '../../reckon/client/state.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { isClearAgainstItself, resultOf } from '../../reckon/testing/test-result.ts';
import type { Client, Visit } from '../../records/schema/entry.ts';
import type { SecondPlace } from '../../text/finding.ts';
import type { Place } from '../../text/span.ts';
import type { CautionTopic } from '../../trade/cautions.ts';
import type { HarmKind } from '../../trade/harm/signs.ts';
import { harmOf } from '../../trade/harm/told-harm.ts';
import { kindFacts } from '../../trade/kinds.ts';
import { type HarmLine, harmLinesOf } from '../harm-lines.ts';
import { defineRule, type Found } from '../rule.ts';

/** `reaction none`, `reaction "no redness"`: a look that found nothing answers nothing. */
const NOTHING = /^(?:none|nil|nothing|no\s(?!longer\b))/iu;

/** Whether a visit has a `reaction` line that says there was one. */
const hasReaction = ({ entry }: Stood<Visit> | Stood<Client>): boolean =>
  entry.facts.some(
    (fact) =>
      fact.word === 'reaction' &&
      !NOTHING.test([...fact.words.map(({ word }) => word), fact.says?.text ?? ''].join(' ').trim()),
  );

const isVisit = (stood: Stood<Client> | Stood<Visit>): stood is Stood<Visit> => stood.entry.kind === 'visit';

/** Lines that tell of what was there before the work: a `caution` that says so answers them as well. */
const BEFOREHAND: ReadonlySet<string> = new Set(['declined', 'start', 'aim', 'history', 'note']);

const cautionTells = ({ entry }: Stood<Client> | Stood<Visit>): boolean =>
  entry.facts.some(
    (fact) =>
      (fact.word === 'caution' && harmOf(fact.text, 'skin') !== undefined) ||
      (fact.word === 'allergy' && (fact.to.length > 0 || fact.says !== undefined)),
  );

/** The day from which a test or a hold answers a telling: that of the news, else of the visit. */
const dayOf = ({ stood, fact }: HarmLine): string => {
  if (fact.word === 'call' && fact.date !== undefined) return fact.date.date;
  return isVisit(stood) ? (stood.entry.date?.date ?? '') : '';
};

const isAnsweredSkin = (client: ClientFile, line: HarmLine): boolean => {
  const { stood, fact } = line;
  if (fact.word === 'unread') return true;
  // A skin test that is no longer `clear` has rules of its own.
  if (fact.word === 'test' && fact.test.name === 'skin') {
    if (isClearAgainstItself(fact)) return false;
    const result = resultOf(fact);
    return result === 'adverse' || result === 'other';
  }
  if (!isVisit(stood)) return client.visits.some(hasReaction) || client.entries.some(cautionTells);
  const other = fact.word === 'about' ? client.visits.filter((one) => one.entry.date?.date === fact.date.date) : [];
  if ([stood, ...other].some(hasReaction)) return true;
  return BEFOREHAND.has(fact.word) && fact.word !== 'note' && [stood, ...client.entries].some(cautionTells);
};

const isAnsweredFibre = (client: ClientFile, visit: VisitReckoned | undefined, line: HarmLine): boolean => {
  const { stood, fact } = line;
  if (fact.word === 'unread') return true;
  const other = fact.word === 'about' ? client.visits.filter((one) => one.entry.date?.date === fact.date.date) : [];
  const entries = [...client.entries, ...client.visits];
  if ([stood, ...other].some(hasReaction)) return true;
  const day = dayOf(line);
  if (
    entries.some(
      (one) =>
        one.entry.facts.some(({ word }) => word === 'hold') && (!isVisit(one) || (one.entry.date?.date ?? '') >= day),
    )
  )
    return true;
  const tests = visit === undefined ? [] : testsFor(client, visit.salon.hours);
  return tests.some(
    ({ kind, notNeeded, made, result, visit: under }) =>
      (kind === 'strand' || kind === 'stretch') &&
      !notNeeded &&
      result !== undefined &&
      // One of the same visit came before the work, unless it says itself that the hair went.
      (under === stood ? result === 'adverse' : made !== undefined && made.date > day),
  );
};

const TOLD: Readonly<Record<HarmKind, { what: string; again: string }>> = {
  skin: { what: 'reaction', again: 'colour or lightener' },
  fibre: { what: 'broken hair', again: 'lightener' },
};

/** The first visit after a day that puts on what the harm speaks against, with a bowl of it. */
const againOn = (visits: readonly VisitReckoned[], day: string, kind: HarmKind): SecondPlace<Place> | undefined => {
  for (const visit of visits) {
    if (visit.date <= day) continue;
    const bowl = bowlsPutOn(visit).find(kind === 'skin' ? isOxidative : isLightening);
    if (bowl !== undefined)
      return { place: placeInBowl(bowl, () => true), says: `${TOLD[kind].again} again on ${visit.date}` };
  }
  return undefined;
};

/** A caution that is true of what was put on; none where nothing on had dye or lightener in it. */
const cautionFor = ({ stood, fact }: HarmLine, visits: readonly VisitReckoned[]): CautionTopic | false => {
  if (fact.word === 'test') return 'reaction';
  const of = visits.find(({ visit, date }) => (fact.word === 'about' ? date === fact.date.date : visit === stood));
  const kinds =
    of === undefined ? [] : bowlsPutOn(of).flatMap((bowl) => itemsIn(bowl).flatMap(({ kind }) => kind ?? []));
  if (kinds.some((kind) => kindFacts(kind).skinTest)) return 'reaction';
  if (kinds.includes('lightener')) return 'lightener';
  return kinds.length === 0 && 'reaction';
};

const skinFound = (
  { fact, harm }: HarmLine,
  day: string | undefined,
): { message: string; expected: string; todo: string } => {
  if (fact.word === 'test' && fact.test.name === 'skin')
    return {
      message: `The skin test is read \`clear\`, and its line tells of "${harm.word}".`,
      expected: 'Redness, itching or swelling at the test is a reaction (common practice).',
      todo: 'Write `reaction` in the place of `clear`; if it is none, why: `because harm-told "…"`.',
    };
  return {
    message: `The \`${fact.word}\` line tells of "${harm.word}", and ${day === undefined ? 'no visit' : `the visit of ${day}`} has no \`reaction\` line.`,
    expected:
      'A reaction stands in a line of its own: later colour and skin tests are held against that line, not against words (common practice).',
    todo: `Write \`reaction\`, where and what, under the visit it came of; if it is none, why: \`because harm-told "…"\`.`,
  };
};

const fibreFound = ({ fact, harm }: HarmLine): { message: string; expected: string; todo: string } => ({
  message: `The \`${fact.word}\` line tells of "${harm.word}", and no \`hold\`, strand or stretch test follows it.`,
  expected:
    'Hair that went gummy, snapped or melted is tested or left alone before it is lightened again (common practice).',
  todo: 'Write `hold lightener 12w` or the strand test made since; if it is something else, why: `because harm-told "…"`.',
});

/** Whether a doctor gave leave since: the telling still stands in front, and no longer as a stop. */
const hasLeave = (client: ClientFile, line: HarmLine): boolean =>
  isVisit(line.stood) && firstLeave(client, dayOf(line)) !== undefined;

const foundOf = (
  client: ClientFile,
  lines: readonly HarmLine[],
  kind: HarmKind,
  visits: readonly VisitReckoned[],
  reckoned: ReadonlyMap<Stood, VisitReckoned>,
): Found | undefined => {
  const [line, ...others] = lines;
  if (line === undefined) return undefined;
  const grave = lines.every((one) => hasLeave(client, one)) ? 'mind' : 'stop';
  const visit = reckoned.get(line.stood);
  const day = line.fact.word === 'about' ? line.fact.date.date : visit?.date;
  const again = againOn(visits, day ?? '', kind);
  const { message, expected, todo } = kind === 'skin' ? skinFound(line, day) : fibreFound(line);
  return {
    place: line.place,
    severity: kind === 'skin' ? grave : 'fix',
    message: again === undefined ? message : `${message.slice(0, -1)}; ${again.says}.`,
    expected,
    todo,
    label: TOLD[kind].what,
    caution: kind === 'skin' ? cautionFor(line, visits) : 'lightener',
    also: [...others.map(({ place }) => ({ place, says: 'told here too' })), ...(again === undefined ? [] : [again])],
  };
};

function* foundIn(client: ClientFile, visits: readonly VisitReckoned[], journal: Journal): Generator<Found> {
  const reckoned = new Map(visits.map((visit): [Stood, VisitReckoned] => [visit.visit, visit]));
  for (const stood of [...client.entries, ...client.visits]) {
    const visit = reckoned.get(stood) ?? visits[0];
    const skin = harmLinesOf(journal, stood, 'skin').filter((line) => !isAnsweredSkin(client, line));
    const fibre = harmLinesOf(journal, stood, 'fibre').filter((line) => !isAnsweredFibre(client, visit, line));
    const found = [foundOf(client, skin, 'skin', visits, reckoned), foundOf(client, fibre, 'fibre', visits, reckoned)];
    for (const one of found) if (one !== undefined) yield one;
  }
}

export default defineRule({
  name: 'harm-told',
  family: 'cautions',
  severity: 'stop',
  bears: 'till-answered',
  over: 'client',
  what: 'A line tells in words of hurt skin or eyes, and no `reaction` line says so; `mind` where a doctor gave leave since, `fix` for hair that went gummy, snapped or melted, with no `hold` or test after it.',
  why: 'A reaction is told by telephone days later, and the next hand reads the lines that stand first.',
  source: { kind: 'common practice' },
  caution: 'reaction',
  check: foundIn,
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-03-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      call 2026-03-06 09:00 "scalp blistered behind both ears"
                                   ^^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-03-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      call 2026-03-06 09:00 "no blisters, no itching, happy with it"`,
});

import type { ClientFile, Journal } from '../../journal/journal.ts';
import { type HoldInForce, holdsOn, reactionsOf, type TestMade, testsFor } from '../../reckon/client/state.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { onFile } from '../../reckon/on-file.ts';
import { addDays } from '../../text/dates.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import { kindFacts } from '../../trade/kinds.ts';
import { reactionTold } from '../../trade/reaction-words.ts';
import { defineRule, type Found } from '../rule.ts';
import { dayNamed } from '../said-on-file.ts';

/** Days before a hold ends in which a test for the visit after it is made. A choice. */
const LEAD = 14;

/** A hold that keeps dye off the skin: one for good or up to a letter, or one whose reason tells of a reaction. */
const isOfSkin = ({ until, says }: HoldInForce): boolean =>
  until === undefined || /reaction|allerg|react(?:ed|s)/iu.test(says ?? '') || reactionTold(says ?? '') === 'grave';

/** A test that a doctor made is none of the salon's. */
const BY_DOCTOR =
  /(?<!\p{L})(?:dr\.?|doctor|dermatolog\p{L}*|hospital|clinic|allergist|arzt|ärztin|hautarzt|hautärztin|klinik|médecin|dermatologue|hôpital|médic[ao]|dermatólog[ao]|dermatologista|clínica|hospital)(?!\p{L})/iu;

/** Whether a test is made with something that a hold keeps off. */
const isHeld = ({ what }: HoldInForce, { products }: TestMade, journal: Journal): boolean => {
  if (products.length === 0) return what === 'dye' || what === 'oxidative' || what === 'all';
  return products.some((name) => {
    const kind = journal.shelf.get(name)?.kind;
    if (what === name || what === kind) return true;
    if (kind === undefined) return what === 'all';
    const { colours, lightens, oxidative } = kindFacts(kind);
    if (what === 'all') return colours || lightens;
    return what === 'dye' ? colours : what === 'oxidative' && oxidative !== false;
  });
};

const foundOf = (
  client: ClientFile,
  test: TestMade,
  salon: VisitReckoned['salon'],
  journal: Journal,
): Found | undefined => {
  const { made, fact, reading } = test;
  if (made === undefined || BY_DOCTOR.test([fact.says?.text, reading.says?.text].join(' '))) return undefined;
  const reacted = reactionsOf(client, client.visits, salon.hours, made.date).at(-1)?.date;
  const hold = holdsOn(made.date, client, client.visits).find((one) => {
    // A hold begins after the day that set it; where nothing tells that, a test before it may be what it came of.
    const since = one.from ?? dayNamed(one.says ?? '') ?? reacted;
    const isLast = one.until !== undefined && addDays(made.date, LEAD) >= one.until;
    return isOfSkin(one) && !isLast && since !== undefined && since < made.date && isHeld(one, test, journal);
  });
  if (hold === undefined) return undefined;
  const says = hold.says === undefined ? '' : `, "${hold.says}"`;
  return {
    place: test.place,
    message: `A skin test was made on ${made.date}, and \`${hold.what}\` is held${hold.untilLetter ? ' until a letter' : ''}.`,
    expected: sentence`A skin test puts the same dye on the skin. The hold stands at ${lineName(hold.place)}${says}.`,
    todo: `Write who made or allowed it in quotation marks, the day the hold began with \`from\`, or why: \`because test-under-hold "…"\`.`,
    label: 'under a hold',
    also: [{ place: hold.place, says: 'the hold' }],
  };
};

export default defineRule({
  name: 'test-under-hold',
  family: 'testing',
  severity: 'stop',
  bears: 'always',
  over: 'client',
  what: 'A skin test is made with what a hold keeps off the skin: one for good, up to a letter, or with a reaction as its reason.',
  why: 'Whoever reacted once can react to the test itself, and worse.',
  source: { kind: 'published', cites: 'SCCP/1104/07, edition of 18 December 2007: a test can sensitise as well' },
  caution: 'reaction',
  *check(client, visits, journal) {
    if (onFile(client).hold.length === 0) return;
    const salon = visits[0]?.salon ?? journal.salon;
    for (const test of testsFor(client, salon.hours)) {
      const found = test.kind === 'skin' && !test.notNeeded ? foundOf(client, test, salon, journal) : undefined;
      if (found !== undefined) yield found;
    }
  },
  bad: `
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      hold dye from 2026-03-05 to letter "eyelids swelled"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
           ^^^^`,
  good: `
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      hold dye from 2026-03-05 to letter "eyelids swelled"
      letter 2026-08-20 "Dr N: may have hair colour"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear`,
});

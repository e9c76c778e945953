import { allergies, cautionsOn, holdsOn, isUnder, type ReactionOnFile, reactionsOf } from '../reckon/state.ts';
import type { Finding } from '../text/finding.ts';
import { codeSpan, escapeText } from './escape.ts';
import { findingInShort, pointsInto } from './finding-lines.ts';
import { type HeadView, salonOfHead } from './head-view.ts';
import { ALERTS_HEADING } from './headings.ts';
import { commas, quote, spaced } from './noted.ts';
import { skinTestAlert } from './skin-tests.ts';

/** What someone has to know before touching the hair: always the first block, and never without a sentence. */

const reactionItem = (one: ReactionOnFile): string => {
  const what = one.by === 'skin-test' ? 'positive skin test' : 'reaction';
  const where = commas([...one.bowls.map((bowl) => `bowl ${escapeText(bowl)}`), ...one.zones.map(escapeText)]);
  const said = commas([...one.products.map(escapeText), where, one.words.map(escapeText).join(' ')]);
  return spaced([`- **Reaction** ${one.date}, ${what}${said === '' ? '' : `: ${said}`}`, one.says && quote(one.says)]);
};

const holdItems = ({ on, client, visits }: HeadView): string[] => {
  const before = visits.filter(({ date }) => date < on).map(({ visit }) => visit);
  return holdsOn(on, client, before).map(({ what, says, from, until }) => {
    const span = commas([from && `since ${from}`, until === undefined ? 'for good' : `until ${until}`]);
    return spaced([`- **Hold** no ${escapeText(what)}, ${span}`, says && quote(says)]);
  });
};

const ageItems = (view: HeadView): string[] => {
  const { under } = salonOfHead(view);
  if (under === undefined || isUnder(under.age, view.client, view.on) !== true) return [];
  const only = under.only.length === 0 ? '' : `; the salon's policy: ${under.only.map(escapeText).join(', ')} only`;
  return [`- **Age** under ${under.age} on ${view.on}${only}`];
};

/** Lines under the client's own entries of which something was not read: it may be an allergy. */
const unreadItems = ({ client, journal }: HeadView): string[] => {
  const lines = client.entries.flatMap(({ file, line, entry }) =>
    entry.facts
      .filter((fact) => fact.word === 'unread' || fact.rest !== undefined)
      .map((fact) => (journal.sources.get(file)?.lines[line + fact.line] ?? '').trim()),
  );
  const count = lines.length === 1 ? '1 line' : `${lines.length} lines`;
  return lines.length === 0 ? [] : [`- **Not read** ${count} could not be read: ${commas(lines.map(codeSpan))}`];
};

/** Rules on sums of the notes, which hurt nobody. */
const SUMS: ReadonlySet<string> = new Set(['more-left-than-mixed', 'again-circle']);

/** Rules on what a visit needed before it: of one that is over, the tests and the age as they stand now say more. */
const ONCE = /^(skin-test-|under-age$|label-age$)/;

/**
 * Whether a `stop` can still hurt: one about hair or skin, or about a visit of the day or noted ahead. The others stand
 * among the findings.
 */
export const isAlert = ({ visits, ahead = [], on }: HeadView, finding: Finding): boolean => {
  if (finding.severity !== 'stop' || SUMS.has(finding.rule)) return false;
  const visit = [...visits, ...ahead].find((one) => pointsInto(finding, one.visit));
  return visit === undefined || visit.date >= on || !ONCE.test(finding.rule);
};

const stopItems = (view: HeadView): string[] =>
  view.findings
    .filter((finding) => isAlert(view, finding))
    .map((finding) => {
      const visit = view.visits.find(({ visit: stood }) => pointsInto(finding, stood));
      return findingInShort(finding, visit?.date);
    });

/** The alerts of a client on a day, a list item each. */
export const alertItems = (view: HeadView): string[] => {
  const { client, visits, on } = view;
  const stoods = visits.map(({ visit }) => visit);
  return [
    ...reactionsOf(client, stoods, salonOfHead(view).hours, on).map(reactionItem),
    ...allergies(client).map(({ text }) => `- **Allergy** ${escapeText(text)}`),
    ...cautionsOn(on, client).map(({ text, until }) =>
      spaced([`- **Caution** ${escapeText(text)}${until === undefined ? '' : `, until ${until}`}`]),
    ),
    ...unreadItems(view),
    ...holdItems(view),
    ...ageItems(view),
    ...skinTestAlert(view),
    ...stopItems(view),
  ];
};

/** The alerts of a client on a day as blocks of Markdown with their heading. */
export const alertBlocks = (view: HeadView): string[] => {
  const items = alertItems(view);
  const none = `The notes show no reaction, allergy, caution or hold in force on ${view.on}, and nothing that stops the work. Ask all the same.`;
  return [`## ${ALERTS_HEADING}`, items.length === 0 ? none : items.join('\n')];
};

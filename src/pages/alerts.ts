import type { Stood } from '../journal/source.ts';
import { lineText } from '../journal/where.ts';
import { placeOf } from '../reckon/cite.ts';
import { allergies, cautionsOn, holdsOn, isUnder, type ReactionOnFile, reactionsOf } from '../reckon/client/state.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { unreadHarm } from '../rules/harm-lines.ts';
import type { Bearing } from '../rules/rule.ts';
import { ruleNamed } from '../rules/rule-text.ts';
import type { Finding } from '../text/finding.ts';
import { recently } from '../text/recently.ts';
import { codeSpan, escapeText } from './escape.ts';
import { entryAt, findingInShort } from './finding-lines.ts';
import { type HeadView, listOf, salonOfHead } from './head-view.ts';
import { ALERTS_HEADING } from './headings.ts';
import { commas, quote, spaced } from './noted.ts';
import { skinTestAlert } from './skin-tests.ts';
import { isGrounded, unfoundBlocks } from './unfound.ts';

/** What someone has to know before touching the hair: always the first block, and never without a sentence. */

const reactionItem = (one: ReactionOnFile): string => {
  const what = one.by === 'skin-test' ? 'positive skin test' : 'reaction';
  const where = commas([...one.bowls.map((bowl) => `bowl ${escapeText(bowl)}`), ...one.zones.map(escapeText)]);
  const said = commas([...one.products.map(escapeText), where, one.words.map(escapeText).join(' ')]);
  return spaced([`- **Reaction** ${one.date}, ${what}${said === '' ? '' : `: ${said}`}`, one.says && quote(one.says)]);
};

const holdItems = ({ on, client, visits }: HeadView): string[] => {
  const before = visits.filter(({ date }) => date < on).map(({ visit }) => visit);
  return holdsOn(on, client, before).map(({ what, says, from, until, untilLetter }) => {
    const end = until !== undefined ? `until ${until}` : untilLetter ? 'until a letter' : 'for good';
    const span = commas([from && `since ${from}`, end]);
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
  const lines = client.entries.flatMap((stood) =>
    stood.entry.facts
      .filter((fact) => fact.word === 'unread' || fact.rest !== undefined)
      .map((fact) => lineText(journal, placeOf(stood, fact)).trim()),
  );
  // A line of a visit that could not be read and tells of harm is one of them.
  const told = unreadHarm(journal, client).map(({ fact }) => (fact.word === 'unread' ? fact.typed : ''));
  lines.push(...new Set(told));
  const count = lines.length === 1 ? '1 line' : `${lines.length} lines`;
  return lines.length === 0 ? [] : [`- **Not read** ${count} could not be read: ${commas(lines.map(codeSpan))}`];
};

const finderIn = ({ journal }: HeadView, visits: readonly VisitReckoned[]) => {
  const of = new Map<Stood, VisitReckoned>(visits.map((one) => [one.visit, one]));
  const at = entryAt<Stood>(journal, [...of.keys()]);
  return (finding: Finding): VisitReckoned | undefined => {
    const stood = at(finding);
    return stood && of.get(stood);
  };
};

/** By view: asked of every finding, by several blocks. A view lives as long as its page is drawn. */
const visitFinder = recently((view: HeadView) => finderIn(view, view.visits));
const aheadFinder = recently((view: HeadView) => finderIn(view, view.ahead ?? []));

/** The visit of the view that a finding stands in. */
const visitOf = (view: HeadView, finding: Finding): VisitReckoned | undefined =>
  visitFinder(view)(finding) ?? aheadFinder(view)(finding);

/** A rule that is not known here is taken to bear on every day. */
const bearingOf = ({ rule }: Finding): Bearing => ruleNamed(rule)?.bears ?? 'always';

/**
 * Whether a finding can still hurt: harm told in words, and a `stop` about hair, skin or the notes as they are, or about a visit of the day or noted
 * ahead. Those about a visit that is over stand in that visit, the others among the findings.
 */
export const isAlert = (view: HeadView, finding: Finding): boolean => {
  const bears = bearingOf(finding);
  if (bears === 'till-answered') return true;
  if (finding.severity !== 'stop' || bears === 'never') return false;
  const visit = visitOf(view, finding);
  return visit === undefined || visit.date >= view.on || bears === 'always';
};

/** Whether a `stop` is about what a visit did that is over by the day. */
export const isOver = (view: HeadView, finding: Finding): boolean => {
  const visit = visitOf(view, finding);
  return (
    finding.severity === 'stop' && bearingOf(finding) === 'that-day' && visit !== undefined && visit.date < view.on
  );
};

const stopItems = (view: HeadView): string[] =>
  view.findings
    .filter((finding) => isAlert(view, finding))
    .map((finding) => {
      const visit = visitFinder(view)(finding);
      return findingInShort(finding, visit && `visit of ${visit.date}`);
    });

/**
 * The stops about visits that are over, as words: `2 stops: 2026-05-02 past-time; 2026-06-01 label-age`; undefined
 * without any. Those that a reason answers are none.
 */
export const foundEarlier = (view: HeadView): string | undefined => {
  const over = view.findings.filter((finding) => finding.reason === undefined && isOver(view, finding));
  if (over.length === 0) return undefined;
  const byDate = new Map<string, string[]>();
  for (const finding of over) {
    const date = visitOf(view, finding)?.date ?? '';
    byDate.set(date, [...(byDate.get(date) ?? []), finding.rule]);
  }
  const days = [...byDate].sort(([a], [b]) => (a < b ? 1 : -1));
  const said = days.map(([date, rules]) => `${date} ${[...new Set(rules)].join(', ')}`);
  return `${over.length} ${over.length === 1 ? 'stop' : 'stops'}: ${said.join('; ')}`;
};

const earlierItems = (view: HeadView): string[] => {
  const found = foundEarlier(view);
  return found === undefined ? [] : [`- **Found in earlier visits** ${escapeText(found)}`];
};

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
    ...(view.stopsAhead ?? []).map((finding) => findingInShort(finding, 'the visit as planned')),
  ];
};

/** The alerts of a client on a day as blocks of Markdown with their heading. */
export const alertBlocks = (view: HeadView): string[] => {
  const items = alertItems(view);
  const whose = isGrounded(view.journal) ? 'The notes' : 'These notes';
  const none = `${whose} have no \`reaction\` line, and no \`allergy\`, \`caution\` or \`hold\` line in force on ${view.on}. Ask all the same.`;
  const first = items.length === 0 ? [none] : [];
  const list = [...items, ...earlierItems(view)];
  return [`## ${ALERTS_HEADING}`, ...unfoundBlocks(view.journal), ...first, ...listOf(list)];
};

import { placeOf } from '../reckon/cite.ts';
import { allergies, cautionsOn, holdsOn } from '../reckon/client/state.ts';
import type { ClientFact } from '../records/schema/entry.ts';
import type { Line } from '../text/span.ts';
import { sameLine } from '../text/span.ts';
import { isAlert, isOver } from './alerts.ts';
import { clientItem } from './client-lines.ts';
import { entryAt, findingInShort, findingItem } from './finding-lines.ts';
import { clientLines, type HeadView, listOf, notedIn } from './head-view.ts';
import { spaced } from './noted.ts';

/** What the client's own entry says, apart from what already stands among the alerts and the tests. */

const HAIR = ['natural', 'grey', 'hair', 'pattern', 'zone', 'history', 'avoid', 'consent', 'letter'] as const;
const REST = ['note', 'because', 'unread'] as const;

/** Words of a client entry that the head shows elsewhere: born beside the name, tests by product, the rest as alerts. */
const SHOWN_ELSEWHERE = ['born', 'test', 'allergy', 'caution', 'hold'] as const;

/** Every word of a client entry is on the card. */
export const CLIENT_PARTS: readonly ClientFact['word'][] = [...HAIR, ...REST, ...SHOWN_ELSEWHERE];

/** Lines that are no alert on the day: cautions and holds not in force, and an `allergy none`. */
const noAlert = (view: HeadView): string[] => {
  const { on, client } = view;
  const alerts = [...cautionsOn(on, client), ...holdsOn(on, client, []), ...allergies(client)];
  const isAlerted = (line: Line): boolean => alerts.some(({ place }) => sameLine(place, line));
  return clientLines(view, ['allergy', 'caution', 'hold'])
    .filter(({ stood, fact }) => !isAlerted(placeOf(stood, fact)))
    .map(({ stood, fact }) =>
      spaced([clientItem(notedIn(view, stood), fact), fact.word !== 'allergy' && `(not in force on ${on})`]),
    );
};

/** The client's hair and what else is on file, as blocks of Markdown with their heading. */
export const onFileBlocks = (view: HeadView): string[] => {
  const lines = clientLines(view, [...HAIR, ...REST]).map(({ stood, fact }) => clientItem(notedIn(view, stood), fact));
  const all = [...lines, ...noAlert(view)];
  return ['## Hair and history', ...(all.length === 0 ? ['Nothing noted yet.'] : listOf(all))];
};

/**
 * Findings that point into no visit, and every `stop` that is none of the alerts and not told among what earlier visits
 * showed, such as weights that do not add up.
 */
export const findingBlocks = (view: HeadView): string[] => {
  const visitOf = entryAt(view.journal, view.client.visits);
  const items = view.findings.flatMap((finding) => {
    if (isAlert(view, finding) || (finding.reason === undefined && isOver(view, finding))) return [];
    const visit = visitOf(finding);
    if (visit === undefined) return [findingItem(finding)];
    return finding.severity === 'stop'
      ? [findingInShort(finding, visit.entry.date && `visit of ${visit.entry.date.date}`)]
      : [];
  });
  return items.length === 0 ? [] : ['## Findings', items.join('\n')];
};

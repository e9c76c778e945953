import { type Journal, joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { cardMarkdown } from '../../src/pages/card.ts';
import { cardHtml } from '../../src/pages/card-html.ts';
import { codeSpan } from '../../src/pages/escape.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { judge } from '../../src/rules/judging.ts';
import { applyEdits } from '../../src/text/edit.ts';
import type { Finding } from '../../src/text/finding.ts';
import type { FilePlace } from '../../src/text/span.ts';
import { allPages } from './all-pages.ts';
import { equal, liesIn, promise } from './promises.ts';

/** What the whole way from notes to pages promises of any journal. Each throws an error that says what is broken. */

/** Words that only a fault of the program puts on a page, unless the notes hold them. */
const FAULTS = ['undefined', 'NaN', 'Infinity', '[object '];

const saysNoFault = (text: string, typed: string, what: string): void => {
  for (const fault of FAULTS)
    if (text.includes(fault))
      promise(
        typed.includes(fault),
        () => `${what} says ${fault}: ${text.slice(text.indexOf(fault) - 120).slice(0, 200)}`,
      );
};

/** No tag of the notes is a tag of the page. */
const TAG = /<(?:script|img|iframe|object|embed|link|base)\b(?! rel="icon")/i;

const placeHolds = (journal: Journal, { file, line, at }: FilePlace, what: string): void =>
  liesIn(at, journal.sources.get(file)?.lines[line], `${what} at line ${line + 1} of ${file}`);

const findingHolds = (journal: Journal, finding: Finding, typed: string): void => {
  const { rule, place, also = [], mend, message, expected = '', todo = '', label = '' } = finding;
  placeHolds(journal, place, `the finding ${rule}`);
  for (const other of also) placeHolds(journal, other.place, `the second place of ${rule}`);
  promise(message !== '', () => `the finding ${rule} says nothing`);
  saysNoFault(
    [message, expected, todo, label, ...also.map(({ says }) => says)].join('\n'),
    typed,
    `the finding ${rule}`,
  );
  if (mend === undefined) return;
  for (const edit of mend.edits) placeHolds(journal, edit.place, `the mend of ${rule}`);
  for (const file of new Set(mend.edits.map((edit) => edit.place.file)))
    applyEdits(file, journal.sources.get(file)?.lines ?? [], mend.edits);
};

const cardsHold = (journal: Journal, typed: string, on: string): void => {
  const all = reckonAll(journal);
  const { findings, answered, faults } = judge(journal, on).all();
  promise(faults === undefined, () => `a client is not worked out: ${faults?.[0]?.fault}`);
  for (const finding of [...findings, ...answered]) findingHolds(journal, finding, typed);
  const found = [...new Set([...findings, ...answered])];
  for (const client of journal.clients.values()) {
    const visits = all.get(client.name) ?? [];
    const card = cardMarkdown(journal, client, visits, found, { on, money: true });
    saysNoFault(card, typed, `the card of ${client.name}`);
    for (const { entry } of [...client.entries, ...client.visits])
      for (const fact of entry.facts)
        if (fact.word === 'unread' && fact.typed !== '')
          promise(card.includes(codeSpan(fact.typed)), () => `the card of ${client.name} does not show ${fact.typed}`);
    const html = cardHtml(journal, client, visits, found, { on, money: true });
    promise(!TAG.test(html), () => `the page of ${client.name} holds the tag ${TAG.exec(html)?.[0]}`);
    saysNoFault(html, typed, `the page of ${client.name}`);
  }
};

/** Lines of notes up to which the cards of a chain are drawn: what is tried is how it is worked out. */
const MOST_DRAWN = 700;

/** A journal with long chains of remakes in it: reckoned and checked at any length, and drawn where it is short. */
export const chainHolds = (files: readonly Uint8Array[], on: string): void => {
  const journal = joinSources(files.map((bytes, index) => readSource(`${index}.bowl`, bytes)));
  const typed = [...journal.sources.values()].flatMap(({ lines }) => lines);
  if (typed.length <= MOST_DRAWN) {
    cardsHold(journal, typed.join('\n'), on);
    return;
  }
  const { findings, faults } = judge(journal, on).all();
  promise(faults === undefined, () => `a client is not worked out: ${faults?.[0]?.fault}`);
  for (const finding of findings) placeHolds(journal, finding.place, `the finding ${finding.rule}`);
};

/** A journal of any files: read, reckoned, checked, and every card drawn. `every` draws all other pages too. */
export const journalHolds = (files: readonly Uint8Array[], on: string, every: boolean): void => {
  const sources = files.map((bytes, index) => readSource(`${String.fromCharCode(97 + index)}.bowl`, bytes));
  const typed = sources.flatMap(({ lines }) => lines).join('\n');
  const journal = joinSources(sources);
  cardsHold(journal, typed, on);
  if (!every) return;
  for (const [name, page] of allPages(journal, on)) {
    saysNoFault(page, typed, `the page ${name}`);
    promise(!name.endsWith('.html') || !TAG.test(page), () => `the page ${name} holds the tag ${TAG.exec(page)?.[0]}`);
  }
  const turned = joinSources(sources.toReversed());
  equal(
    judge(turned, on).all().findings,
    judge(journal, on).all().findings,
    'files in another order give other findings',
  );
};

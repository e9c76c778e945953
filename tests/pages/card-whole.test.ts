import { describe, expect, it } from 'vitest';
import type { Journal } from '../../src/journal/journal.ts';
import type { Stood } from '../../src/journal/source.ts';
import { BODY_WORDS } from '../../src/notation/words.ts';
import { VISIT_PARTS } from '../../src/pages/card-visit.ts';
import { CLIENT_PARTS } from '../../src/pages/on-file.ts';
import type { Client, Visit } from '../../src/records/schema/entry.ts';
import type { Finding } from '../../src/text/finding.ts';
import { allFindings, cardOf, clientOf, demoJournal, journalOf, readText, SHELF } from './compiled.ts';
import { foldedText, leavesOf } from './leaves.ts';

const EVERY_WORD = `${SHELF}
client ada-lowe "Ada Lowe"
  born 1990
  natural 6½
  grey 30% temples
  hair fine, porosity high ends
  pattern crown "whorl"
  history 2024-05 henna lengths
  allergy nickel
  caution sore scalp until 2026-02
  avoid "stripes"
  consent photos 2026-01-02
  letter 2026-05-02 "Dr Quill: may have colour"
  zone band "left, 8 cm down"
  test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
  hold powder 4w "dry"
  note likes tea
  because ratio-off-mix "runny on purpose"
  frobnicate the sides

visit 2026-09-04 14:00 ada-lowe by io "first time here"
  redo 2026-08-30
  about 2026-08-30 ends "went mauve"
  aim brighter
  asked medicines "folic acid"
  want lengths 9 violet
  start roots 6, lengths 8 warm?, ends ~8
  regrowth 2cm roots
  zone streak "right of the parting"
  test metal 11:05 40 dev-6 + 2 bond 20min clear
  bowl A ~40 clay lot K2231 + 20vol 1:2 = 120 "stiff"
  plus A 3 bond
  weighed A 41 clay, 82 dev-6
  more A 60 at 15:05
  bowl B 4 scoop clay + 60 dev-6
  place A+B back weave x28 gap ~5mm turn A B A mirror off-scalp 1cm foil "neat"
  leave crown "stands up"
  zero 14:30 "first foil"
  on 14:35-14:55 A hairline for 40min "quick" by io
  check 14:55 A hairline gold "even"
  check 14:50
  off 15:15 A hairline 40min
  heat 14:40-14:45 A "lamp"
  wash 15:24 15 clarify
  rinse 15:20-15:24
  dry 15:30
  cut 15:40 "dusting"
  left A 14, B 3 kept
  home B 12 + 180 clarify
  reaction +18 A temples burning "at once"
  stopped 14:55 B "rinsed"
  declined lightener "not this year"
  caution razor nick behind the left ear
  result lengths 9 violet, roots 6 "even"
  photo after.jpg
  care no pool for 48 h
  note left early
  charge foils 95, cut 42 "as agreed"
  charge discount 10%
  charge total 123.30
  deposit 50 for 2026-12-12
  paid 173.30 card
  split io 60%, nia 40%
  fit 2 packs withybed "8 honey"
  call 2026-09-12 10:20 "redness gone"
  next 6-8w 14:00 roots, A -20% "bring a picture"
  hold lightener to 2027-01 "ends gummy"
  because past-time "by the eye"
  again C from 2026-07-10 A 80%
  frobnicate the fringe
`;

/** The head of a card, and its visits oldest first, as a reader reads them. */
const partsOf = (card: string): { head: string; visits: string[] } => {
  const [head = '', ...visits] = readable(card).split('\u0001');
  return { head, visits: visits.reverse() };
};

const readable = (card: string): string => foldedText(readText(card.replace(/^### /gm, '### \u0001')));

const lost = (stood: Stood<Client> | Stood<Visit>, text: string): string[] =>
  stood.entry.facts.flatMap((fact) =>
    leavesOf(fact)
      .filter(({ any }) => any.length > 0 && !any.some((one) => text.includes(foldedText(one))))
      .map(({ path, any }) => `${stood.file}, ${fact.word} ${path}: ${any.join(' or ')}`),
  );

const lostOf = (journal: Journal, name: string, findings: readonly Finding[]): string[] => {
  const client = clientOf(journal, name);
  const { head, visits } = partsOf(cardOf(journal, name, { on: '2026-11-25' }, findings));
  return [
    ...client.entries.flatMap((stood) => lost(stood, head)),
    ...client.visits.flatMap((stood, index) => lost(stood, visits[index] ?? '')),
  ];
};

const wordsUnder = (kind: 'client' | 'visit'): string[] =>
  Object.entries(BODY_WORDS)
    .filter(([, { under }]) => (under as readonly string[]).includes(kind))
    .map(([word]) => word);

describe('the card', () => {
  it('has a part for every word of the notation', () => {
    const visit: readonly string[] = Object.values(VISIT_PARTS).flat();
    expect(wordsUnder('client').filter((word) => !(CLIENT_PARTS as readonly string[]).includes(word))).toEqual([]);
    expect(wordsUnder('visit').filter((word) => !visit.includes(word))).toEqual([]);
  });

  it('shows everything that is noted, word by word, in a journal with every word', () => {
    const journal = journalOf(EVERY_WORD);
    const client = clientOf(journal, 'ada-lowe');
    const used = (stoods: readonly (Stood<Client> | Stood<Visit>)[]): Set<string> =>
      new Set(stoods.flatMap(({ entry }) => entry.facts.map(({ word }) => word)));
    expect(wordsUnder('client').filter((word) => !used(client.entries).has(word as never))).toEqual([]);
    expect(wordsUnder('visit').filter((word) => !used(client.visits).has(word as never))).toEqual([]);
    expect(lostOf(journal, 'ada-lowe', allFindings(journal))).toEqual([]);
  });

  it('shows everything that is noted of every client of the demo journal', { timeout: 180_000 }, () => {
    const journal = demoJournal();
    const findings = allFindings(journal);
    expect([...journal.clients.keys()].flatMap((name) => lostOf(journal, name, findings))).toEqual([]);
  });
});

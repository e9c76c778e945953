import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { hasPeroxide, itemsIn } from '../../src/reckon/bowl/contents.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { RULES } from '../../src/rules/all.ts';
import { readExample } from '../../src/rules/example.ts';
import { judge } from '../../src/rules/judging.ts';
import { CAUTION_TOPICS, type CautionTopic, caution, type InBowl, isTrueOf } from '../../src/trade/cautions.ts';
import { KINDS, type Kind } from '../../src/trade/kinds.ts';

/** Topics that are about a client, a reading or the shelf, and say nothing of what is in a bowl. */
const OF_NO_BOWL = new Set(['skin-test-unclear', 'test-under-hold', 'lot-recalled']);

const topicOf = (text: string): CautionTopic => CAUTION_TOPICS.find((topic) => caution(topic) === text) as CautionTopic;

const journalOf = (notes: string) => joinSources([readSource('a.bowl', new TextEncoder().encode(notes))]);

/** Everything mixed in some notes, as a caution asks. */
const mixedIn = (journal: ReturnType<typeof journalOf>): InBowl[] =>
  [...reckonAll(journal).values()].flatMap((visits) =>
    visits.flatMap(({ bowls }) =>
      bowls.flatMap((bowl) =>
        itemsIn(bowl).flatMap(({ kind }) => (kind === undefined ? [] : [{ kind, developed: hasPeroxide(bowl) }])),
      ),
    ),
  );

/** The same notes with every product that is no developer of another kind. */
const asKind = (notes: string, kind: Kind): string =>
  notes.replace(/^(\s*(?:range|product)\s+(?!dev)\S+\s+"[^"]*"\s+)(?!developer)[\w-]+/gmu, `$1${kind}`);

const CAUTIONING = RULES.filter(({ over }) => over === 'visit' || over === 'client');

describe('what a finding warns of is in a bowl of those notes', () => {
  test.each(KINDS.filter((kind) => kind !== 'developer' && kind !== 'goods'))('where everything is %s', (kind) => {
    const untrue: string[] = [];
    let told = 0;
    for (const rule of CAUTIONING) {
      const journal = journalOf(asKind(readExample(rule.bad).lines.join('\n'), kind));
      const mixed = mixedIn(journal);
      for (const finding of judge(journal).all().findings) {
        if (finding.caution === undefined || OF_NO_BOWL.has(finding.rule)) continue;
        told += 1;
        const topic = topicOf(finding.caution);
        if (!mixed.some((one) => isTrueOf(topic, one))) untrue.push(`${rule.name}: ${finding.rule} warns of ${topic}`);
      }
    }
    expect(untrue).toEqual([]);
    // Not where nothing was found.
    if (kind === 'permanent' || kind === 'lightener') expect(told).toBeGreaterThan(20);
  });
});

test('a direct dye past its time is not told that peroxide burns', () => {
  const notes = `range neon "Kelp direct" semi
  mix none
  shades teal
  time 15-30 min from all-on
client wren-abbott "Wren Abbott"
visit 2026-09-04 wren-abbott
  bowl N 30 neon teal
  on 10:00-10:10 N lengths
  off 11:30 N
`;
  const found = judge(journalOf(notes))
    .all()
    .findings.filter(({ rule }) => rule === 'past-time');
  expect(found.map(({ caution: said }) => said)).toEqual([undefined]);
});

test('the table has a kind for every topic, and no kind for all that lightener alone does', () => {
  for (const topic of CAUTION_TOPICS)
    expect(KINDS.some((kind) => isTrueOf(topic, { kind, developed: true }))).toBe(true);
  const direct: InBowl = { kind: 'semi', developed: false };
  expect(CAUTION_TOPICS.filter((topic) => isTrueOf(topic, direct))).toEqual([
    'skin-test',
    'reaction',
    'eyes',
    'medical',
  ]);
  expect(isTrueOf('reaction', { kind: 'lightener', developed: true })).toBe(false);
});

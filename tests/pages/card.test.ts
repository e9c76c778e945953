import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/text/finding.ts';
import { cardOf, journalOf, readText, SHELF } from './compiled.ts';

const CLIENT = `${SHELF}
client ada-lowe "Ada Lowe"
  born 1990-05-01
  natural 6
  test skin 2026-06-01 11:00 cream read 2026-06-03 11:30 clear
`;

const VISITS = `
visit 2026-06-05 10:00 ada-lowe by io
  start roots 6, lengths 7
  bowl A 40 cream 7/43 + 6% 1:1.5 = 100
  place A roots apply on-scalp
  on 10:10-10:30 A roots
  check 10:50 A roots 7
  off 11:00 A
  left A 10 binned
  result roots 7 copper
  charge colour 60
  paid 60 card
  next 6-8w A -20% "less on the nape"

visit 2026-08-01 10:00 ada-lowe by io
  about 2026-06-05 lengths "faded by July"
  cut 10:10
`;

const on = (date: string): { on: string } => ({ on: date });
const section = (card: string, heading: string): string =>
  card.split(/^## /m).find((part) => part.startsWith(heading)) ?? '';
const visit = (card: string, date: string): string => card.split(/^### /m).find((part) => part.startsWith(date)) ?? '';
const alerts = (lines: string, date = '2026-11-25'): string =>
  section(cardOf(journalOf(`${CLIENT}${lines}`), 'ada-lowe', on(date), []), 'Before touching');

describe('the head of a card', () => {
  it('comes before the visits, alerts first', () => {
    const card = cardOf(journalOf(CLIENT + VISITS), 'ada-lowe', on('2026-08-20'), []);
    expect(card.match(/^##? .*$/gm)).toEqual([
      '# Ada Lowe',
      '## Before touching the hair',
      '## Tests',
      '## Hair and history',
      '## Last colour',
      '## Next time',
      '## Caution',
      '## Visits',
    ]);
  });

  it('says no more new growth than the hair is long', () => {
    const growth = (length: string): string | undefined =>
      cardOf(journalOf(`${CLIENT}  hair medium, length ${length}\n${VISITS}`), 'ada-lowe', on('2026-11-25'), [])
        .split('\n')
        .find((line) => line.startsWith('- **New growth**'));
    // From 5 June to 25 November are 173 days: 61 mm at 0.35 mm a day. A crop is 50 mm at most, short hair 150.
    expect(growth('short')).toContain('about 61 mm expected');
    expect(growth('crop')).toBe(
      '- **New growth** all of the hair: what was done at the roots on 2026-06-05, 173 days before 2026-11-25, has grown past its length and is cut off',
    );
  });

  it('says the new growth alone where no more was lightened', () => {
    const lightened = (place: string): string | undefined =>
      cardOf(
        journalOf(`${CLIENT}\nvisit 2026-06-05 10:00 ada-lowe\n  bowl A 40 clay + 80 dev-6\n  place A ${place}\n`),
        'ada-lowe',
        on('2026-11-25'),
        [],
      )
        .split('\n')
        .find((line) => line.startsWith('- **Lightened**'));
    expect(lightened('roots apply on-scalp')).toBe(
      '- **Lightened** the new growth of about 100 % of the head, an estimate',
    );
    expect(lightened('all apply')).toBe('- **Lightened** about 100 % of the head, an estimate');
  });

  it('says so when the notes show no alert, and calls nothing safe', () => {
    expect(alerts('')).toContain(
      'The notes have no `reaction` line, and no `allergy`, `caution` or `hold` line in force on 2026-11-25',
    );
    expect(cardOf(journalOf(CLIENT + VISITS), 'ada-lowe')).not.toMatch(/\bsafe/i);
  });

  it('says what of the client’s own lines could not be read', () => {
    expect(alerts('  alergy nuts\n')).toContain('- **Not read** 1 line could not be read: `alergy nuts`');
    expect(alerts('  alergy nuts\n')).not.toContain('The notes show no');
    expect(alerts('  alergy nuts\n  natural 6 !!\n')).toContain(
      '2 lines could not be read: `alergy nuts`, `natural 6 !!`',
    );
  });

  it('shows a caution of the day’s own visit on that day alone', () => {
    const visit = '\nvisit 2026-08-01 10:00 ada-lowe by io\n  caution razor nick at the nape\n';
    expect(alerts(visit, '2026-08-01')).toContain('- **Caution** razor nick at the nape');
    expect(alerts(visit, '2026-08-02')).not.toContain('razor nick');
    expect(alerts(visit.replace('nape', 'nape until 2026-09'), '2026-08-02')).toContain('razor nick');
  });

  it('shows an allergy, and leaves a line that says there is none to the history', () => {
    expect(alerts('  allergy nickel\n')).toContain('- **Allergy** nickel');
    const card = cardOf(journalOf(`${CLIENT}  allergy "none known"\n`), 'ada-lowe');
    expect(section(card, 'Before touching')).not.toContain('Allergy');
    expect(section(card, 'Hair and history')).toContain('- **Allergy** “none known”');
  });

  it('shows a caution and a hold until the day they lift, and then under the history', () => {
    const lines = '  caution sore scalp until 2026-12\n  hold lightener to 2026-12-01 "gummy"\n';
    expect(alerts(lines, '2026-11-30')).toContain('- **Caution** sore scalp, until 2026-12-01');
    expect(alerts(lines, '2026-11-30')).toContain('- **Hold** no lightener, until 2026-12-01 “gummy”');
    expect(alerts(lines, '2026-12-01')).not.toMatch(/Caution|Hold/);
    const later = cardOf(journalOf(`${CLIENT}${lines}`), 'ada-lowe', on('2026-12-01'), []);
    expect(section(later, 'Hair and history')).toContain('sore scalp, until 2026-12 (not in force on 2026-12-01)');
  });

  it('counts a hold set at a visit from that visit', () => {
    const lines = 'visit 2026-11-02 ada-lowe\n  hold oxidative 4w "redness"\n';
    expect(alerts(lines, '2026-11-29')).toContain('no oxidative, since 2026-11-02, until 2026-11-30 “redness”');
    expect(alerts(lines, '2026-11-30')).not.toContain('Hold');
  });

  it('shows every reaction on file, and a positive skin test', () => {
    const lines = `  test skin 2026-09-01 11:00 cream read 2026-09-03 11:00 reaction
visit 2026-10-02 ada-lowe
  reaction A temples burning "at once"
`;
    expect(alerts(lines)).toContain('- **Reaction** 2026-09-03, positive skin test: cream');
    expect(alerts(lines)).toContain('- **Reaction** 2026-10-02, reaction: bowl A, temples, burning “at once”');
  });

  it('says under what age the client is while the salon has a policy for it', () => {
    const journal = journalOf(
      `${SHELF.replace('  policy ml', '  policy under 16 temporary only\n  policy ml')}
client mia "Mia"
  born 2011
`,
    );
    expect(section(cardOf(journal, 'mia', on('2026-11-25'), []), 'Before')).toContain('under 16 on 2026-11-25');
    expect(section(cardOf(journal, 'mia', on('2028-01-01'), []), 'Before')).not.toContain('under 16');
  });

  it('leaves sums that are wrong to the findings, and tests of a visit that is over to how they stand', () => {
    const one = (rule: string): Finding => ({
      rule,
      key: rule,
      severity: 'stop',
      place: { file: 't.bowl', line: 28, at: 0 },
      message: 'Bowl A was 80 g, and 90 g are left.',
    });
    const cardWith = (rule: string): string =>
      cardOf(journalOf(CLIENT + VISITS), 'ada-lowe', on('2026-11-25'), [one(rule)]);
    const sums = cardWith('more-left-than-mixed');
    expect(section(sums, 'Before')).not.toContain('90 g');
    expect(section(sums, 'Findings')).toContain(
      '- **stop** visit of 2026-06-05: Bowl A was 80 g, and 90 g are left. `more-left-than-mixed`',
    );
    const over = cardWith('skin-test-too-soon');
    expect(section(over, 'Before')).not.toContain('90 g');
    expect(section(over, 'Before')).toContain('- **Found in earlier visits** 1 stop: 2026-06-05 skin-test-too-soon');
    expect(over).not.toContain('## Findings');
    const today = cardOf(journalOf(CLIENT + VISITS), 'ada-lowe', on('2026-06-05'), [one('skin-test-too-soon')]);
    expect(section(today, 'Before')).toContain('90 g');
  });

  it('asks for tests of what she gets, and not of what was only tested', () => {
    const lines = `  test skin 2025-01-02 gloss read 2025-01-04 clear\n${VISITS}`;
    const before = section(cardOf(journalOf(CLIENT + lines), 'ada-lowe', on('2027-03-01'), []), 'Before');
    expect(before).toContain('none holds on 2027-03-01 for cream');
    expect(before).not.toContain('gloss');
  });

  it('shows a test and its reading as one, and older clear ones as a count', () => {
    const lines = `  test skin 2025-01-02 cream
  test skin read 2025-01-04 11:00 clear
  test skin 2025-09-01 cream read 2025-09-03 clear
`;
    const card = cardOf(journalOf(CLIENT + lines), 'ada-lowe', on('2026-11-25'), []);
    expect(section(card, 'Tests')).toContain('- **Tests noted** 2 earlier, all clear');
    expect(section(card, 'Earlier tests')).toContain(
      '- **Tests noted** skin test 2025-01-02, cream, read 2025-01-04 11:00: clear\n',
    );
  });

  it('keeps the last finished colour while the visit of the day is open', () => {
    const open = `${VISITS}
visit 2026-08-15 14:00 ada-lowe by io
  bowl A 20 cream 7/43 + 30 dev-6
  on 14:10-14:20 A roots
  check 14:40 A roots 6 "slow at the nape"
`;
    const now = (lines: string): string => cardOf(journalOf(CLIENT + lines), 'ada-lowe', on('2026-08-15'), []);
    expect(section(now(open), 'Last colour')).toContain('- **When** 2026-06-05');
    const asked = section(now(open), 'Asked for today');
    expect(asked).toContain('- **Noted** on 2026-06-05: in 6–8 weeks, A −20 % “less on the nape”');
    const today = section(now(open), 'Today, open');
    expect(today).toContain('- **When** 2026-08-15, Saturday, 14:00, by Io');
    expect(today).toContain('- **Mixed** A, 50 g: 20 g cream 7/43 + 30 g dev-6, 6 %');
    expect(today).toContain('- **Went on** A · roots, 14:10, off not noted');
    expect(today).toContain('- **Looked at** 14:40, A roots 6 “slow at the nape”');
    const over = now(`${open}  off 14:50 A\n  result roots 7 copper\n`);
    expect(section(over, 'Last colour')).toContain('- **When** 2026-08-15');
    expect(over).not.toContain('## Today, open');
  });

  it('shows a stop with its date, also one that a reason answers, and nothing milder', () => {
    const journal = journalOf(CLIENT + VISITS);
    const finding = (severity: Finding['severity'], reason?: string): Finding => ({
      rule: 'adverse-test',
      key: 'adverse-test',
      severity,
      place: { file: 't.bowl', line: 28, at: 0 },
      message: `Bowl A is ready at 12.5 %, ${severity}.`,
      ...(reason !== undefined && { reason }),
    });
    const card = (one: Finding): string => section(cardOf(journal, 'ada-lowe', on('2026-11-25'), [one]), 'Before');
    expect(card(finding('stop'))).toContain('- **stop** visit of 2026-06-05: Bowl A is ready at 12.5 %, stop.');
    expect(card(finding('stop', 'tested twice'))).toContain(
      '- **stop, reason given** visit of 2026-06-05: Bowl A is ready at 12.5 %, stop. The note gives the reason: “tested twice”.',
    );
    expect(card(finding('fix'))).toContain('The notes have no `reaction` line');
  });

  it('says until when a skin test holds, product by product', () => {
    const tests = (date: string): string =>
      section(cardOf(journalOf(CLIENT + VISITS), 'ada-lowe', on(date), []), 'Tests');
    expect(tests('2026-08-20')).toContain(
      '| cream | holds until 2026-11-30 | made 2026-06-01 11:00, read 2026-06-03 11:30, clear |',
    );
    expect(tests('2026-12-01')).toContain('| cream | past its time since 2026-12-01 |');
  });

  it('reckons the days since the last colour, the new growth and the due dates to the day', () => {
    const card = cardOf(journalOf(CLIENT + VISITS), 'ada-lowe', on('2026-08-20'), []);
    const last = section(card, 'Last colour');
    expect(last).toContain('- **When** 2026-06-05, Friday; 10 weeks and 6 days before 2026-08-20, by Io');
    expect(last).toContain(
      'about 27 mm expected on 2026-08-20: 76 days since the roots on 2026-06-05, at 0.35 mm a day',
    );
    expect(last).toContain('**Bowl A** · 100 g · 1:1.5 · 3.6 % peroxide ready for use · 90 g used');
    expect(last).toContain('| cream 7/43 | 40 |  |');
    expect(last).toContain('| dev-6, 6 % | 60 | reckoned from 6 % 1:1.5 |');
    expect(last).toContain('- **Placed** A · roots · apply, on the scalp');
    expect(last).toContain('- **Result** roots 7 copper');
    expect(last).toContain('- **Later news** told on 2026-08-01: lengths “faded by July”');
    expect(section(card, 'Next time')).toContain('in 6–8 weeks, A −20 % “less on the nape”');
    // On 2026-08-01 she came, so nothing awaits her after it; before that the window stands.
    expect(section(card, 'Next time')).not.toContain('- **Due**');
    const before = cardOf(journalOf(CLIENT + VISITS), 'ada-lowe', on('2026-07-20'), []);
    expect(section(before, 'Next time')).toContain('- **Due** 2026-08-01, Saturday');
    const alone = journalOf(CLIENT + VISITS.slice(0, VISITS.indexOf('visit 2026-08-01')));
    expect(section(cardOf(alone, 'ada-lowe', on('2026-07-20'), []), 'Next time')).toContain(
      '- **Due** 2026-07-17, Friday, to 2026-07-31, Friday',
    );
  });

  it('leaves visits after its day out of the head and keeps them in the list', () => {
    const card = cardOf(journalOf(CLIENT + VISITS), 'ada-lowe', on('2026-06-04'), []);
    expect(section(card, 'Last colour')).toContain('The notes show none.');
    expect(visit(card, '2026-06-05')).toContain('Bowl A');
  });

  it('closes with the usual cautions for what was used, and defers to maker, law and practice', () => {
    const caution = section(cardOf(journalOf(CLIENT + VISITS), 'ada-lowe', on('2026-08-20'), []), 'Caution');
    expect(caution).toContain('severe allergic reactions');
    expect(caution).toContain('Hydrogen peroxide');
    expect(caution).not.toContain('Lightener');
    expect(caution.match(/local law and licensed practice come first/g)).toHaveLength(1);
    expect(cardOf(journalOf(CLIENT), 'ada-lowe')).not.toContain('## Caution');
  });
});

describe('a visit on a card', () => {
  it('stands under its date, weekday, time and stylist, the newest first', () => {
    const card = cardOf(journalOf(CLIENT + VISITS), 'ada-lowe');
    expect(card.match(/^### .*$/gm)).toEqual([
      '### 2026-08-01, Saturday, 10:00 · Io',
      '### 2026-06-05, Friday, 10:00 · Io',
    ]);
  });

  it('shows the course of the clock by bowl and place', () => {
    expect(visit(cardOf(journalOf(CLIENT + VISITS), 'ada-lowe'), '2026-06-05')).toContain(
      '| A · roots | 10:10–10:30 | 10:50 depth 7 | 11:00 | 50 from first on, 30 from all on |',
    );
  });

  it('shows later news under the visit it speaks of, and in the one that tells it', () => {
    const card = cardOf(journalOf(CLIENT + VISITS), 'ada-lowe');
    expect(visit(card, '2026-06-05')).toContain('- **Later news** told on 2026-08-01: lengths “faded by July”');
    expect(visit(card, '2026-08-01')).toContain('- **About** 2026-06-05, lengths “faded by July”');
  });

  it('keeps what products cost off the card unless asked', () => {
    const journal = journalOf(CLIENT + VISITS);
    expect(cardOf(journal, 'ada-lowe')).not.toMatch(/products/i);
    const priced = visit(cardOf(journal, 'ada-lowe', { on: '2026-11-25', money: true }), '2026-06-05');
    expect(priced).toContain('· products 4.98 GBP');
    expect(priced).toContain('- **Products used up** 4.98 GBP');
  });

  it('says what is known of the products of a visit, and what that is without', () => {
    const notes = `${CLIENT}visit 2026-06-05 10:00 ada-lowe\n  bowl A 20 clay + 40 dev-6\n  bowl B 20 clay + bond\n`;
    const priced = cardOf(journalOf(notes), 'ada-lowe', { on: '2026-11-25', money: true });
    expect(priced).toMatch(
      /- \*\*Products used up\*\* \d+\.\d\d GBP, and more for bond, where a price or a weight is missing/,
    );
  });

  it('shows a hedge, a weight from another unit, what the scales said, and a bowl that lacks a weight', () => {
    const lines = `
visit 2026-09-04 ada-lowe
  bowl A ~40 clay + 20vol 1:2
  weighed A 41 clay, 82 dev-6
  bowl B 4 scoop clay + 60 ml dev-6
  bowl C clay + dev-6
`;
    const card = visit(cardOf(journalOf(`${CLIENT}${lines}`), 'ada-lowe', on('2026-11-25'), []), '2026-09-04');
    expect(card).toContain('**Bowl A** · about 120 g');
    expect(card).toContain('| clay | about 40 | weighed 41 g |');
    expect(card).toContain('| **In all** | **about 120** | weighed 123 g |');
    expect(card).toContain('- **Weighed** A 41 g clay, 82 g dev-6');
    expect(card).toMatch(/\| clay \| 40 \| typed 4 scoop clay, 1 scoop is 10 g \|/);
    expect(card).toMatch(/\| dev-6, 6 % \| 60 \| typed 60 ml dev-6, .+ \|/);
    expect(card).toContain('| clay | not known | typed clay |');
  });

  it('says what a bowl made again, or mixed further, was made from', () => {
    const lines = `
visit 2026-09-04 ada-lowe
  bowl A 40 clay + 80 dev-6
  more A 60
  again B from A 50%
  again C from 2026-06-05 A 80%
`;
    const card = visit(cardOf(journalOf(CLIENT + VISITS + lines), 'ada-lowe', on('2026-11-25'), []), '2026-09-04');
    expect(card).toContain('| clay | 20 | as in bowl A |');
    expect(card).toContain('- **Mixed more** A 60 g');
    expect(card).toContain('| clay | 20 | 50 % of bowl A |');
    expect(card).toContain('| cream 7/43 | 32 | 80 % of bowl A, 2026-06-05 |');
    expect(card).toContain('- **Made again** C from 2026-06-05 A 80 %');
  });

  it('puts what went wrong first, and keeps an unread line exactly as typed', () => {
    const lines = `
visit 2026-09-04 ada-lowe
  aim warm
  frobnicate <b>the *sides*</b>
  bowl A 40 clay + 80 dev-6
  on 10:00 A roots
  reaction 10:20 A temples burning
  stopped 10:21 A "rinsed"
  off 10:25 A
`;
    const card = visit(cardOf(journalOf(`${CLIENT}${lines}`), 'ada-lowe', on('2026-11-25'), []), '2026-09-04');
    expect(card.indexOf('**Reaction** 10:20, A temples, burning')).toBeLessThan(card.indexOf('**Aim**'));
    expect(card.indexOf('**Stopped early** 10:21, A “rinsed”')).toBeLessThan(card.indexOf('**Aim**'));
    expect(card).toContain('- **Kept as typed** `frobnicate <b>the *sides*</b>`');
  });

  it('shows its findings, and an answered one with the reason and no advice', () => {
    const journal = journalOf(CLIENT + VISITS);
    const finding: Finding = {
      rule: 'ratio-off-mix',
      key: 'ratio-off-mix',
      severity: 'fix',
      place: { file: 't.bowl', line: 28, at: 0 },
      message: 'Bowl A has 60 g to 40 g, 1:1.5.',
      expected: 'Its `mix` line says 1:2.',
      todo: 'Put 80 g.',
    };
    const answered = { ...finding, reason: 'runny on purpose' };
    const at = (one: Finding): string => visit(cardOf(journal, 'ada-lowe', on('2026-11-25'), [one, one]), '2026-06-05');
    expect(at(finding)).toContain(
      '- **fix** Bowl A has 60 g to 40 g, 1:1.5. Its `mix` line says 1:2. Put 80 g. `ratio-off-mix`',
    );
    expect(at(finding).match(/ratio-off-mix/g)).toHaveLength(1);
    expect(at(answered)).toContain(
      '- **fix, reason given** Bowl A has 60 g to 40 g, 1:1.5. The note gives the reason: “runny on purpose”. Its `mix` line says 1:2. `ratio-off-mix`',
    );
  });
});

describe('hostile notes', () => {
  const HOSTILE = '</title><script>alert(1)</script>';

  it('stay text wherever they stand', () => {
    const lines = `
client eve "${HOSTILE}"
  caution *a* _b_ [c](javascript:d) | e
  note # not a heading
visit 2026-09-04 eve "| - 1. ${HOSTILE}"
  aim ![x](http://y/z.png) <img src=x>
  bowl A 40 clay + 80 dev-6
  place A \`code\` | top
  photo javascript:alert(1)
`;
    const card = cardOf(journalOf(`${SHELF}${lines}`), 'eve', on('2026-11-25'), []);
    const text = readText(card);
    for (const typed of [
      HOSTILE,
      '*a* _b_ [c](javascript:d) | e',
      '# not a heading',
      '![x](http://y/z.png) <img src=x>',
    ])
      expect(text).toContain(typed);
    expect(card.match(/^# .*$/gm)).toHaveLength(1);
  });
});

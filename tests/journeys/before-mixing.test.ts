import { describe, expect, test } from 'vitest';
import { SALON, useProgram } from './program.ts';

const program = await useProgram();

const SHELF = `range cream "Larkfield cream" permanent
  mix 1:1.5
  uses dev-6
  tones 0 natural, 1 ash, 3 gold
product dev-6 "Cream developer" developer 6%
product clay "Clay" lightener
  mix 1:2
  scalp to 3%
`;

const folder = (notes: string): string =>
  program.folder({ 'salon.bowl': SALON, 'shelf.bowl': SHELF, 'her.bowl': notes });
const prep = (notes: string, on: string): string =>
  program.run(['prep', 'ada-lowe', '--on', on], { cwd: folder(notes) }).out;
const rebook = (notes: string, on: string): { out: string; err: string; code: number | null } =>
  program.run(['rebook', 'ada-lowe', '--on', on], { cwd: folder(notes) });

const TESTED = 'client ada-lowe "Ada Lowe"\n  test skin 2026-06-01 11:00 cream read 2026-06-03 11:30 clear\n';

const ROOTS = `${TESTED}visit 2026-06-05 10:00 ada-lowe by io
  bowl A 24 cream 6/3 + 36 dev-6
  place A roots apply on-scalp
  on 10:10-10:30 A roots
  off 11:00 A
  left A 10 binned
  result roots 6 gold
`;

describe('a change in words', () => {
  const notes = `${ROOTS}  next 8w "go softer, 6/1 instead of 6/3"\n`;

  test('stands in the grams’ place on the sheet, and the old grams are no longer bold', () => {
    const sheet = prep(notes, '2026-07-31');
    expect(sheet).toContain('**Bowl A** · **“go softer, 6/1 instead of 6/3”** (next of 2026-06-05)');
    expect(sheet).toContain('| cream 6/3 | 24 | \\_\\_\\_\\_ |');
    expect(sheet).not.toMatch(/\| \*\*\d/);
    const words = ['prep', 'ada-lowe', '--on', '2026-07-31', '--html'];
    const html = program.run(words, { cwd: folder(notes) }).out;
    expect(html).toContain('<strong>“go softer, 6/1 instead of 6/3”</strong>');
    expect(html).not.toMatch(/<td[^>]*><strong>\d/);
  });

  test('is a note of the visit begun, where the bowl is a comment', () => {
    expect(rebook(notes, '2026-07-31').out).toBe(`visit 2026-07-31 ada-lowe by io
  note planned on 2026-06-05: go softer, 6/1 instead of 6/3
  note bowl A: go softer, 6/1 instead of 6/3 (next of 2026-06-05); it was 24 g cream 6/3 + 36 g dev-6
  # again A from 2026-06-05 A
  place A roots apply on-scalp
`);
  });

  test('of a later call counts as well, and a call after the day does not', () => {
    const called = `${ROOTS}  call 2026-06-09 "A less gold, please"\n`;
    expect(prep(called, '2026-07-31')).toContain('**“A less gold, please”** (call of 2026-06-09)');
    expect(prep(called.replace('2026-06-09', '2026-08-09'), '2026-07-31')).toMatch(
      /\| cream 6\/3 \| 24 \| \*\*\d+\*\* \|/,
    );
  });
});

describe('growth', () => {
  // 60 g held, 10 left: 50 g used on the first visit, whose new growth nobody noted; 50 g again at 20 mm.
  const again = (
    places: string,
  ): string => `${ROOTS.replace('place A roots apply on-scalp', places)}visit 2026-08-30 10:00 ada-lowe by io
  regrowth 20mm
  bowl A 24 cream 6/3 + 36 dev-6
  ${places}
  on 10:10-10:30 A roots
  off 11:00 A
  left A 10 binned
  result roots 6 gold
`;

  test('makes a bowl for roots alone larger', () => {
    // 20 mm were grown in 86 days: 0.2326 mm a day, so that 184 days come to 42.8 mm, of which no more than twice the
    // 20 mm count: half of a bowl grows, 50 × (½ + ½ × 40 ⁄ 20) = 75 g; in the middle of 50 and 75 g 62.5 g, +10 % = 69 g.
    expect(prep(again('place A roots apply on-scalp'), '2027-03-02')).toContain('= **69 g**');
  });

  test('does not make a bowl larger that fed the lengths too', () => {
    // 50 g used both times, +10 % = 55 g, however long the roots are.
    expect(prep(again('place A roots, lengths apply'), '2027-03-02')).toContain('= **55 g**');
  });
});

describe('what would be a finding is said before mixing', () => {
  const scalp = `${TESTED}visit 2026-05-01 10:00 ada-lowe by io
  bowl A 30 clay + 60 dev-6
  place A roots apply on-scalp
  on 10:10-10:30 A roots
  check 10:20 A roots gold
  off 10:40 A
  result roots 6 gold
`;

  test('of the visit as it is planned: strength on the scalp, growth that is expected', () => {
    const sheet = prep(scalp, '2026-08-05');
    expect(sheet).toContain('- **stop** the visit as planned: Bowl A, clay with 6 %, is placed on the scalp.');
    // 96 days at 0.35 mm.
    expect(sheet).toContain('- **mind** About 34 mm of new growth is expected, and bowl A goes on all of it at once');
    const { out, err, code } = rebook(scalp, '2026-08-05');
    expect([code, out.includes('banding')]).toEqual([0, false]);
    expect(err).toContain('visit of 2026-08-05');
    expect(err).toContain('stop on-scalp-strength');
    expect(err).toContain('mind banding-risk');
  });

  test('a lapsed test, and nothing that only a finished visit can say', () => {
    const { err } = rebook(ROOTS, '2027-03-01');
    expect(err).toContain('stop skin-test-expired');
    expect(err).not.toMatch(/no-off|result-missing|no-check|charge-missing|bowl-unplaced|visit-in-future/);
    expect(rebook(ROOTS, '2026-07-31').err).toBe('');
  });

  test('of a visit typed and not begun, and of one under way no more', () => {
    const typed = `${ROOTS}visit 2026-07-31 10:00 ada-lowe by io\n  bowl A 30 cream 6/3 + 30 dev-6\n  place A roots apply on-scalp\n`;
    expect(prep(typed, '2026-07-31')).toContain('Of the visit as it is noted:\n\n- **fix** Bowl A');
    expect(prep(`${typed}  on 10:20 A roots\n`, '2026-07-31')).not.toContain('## Before mixing');
  });

  test('of a further mix, which is not made again, nothing: its place is kept to read', () => {
    const more = ROOTS.replace('  on 10:10', '  more A 30\n  place A2 roots nape apply on-scalp\n  on 10:10');
    const { out, err } = rebook(more, '2026-07-31');
    expect(out).toContain('\n  # place A2 roots nape apply on-scalp\n');
    expect(err).toBe('');
  });

  test('nothing where nothing is found', () => {
    expect(prep(ROOTS, '2026-07-31')).not.toContain('Before mixing');
  });
});

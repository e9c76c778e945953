import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { judge } from '../../src/rules/judging.ts';
import { openSession } from '../../src/rules/session.ts';

/** Small notes, a file a client, so that each can change by itself. */
const SHELF = 'product dev-6 "D" developer 6%\nproduct clay "C" lightener\nstylist io "Io"\nstylist nia "Nia"\n';

const noteOf = (client: string, by: string, on: string, date = '2026-09-04'): string =>
  `client ${client}\nvisit ${date} ${client} by ${by}\n  bowl A 40 clay + 80 dev-6\n  on ${on}\n  check 14:35 A gold\n  off 14:50 A\n`;

const cold = (files: ReadonlyMap<string, string>) =>
  judge(joinSources([...files].map(([path, text]) => readSource(path, Buffer.from(text))))).all();

const heads = (notes: Readonly<Record<string, string>>): string[] =>
  cold(new Map(Object.entries({ shelf: SHELF, ...notes })))
    .findings.filter(({ rule }) => rule === 'two-heads-at-once')
    .map(({ client, message }) => `${client}: ${message}`);

describe('one hand on two heads', () => {
  it('is found once, at the head that was begun later', () => {
    const notes = { a: noteOf('ada', 'io', '14:00-14:20 A top'), b: noteOf('beth', 'io', '14:10-14:30 A top') };
    expect(heads(notes)).toEqual([
      'beth: `io` puts bowl A on beth 14:10–14:30, and bowl A on ada 14:00–14:20: 10 min at once.',
    ]);
  });

  it('is none where one develops, where another hand is named, on another day, or for a few minutes', () => {
    const ada = noteOf('ada', 'io', '14:00-14:20 A top');
    const sound = [
      noteOf('beth', 'io', '14:20-14:35 A top'),
      noteOf('beth', 'nia', '14:00-14:20 A top'),
      noteOf('beth', 'io', '14:00-14:20 A top by nia'),
      noteOf('beth', 'io', '14:00-14:20 A top', '2026-09-05'),
      noteOf('beth', 'io', '14:17-14:35 A top'),
      noteOf('beth', 'io', '14:10 A top'),
      noteOf('beth', 'io', '~14:05-14:20 A top'),
      noteOf('beth', 'io', '14:00-14:20 A top').replace('  check', '  split io 50%, nia 50%\n  check'),
    ];
    for (const beth of sound) expect([beth, heads({ a: ada, b: beth })]).toEqual([beth, []]);
  });

  it('says nothing of a name that stands by many heads at once', () => {
    const all = ['ada', 'beth', 'cy', 'di'].map((name) => [name, noteOf(name, 'io', '14:00-14:20 A top')]);
    expect(heads(Object.fromEntries(all))).toEqual([]);
  });

  it('is explained by a reason at the head where it stands', () => {
    const beth = `${noteOf('beth', 'io', '14:10-14:30 A top')}  because two-heads-at-once "Nia folded"\n`;
    expect(heads({ a: noteOf('ada', 'io', '14:00-14:20 A top'), b: beth })).toEqual([]);
  });
});

describe('a session over several clients of a day', () => {
  it('equals a cold check whoever changed', () => {
    const names = ['ada', 'beth', 'cy'];
    const ons = [
      '14:00-14:20 A top',
      '14:10-14:30 A top',
      '14:25-14:45 A top',
      '14:05-14:25 A top by nia',
      '14:00 A top',
    ];
    const edit = fc.record({
      client: fc.constantFrom(...names),
      on: fc.constantFrom(...ons),
      by: fc.constantFrom('io', 'nia'),
      date: fc.constantFrom('2026-09-04', '2026-09-05'),
      how: fc.constantFrom('put', 'put', 'put', 'blank line', 'reason', 'delete', 'shelf'),
    });
    let seen = 0;
    fc.assert(
      fc.property(fc.array(edit, { minLength: 2, maxLength: 12 }), (edits) => {
        const files = new Map([['shelf', SHELF]]);
        const session = openSession();
        session.put('shelf', Buffer.from(SHELF));
        for (const { client, on, by, date, how } of edits) {
          const note = noteOf(client, by, on, date);
          const path = how === 'shelf' ? 'shelf' : client;
          const text =
            how === 'delete'
              ? undefined
              : how === 'shelf'
                ? `${SHELF}# ${on}\n`
                : how === 'reason'
                  ? `${note}  because two-heads-at-once "so"\n`
                  : how === 'blank line'
                    ? `\n${note}`
                    : note;
          if (text === undefined) files.delete(path);
          else files.set(path, text);
          session.put(path, text === undefined ? undefined : Buffer.from(text));
          const settled = session.settle();
          const whole = cold(files);
          expect(settled.all()).toEqual({ findings: whole.findings, answered: whole.answered });
          seen += whole.findings.filter(({ rule }) => rule === 'two-heads-at-once').length;
        }
      }),
      { numRuns: 60, seed: 20261201 },
    );
    // The edits do make heads meet.
    expect(seen).toBeGreaterThan(20);
  });

  it('does not work out the other client again', () => {
    const session = openSession();
    session.put('shelf', Buffer.from(SHELF));
    session.put('a', Buffer.from(noteOf('ada', 'io', '14:00-14:20 A top')));
    session.put('b', Buffer.from(noteOf('beth', 'io', '14:30-14:45 A top')));
    session.settle();
    session.put('a', Buffer.from(noteOf('ada', 'io', '14:32-14:44 A top')));
    const settled = session.settle();
    expect([...settled.redone]).toEqual(['ada']);
    expect(settled.elsewhere().filter(({ rule }) => rule === 'two-heads-at-once')).toHaveLength(1);
  });
});

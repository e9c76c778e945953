import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cardFile } from '../../src/cli/watch/card-file.ts';
import { type Drawing, startDrawing } from '../../src/cli/watch/draw.ts';
import { findFiles } from '../../src/journal/find.ts';
import { openSession } from '../../src/rules/session.ts';
import { DEMO } from '../journeys/program.ts';

const ON = '2026-11-25';
const files = new Map(findFiles(DEMO).map((path) => [path, readFileSync(path, 'utf8')]));
const [path = '', text = ''] = [...files].find(([, notes]) => /^client orla-finch/m.test(notes)) ?? [];

const begun = (now: string): { session: ReturnType<typeof openSession>; drawing: Drawing } => {
  const [session, drawing] = [openSession(), startDrawing(DEMO)];
  for (const [file, notes] of files) session.put(file, Buffer.from(file === path ? now : notes));
  drawing.take(session.settle(ON), ON);
  return { session, drawing };
};

const card = cardFile('orla-finch');

test('a card of which parts are kept is after every edit what it is drawn anew', { timeout: 120_000 }, () => {
  const { session, drawing } = begun(text);
  expect(drawing.page(card)?.match(/<svg/g)?.length).toBeGreaterThan(5);
  const count = text.split('\n').length;
  const edit = fc.record({
    at: fc.nat(count - 1),
    // A line of a clock that goes takes a figure with it, and all figures after it have other numbers.
    put: fc.constantFrom('', '  on 14:00 Z\n', '  note typed\n', '  off 14:30 Z\n', 'visit 2026-11-20 orla-finch\n'),
    without: fc.nat(3),
  });
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), (edits) => {
      let now = text;
      for (const { at, put, without } of edits) {
        const lines = now.split(/^/m);
        lines.splice(at, without, put);
        now = lines.join('');
        session.put(path, Buffer.from(now));
        drawing.take(session.settle(ON), ON);
        const kept = drawing.page(card);
        expect(kept).toBe(begun(now).drawing.page(card));
      }
    }),
    { numRuns: 4 },
  );
});

import { describe, expect, it } from 'vitest';
import type { Run } from '../../src/reckon/model.ts';
import { lastOf } from './reckoned.ts';

const visit = (lines: string): string => `visit 2026-09-04 wren-abbott\n  bowl A 40 clay + 80 dev-6\n${lines}`;

const clockOf = (lines: string) => lastOf(visit(lines)).clock;

const brief = ({ zone, off, fromFirst, fromAll, sections, partsOff }: Run) => ({
  zone,
  off,
  fromFirst,
  fromAll,
  ...(sections && { least: sections.least, most: sections.most, ...(sections.untold && { untold: true }) }),
  ...(partsOff && { parts: partsOff.map(({ minute, sections: count, placed }) => [minute, count, placed]) }),
});

const TWELVE = '  place A nape weave x12 foil\n  on 14:20-14:30 A nape\n';

describe('sections that come off before the rest', () => {
  it('leaves the rest on until it comes off', () => {
    const { runs, problems } = clockOf(`${TWELVE}  off 14:50 A nape x6\n  off 15:10 A nape\n`);
    expect(runs.map(brief)).toEqual([
      // The seventh went on at 14:25, and the first six were off before any that came after.
      { zone: 'nape', off: 910, fromFirst: 30, fromAll: 40, least: 25, most: 45, parts: [[890, 6, 12]] },
    ]);
    expect(problems).toEqual([]);
  });

  it('is all off when the counts come to what was placed, of both sides where it is mirrored', () => {
    const twelve = clockOf(`${TWELVE}  off 15:10 A nape x7\n  off 14:50 A nape x5\n`);
    expect(twelve.runs.map(({ off }) => off)).toEqual([910]);
    expect(twelve.problems).toEqual([]);
    const mirrored = clockOf(`${TWELVE.replace('x12', 'x12 mirror')}  off 14:50 A nape x12\n`);
    expect(mirrored.runs.map(({ off }) => off)).toEqual([undefined]);
  });

  it('says what is still in when no line takes it off', () => {
    const { runs, problems } = clockOf(`${TWELVE}  off 14:50 A nape x6\n`);
    expect(runs.map(({ off }) => off)).toEqual([undefined]);
    expect(problems.map(({ kind, message }) => [kind, message])).toEqual([
      ['no-off', 'Bowl A nape: 6 of 12 sections came off by 14:50, and no `off` line follows for the other 6.'],
    ]);
  });

  it('says when more come off than were placed', () => {
    const { runs, problems } = clockOf(`${TWELVE}  off 14:50 A nape x6\n  off 15:00 A nape x7\n`);
    expect(runs.map(({ off }) => off)).toEqual([900]);
    expect(problems.map(({ message }) => message)).toEqual(['13 sections have come off here, and 12 were placed.']);
  });

  it('takes the last line for the end where nobody counted what was placed', () => {
    const uncounted = TWELVE.replace(' x12', '');
    expect(clockOf(`${uncounted}  off 14:50 A nape x6\n`).runs.map(({ off }) => off)).toEqual([890]);
    const two = clockOf(`${uncounted}  off 14:50 A nape x6\n  off 15:05 A nape x6\n`);
    expect(two.runs.map(brief)).toMatchObject([{ off: 905, least: 25, most: 40, parts: [[890, 6, 12]] }]);
    expect(two.problems).toEqual([]);
    // Nobody knows how many stayed in: one of them at least from all on.
    const rest = clockOf(`${uncounted}  off 14:50 A nape x6\n  off 15:05 A nape\n`);
    expect(rest.runs.map(brief)).toMatchObject([{ off: 905, most: 35, untold: true, parts: [[890, 6, undefined]] }]);
  });

  it('counts each place by itself, and a bowl named alone by all its places', () => {
    const both = `${TWELVE}  place A top weave x8 foil\n  on 14:30 A top\n`;
    const apart = clockOf(`${both}  off 14:50 A nape x12\n  off 14:55 A top x4\n  off 15:05 A top x4\n`);
    expect(apart.runs.map(({ zone, off }) => [zone, off])).toEqual([
      ['nape', 890],
      ['top', 905],
    ]);
    const together = clockOf(`${both}  off 14:50 A x12\n  off 15:05 A x8\n`);
    // Twelve at the nape went on first.
    expect(together.runs.map(({ off }) => off)).toEqual([890, 905]);
    expect(together.problems).toEqual([]);
    const mixed = clockOf(`${both}  off 14:50 A nape x6\n  off 15:05 A x14\n`);
    expect(mixed.runs.map(({ off }) => off)).toEqual([905, 905]);
    expect(mixed.problems).toEqual([]);
  });

  it('holds the section that was on longest against the clock', () => {
    // The seventh of twelve went on at 14:26 and was on for 54 minutes; the first six for 50 at most.
    const { runs } = clockOf(
      '  place A nape weave x12 foil\n  on 14:20-14:32 A nape\n  off 15:10 A nape x6\n  off 15:20 A nape x6\n',
    );
    expect(runs.map(({ sections }) => sections)).toEqual([{ firstOff: 910, least: 44, most: 54 }]);
    const late = clockOf(
      '  place A nape weave x12 foil\n  on 14:20-14:32 A nape\n  off 15:10 A nape x6\n  off 15:23 A nape x6\n',
    );
    expect(late.runs.map(({ sections }) => sections)).toEqual([{ firstOff: 910, least: 44, most: 57 }]);
    const span = clockOf(
      '  place A nape weave x12 foil\n  on 14:20-14:32 A nape\n  off 15:00-15:04 A nape x6\n  off 15:10-15:14 A nape\n',
    );
    expect(span.runs.map(({ off, sections }) => [off, sections])).toEqual([
      [914, { firstOff: 900, least: 38, most: 44 }],
    ]);
  });

  it('is untold where one place went on by two lines', () => {
    const { runs, problems } = clockOf(
      '  place A nape weave x12 foil\n  on 14:20-14:25 A nape\n  on 14:26-14:32 A nape\n  off 15:10 A nape x6\n  off 15:20 A nape x6\n',
    );
    expect(runs.map(({ off, sections }) => [off, sections?.untold])).toEqual([
      [920, true],
      [920, true],
    ]);
    expect(problems).toEqual([]);
  });

  it('ends what was stopped, however many were off before', () => {
    const { runs } = clockOf(`${TWELVE}  off 14:50 A nape x6\n  stopped 14:55 A nape "stinging"\n`);
    expect(runs.map(({ off }) => off)).toEqual([895]);
  });
});

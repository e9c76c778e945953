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
  ...(sections && { least: sections.least, most: sections.most }),
  ...(partsOff && { parts: partsOff.map(({ minute, sections: count, placed }) => [minute, count, placed]) }),
});

const TWELVE = '  place A nape weave x12 foil\n  on 14:20-14:30 A nape\n';

describe('sections that come off before the rest', () => {
  it('leaves the rest on until it comes off', () => {
    const { runs, problems } = clockOf(`${TWELVE}  off 14:50 A nape x6\n  off 15:10 A nape\n`);
    expect(runs.map(brief)).toEqual([
      { zone: 'nape', off: 910, fromFirst: 50, fromAll: 40, least: 30, most: 40, parts: [[890, 6, 12]] },
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
    expect(two.runs.map(brief)).toMatchObject([{ off: 905, parts: [[890, 6, undefined]] }]);
    expect(two.problems).toEqual([]);
  });

  it('counts each place by itself, and a bowl named alone by all its places', () => {
    const both = `${TWELVE}  place A top weave x8 foil\n  on 14:30 A top\n`;
    const apart = clockOf(`${both}  off 14:50 A nape x12\n  off 14:55 A top x4\n  off 15:05 A top x4\n`);
    expect(apart.runs.map(({ zone, off }) => [zone, off])).toEqual([
      ['nape', 890],
      ['top', 905],
    ]);
    const together = clockOf(`${both}  off 14:50 A x12\n  off 15:05 A x8\n`);
    expect(together.runs.map(({ off }) => off)).toEqual([905, 905]);
    expect(together.problems).toEqual([]);
  });

  it('ends what was stopped, however many were off before', () => {
    const { runs } = clockOf(`${TWELVE}  off 14:50 A nape x6\n  stopped 14:55 A nape "stinging"\n`);
    expect(runs.map(({ off }) => off)).toEqual([895]);
  });
});

import type { Kind } from '../../.scripts/fuzz/cases.ts';

/** A case that once broke a promise, made small. */
export type Found = {
  readonly was: string;
  readonly kind: Kind;
  readonly files: readonly (string | readonly number[])[];
};

const chain = (length: number, share = ''): string =>
  Array.from({ length }, (_, nth) => `again A${nth} from A${nth + 1}${share}`).join('\n');

export const FOUND: readonly Found[] = [
  {
    was: 'a file with nothing but the mark of UTF-16 was reported at a character it does not have',
    kind: 'file',
    files: [[0xff, 0xfe]],
  },
  {
    was: 'a file in UTF-16 that begins with an empty line was reported on that line',
    kind: 'file',
    files: [[0xff, 0xfe, 0x0a, 0x00, 0x61, 0x00]],
  },
  {
    was: 'a comma between two values was reported at no character',
    kind: 'line',
    files: ['salon b\nhours 1,é'],
  },
  {
    was: 'a line that counts no sections stopped the drawing of its card',
    kind: 'journal',
    files: ['visit 2025-09-13 a\nplace t-section x0'],
  },
  {
    was: 'a line that counts a million sections had a million of them made to be drawn',
    kind: 'journal',
    files: [`visit 2025-09-13 a\n${'place A top x1000000\nplace B+C all weave x1000000 mirror\n'.repeat(20)}`],
  },
  {
    was: 'neatening parted a plus sign from a colon that touched it, and the amount after it was no longer read',
    kind: 'file',
    files: ['visit 2025-05-04 a-b\nbowl A+: 2 clay\nbowl B 2 clay+(2 dev-6'],
  },
  {
    was: 'a hold longer than the calendar stopped the check',
    kind: 'journal',
    files: ['client a\nhold t 1000000w\nvisit 2025-05-16 a\nhold t 1000000w\nnext 1000000w\nbowl A 40 t'],
  },
  {
    was: 'a sign of a tone was taken with the unit that followed it, and the white space between',
    kind: 'file',
    files: ['range high "High" high-lift\nuses t\ntones 0  in m'],
  },
  {
    was: 'neatening took away the empty line before a byte-order mark, which then began the file',
    kind: 'file',
    files: ['\n\ufeff<<<<<<<\nx\nvisit 2026-09-04 a', '\n\n\ufeffvisit 2026-09-04 a'],
  },
  {
    was: 'neatening kept the empty line before a byte-order mark that it took away itself, and took it the second time',
    kind: 'file',
    files: ['\n\ufeffrange s', '\n\ufeff   # a comment', '\n\ufeffx'],
  },
  {
    was: 'a shade of two words kept the white space between them as it was typed, which neatening changes',
    kind: 'file',
    files: ['stock 2025-03\nin s 4~\u2028a', 'stock 2025-03\nin s 4~\ta'],
  },
  {
    was: 'a thousand remakes in one visit, each of the next, ended the program',
    kind: 'chain',
    files: [`visit 2024-01-01 wren\n${chain(3_000)}\nbowl A3000 40 clay`],
  },
  {
    was: 'scaled remakes of scaled remakes were worked out in fractions without an end',
    kind: 'chain',
    files: [`visit 2024-01-01 wren\n${chain(1_000, ' 83%')}\nbowl A1000 40 clay`],
  },
  {
    was: 'watching took away the pages behind a link in the place of the cards',
    kind: 'links',
    files: ['watch\npages/clients -> cards'],
  },
  {
    was: 'watching wrote through a link in the place of its own file',
    kind: 'links',
    files: ['watch\npages/.gitignore -> victim.txt'],
  },
  {
    was: 'neatening wrote through a link to a file outside the notes',
    kind: 'links',
    files: ['neaten file\ntoday.bowl -> victim.bowl'],
  },
  {
    was: 'of two writers at once one lost its line',
    kind: 'hands',
    files: ['5 1000\n1 0'],
  },
];

import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  ['born 1988-04-02', { when: '1988-04-02' }],
  ['born 1988', { when: '1988' }],
  ['born 1988-04', { when: '1988-04' }],
  ['natural 6', { seen: ['6'] }],
  ['natural 6 ash', { seen: [{ words: ['ash'], depth: '6' }] }],
  [
    'natural roots 5, ends 7',
    {
      seen: [
        { zones: ['roots'], depth: '5' },
        { zones: ['ends'], depth: '7' },
      ],
    },
  ],
  [
    'grey 30% temples, 10% rest',
    {
      parts: [
        { zones: ['temples'], grey: '30%' },
        { zones: ['rest'], grey: '10%' },
      ],
    },
  ],
  ['grey 30', { parts: ['30%'] }],
  ['grey temples 30-50%', { parts: [{ zones: ['temples'], grey: '30-50%' }] }],
  [
    'hair medium, density high, length shoulder, form wavy, porosity high ends',
    {
      qualities: [
        { quality: 'strand', words: ['medium'] },
        { quality: 'density', words: ['high'] },
        { quality: 'length', words: ['shoulder'] },
        { quality: 'form', words: ['wavy'] },
        { quality: 'porosity', words: ['high'], zones: ['ends'] },
      ],
    },
  ],
  [
    'hair fine and curly',
    {
      qualities: [
        { quality: 'strand', words: ['fine'] },
        { quality: 'form', words: ['curly'] },
      ],
    },
  ],
  [
    'hair porosity medium roots, high ends',
    {
      qualities: [
        { quality: 'porosity', words: ['medium'], zones: ['roots'] },
        { quality: 'porosity', words: ['high'], zones: ['ends'] },
      ],
    },
  ],
  ['hair thick', { qualities: [{ quality: 'strand', words: ['thick'] }] }],
  ['pattern crown "double whorl"', { zones: ['crown'], says: 'double whorl' }],
  ['pattern "cowlick"', { says: 'cowlick' }],
  ['pattern hairline, nape', { zones: ['hairline', 'nape'] }],
  ['history 2024-05 box-colour lengths', { kinds: ['box-colour'], zones: ['lengths'], when: '2024-05' }],
  ['history 2024 henna, perm', { kinds: ['henna', 'perm'], when: '2024' }],
  [
    'history box colour 2023-01-02 ends "at home"',
    { kinds: ['box-colour'], zones: ['ends'], when: '2023-01-02', says: 'at home' },
  ],
  ['allergy "nickel"', { says: 'nickel' }],
  ['allergy to nickel, ppd', { to: ['nickel', 'ppd'] }],
  ['allergy PPD "blistered"', { to: ['ppd'], says: 'blistered' }],
  ['caution pregnant until 2027-01', { text: 'pregnant', until: '2027-01' }],
  ['caution "asthma"', { text: 'asthma' }],
  ['caution reacted in May # years ago', { text: 'reacted in May # years ago' }],
  ['avoid "brassiness"', { says: 'brassiness' }],
  ['avoid red, copper', { what: ['red', 'copper'] }],
  ['avoid red "too warm on her"', { what: ['red'], says: 'too warm on her' }],
  ['letter 2026-05-02 "Dr N: may have colour"', { date: '2026-05-02', says: 'Dr N: may have colour' }],
  ['consent photos', { what: ['photos'] }],
  ['consent form 2026-09-01 "her mother"', { what: ['form'], date: '2026-09-01', says: 'her mother' }],
  ['consent photos, reminders', { what: ['photos', 'reminders'] }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said, 'client'));

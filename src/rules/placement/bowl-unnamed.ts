import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'bowl-unnamed',
  family: 'placement',
  severity: 'fix',
  bears: 'that-day',
  over: 'problem',
  kinds: ['bowl-unnamed'],
  what: 'An `on` line names no bowl, several are mixed, and no `place` line tells which goes there.',
  why: 'Its time, its looks and its place belong to no bowl, and nothing can be held against its leaflet.',
  source: { kind: 'notation' },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      bowl B 30 neon coral
      place A top
      place B top
      on 14:00 top
         ^^^^^
      off 14:20`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      bowl B 30 neon coral
      place A top
      place B nape
      on 14:00 top, nape
      off 14:20`,
});

import { placeOf, wordsPlace } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { isAt } from '../../reckon/head/hair-meets.ts';
import { defineRule, foundEach } from '../rule.ts';

export default defineRule({
  name: 'mirror-on-midline',
  family: 'placement',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['place'] },
  what: '`mirror` stands where there is no other side: at the parting, or at a zone that names its side.',
  why: 'A mirror doubles the count of sections, and next time twice as many would be laid.',
  source: { kind: 'notation' },
  check: ({ visit }, { journal }) =>
    foundEach(factsOf(visit, 'place'), ({ line, mirror, zones }) => {
      if (!mirror) return undefined;
      const one = zones.find(({ zone }) => isAt(zone, 'parting', 'left', 'right'));
      // With another zone beside it, the word is that one's.
      if (one === undefined || zones.some(({ zone }) => !isAt(zone, 'parting', 'left', 'right'))) return undefined;
      const sided = isAt(one.zone, 'left', 'right');
      return {
        place: wordsPlace(journal, placeOf(visit, { line }, one.at), /\bmirror\b/iu),
        message: `\`mirror\` stands at ${one.zone}, which ${sided ? 'is one side already' : 'has no other side'}.`,
        todo: `Write the whole count without \`mirror\`${sided ? ', or the zone without its side' : ''}.`,
        label: sided ? 'one side already' : 'no other side',
      };
    }),
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A parting slice x4 mirror foil
                               ^^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      place A parting slice x8 foil`,
});

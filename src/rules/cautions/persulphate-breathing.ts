import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { breathingIsPast, saysBreathing } from '../../trade/contraindications.ts';
import { defineRule, type Found } from '../rule.ts';
import { alertsOn } from '../said-on-file.ts';

function* found(visit: VisitReckoned): Generator<Found> {
  for (const bowl of bowlsPutOn(visit)) {
    const item = itemsIn(bowl).find(({ kind }) => kind === 'lightener');
    if (item === undefined) continue;
    const every = alertsOn(visit.date, visit.client).filter(({ text }) => saysBreathing(text));
    const said = every.find(({ text }) => !breathingIsPast(text)) ?? every[0];
    if (said === undefined) return;
    const past = breathingIsPast(said.text);
    yield {
      place: placeInBowl(bowl, (portion) => portion.item === item),
      ...(past && { severity: 'mind' as const }),
      message: `Bowl ${bowl.name} holds ${item.name}, a lightener, and "${said.text}" is on file.`,
      expected:
        'Persulphates are respiratory sensitisers, and exposure is kept to a minimum (the French agency ANSES).',
      todo: 'Write what was really used, or who agreed to it: `because persulphate-breathing "…"`.',
      label: 'lightener',
      also: [{ place: said.place, says: 'breathing trouble' }],
    };
    return;
  }
}

export default defineRule({
  name: 'persulphate-breathing',
  family: 'cautions',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener'] },
  what: 'Lightener is used on someone with breathing trouble on file: asthma, wheezing, an inhaler; `mind` where it ended long ago.',
  why: 'Most lighteners hold persulphates, which can bring on asthma in whoever breathes their dust.',
  source: {
    kind: 'published',
    cites: 'the French agency ANSES, page "ANSES recommends restricting persulphates in hair products"',
  },
  caution: 'persulphate',
  check: found,
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      caution asthma, carries an inhaler
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      caution no asthma, asked twice
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6`,
});

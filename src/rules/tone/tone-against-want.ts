import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { blendOf, shadesIn, shadesText } from '../../reckon/bowl/shade-blend.ts';
import { meets, placeName, type SeenAt, seenAt } from '../../reckon/head/seen-at.ts';
import { zonesOfBowl } from '../../reckon/head/services.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import type { ShadeBlend } from '../../trade/blend.ts';
import { type Temperature, temperatureOf } from '../../trade/neutralise.ts';
import { toneFamily } from '../../trade/tone.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

const only = (all: readonly (Temperature | undefined)[]): Temperature | undefined => {
  const known = all.find((one) => one !== undefined);
  return all.every((one) => one === undefined || one === known) ? known : undefined;
};

/** Warm or cool, where all the tones wanted are one or the other. */
const wantedOf = ({ seen }: SeenAt): Temperature | undefined =>
  only(
    seen.words.map(({ word }) => {
      const family = toneFamily(word);
      return family && temperatureOf(family);
    }),
  );

/** Warm or cool, by everything that has a tone in a bowl. */
const leansOf = ({ tones }: ShadeBlend): Temperature | undefined =>
  only(tones.map(({ family }) => temperatureOf(family)));

function* found(visit: VisitReckoned): Generator<Found> {
  const wants = seenAt(visit, 'want');
  const bowls = bowlsPutOn(visit).flatMap((bowl) => {
    const blend = blendOf(bowl);
    return blend === undefined ? [] : [{ bowl, leans: leansOf(blend) }];
  });
  if (bowls.some(({ bowl }) => itemsIn(bowl).some(({ kind }) => kind === 'filler'))) return;
  for (const want of wants) {
    const wanted = wantedOf(want);
    const there = bowls.filter(({ bowl }) => meets(want.zone, zonesOfBowl(visit, bowl.name), visit.salon.zones));
    const [first] = there;
    // Where one bowl leans the right way, or to both sides, the rest is the colourist's blend.
    if (wanted === undefined || first === undefined) continue;
    if (there.some(({ leans }) => leans === undefined || leans === wanted)) continue;
    const [shade] = shadesIn(first.bowl);
    yield {
      place: placeInBowl(first.bowl, (portion) => portion === shade),
      message: `${placeName(want.zone)}: wanted ${wanted}; bowl ${first.bowl.name} is ${first.leans} (${shadesText(first.bowl)}).`,
      expected: 'What is put on leaves its own tone (the tones of the range, else the common digits).',
      todo: 'Write the shade that was used or the tone that is wanted; if both stand, what changes next: `next 6w …`.',
      label: `${first.leans}`,
      also: [{ place: want.place, says: 'wanted here' }],
    };
  }
}

export default defineRule({
  name: 'tone-against-want',
  family: 'tone',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['want'] },
  what: 'The tone wanted is cool and everything put on there is warm, or the other way round.',
  why: 'A slip of one digit turns ash into gold; it shows only when the hair is dry.',
  source: { kind: 'shelf', cites: 'the tones line of what is mixed' },
  check: (visit) => (seenAt(visit, 'want').some((want) => wantedOf(want) !== undefined) ? found(visit) : NONE),
  bad: `
    product act "Activator" developer 1.9%
    range gloss "Tidewater gloss" demi
      tones 1 ash, 3 gold
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 gloss read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      want lengths 8 ash
      bowl A 30 gloss 8/3 + 60 act
             ^^^^^^^^^^^^
      place A lengths`,
  good: `
    product act "Activator" developer 1.9%
    range gloss "Tidewater gloss" demi
      tones 1 ash, 3 gold
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 gloss read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      want lengths 8 ash
      bowl A 30 gloss 8/1 + 60 act
      place A lengths`,
});

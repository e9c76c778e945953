import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { blendOf, shadesIn, shadesText } from '../../reckon/bowl/shade-blend.ts';
import { type GreyCover, greyCovers } from '../../reckon/hair/grey-cover.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { figure, listed } from '../../reckon/say.ts';
import { exact, exactOf, mul } from '../../text/exact.ts';
import { GREY_BASE_SOURCE, greyBases, naturalShare } from '../../trade/grey.ts';
import { toneFamily } from '../../trade/tone.ts';
import { defineRule, type Found } from '../rule.ts';

const isNeutral = (tone: string): boolean => toneFamily(tone) === 'neutral';

const hasNoNeutral = (bowl: BowlReckoned): boolean =>
  blendOf(bowl)?.tones.every(({ family }) => family !== 'neutral') === true;

const foundIn = ({ bowl, grey }: GreyCover): readonly Found[] => {
  const shades = shadesIn(bowl);
  const signs = shades.flatMap(({ item }) => [...item.tones]).filter(([, tone]) => isNeutral(tone));
  // Only where the range itself names its natural series.
  if (signs.length === 0) return [];
  const shares = greyBases(grey.percent).map((row) => `${figure(mul(naturalShare(row), exact(100)))} %`);
  return [
    {
      place: placeInBowl(bowl, (portion) => portion === shades[0]),
      message: `Bowl ${bowl.name} covers ${figure(exactOf(grey.percent))} % grey with ${shadesText(bowl)}, and no natural shade.`,
      expected: `${listed(shares, 'or')} of the colour from the natural series, a rough guide (${GREY_BASE_SOURCE}).`,
      todo: `Add a shade with ${listed([...new Set(signs.map(([sign]) => `\`${sign}\``))], 'or')}, or give the reason: \`because grey-base-missing "…"\`.`,
      label: 'no natural series',
      also: [{ place: grey.place, says: 'share of grey' }],
    },
  ];
};

export default defineRule({
  name: 'grey-base-missing',
  family: 'grey',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'Half the hair or more is grey, and the permanent colour that covers it has no shade of the natural series.',
  why: 'A fashion shade alone lacks the base that white hair needs, and comes out thin and bright.',
  source: {
    kind: 'published',
    cites: 'US trade magazine, page "Swatch smarts", 2011: a trade test of one maker’s colour',
  },
  check: (visit) =>
    greyCovers(visit)
      .filter(({ bowl }) => hasNoNeutral(bowl))
      .flatMap(foundIn),
  bad: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      tones 0 natural, 3 gold, 4 copper
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      start roots 6, grey 80%
      bowl A 40 cream 6/43 + 60 dev-6
             ^^^^^^^^^^^^^
      place A roots`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
      tones 0 natural, 3 gold, 4 copper
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      start roots 6, grey 80%
      bowl A 30 cream 6/0 + 10 cream 6/43 + 60 dev-6
      place A roots`,
});

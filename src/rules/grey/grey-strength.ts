import { developerStrength, placeInBowl } from '../../reckon/bowl/contents.ts';
import { type GreyCover, greyCovers } from '../../reckon/hair/grey-cover.ts';
import { figure } from '../../reckon/say.ts';
import { compare, exactOf } from '../../text/exact.ts';
import { GREY_COVER } from '../../trade/grey.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

const foundIn = ({ bowl, grey }: GreyCover): Found | undefined => {
  const strength = developerStrength(bowl);
  if (strength === undefined || compare(strength, GREY_COVER) >= 0) return undefined;
  return {
    place: placeInBowl(bowl, ({ role }) => role === 'developer'),
    message: `Bowl ${bowl.name} covers ${figure(exactOf(grey.percent))} % grey with ${figure(strength)} %.`,
    expected: `Grey is covered with ${figure(GREY_COVER)} %, a rough guide (a cosmetology exam guide).`,
    todo: 'Write the developer that was used, or give the reason: `because grey-strength "…"`.',
    label: `${figure(strength)} %`,
    also: [{ place: grey.place, says: 'share of grey' }],
  };
};

export default defineRule({
  name: 'grey-strength',
  family: 'grey',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  what: 'Half the hair or more is grey, and the permanent colour that covers it is mixed with less than 6 per cent.',
  why: 'Grey hair is slow to take; a weak developer colours it thinly and it washes out.',
  source: { kind: 'published', cites: 'cosmetology exam guide, page "Hair coloring and lightening"' },
  check: (visit) => foundEach(greyCovers(visit), foundIn),
  bad: `
    product dev-3 "Cream developer" developer 3%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      start roots 6, grey 80%
      bowl A 40 cream 6/0 + 60 dev-3
                            ^^^^^^^^
      place A roots`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      start roots 6, grey 80%
      bowl A 40 cream 6/0 + 60 dev-6
      place A roots`,
});

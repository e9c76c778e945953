import { wentOn } from '../../reckon/bowl/applied.ts';
import { cautionIn } from '../../reckon/bowl/caution-in.ts';
import { placeInBowl, portionsIn } from '../../reckon/bowl/contents.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import { kindFacts } from '../../trade/kinds.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

const foundIn = ({ salon, age, bowls }: VisitReckoned): Found | undefined => {
  const { under, stood } = salon;
  if (under === undefined || stood === undefined || age === undefined || age >= under.age) return undefined;
  for (const bowl of bowls) {
    if (!wentOn(bowl)) continue;
    const portion = portionsIn(bowl).find(({ item }) => {
      if (item?.kind === undefined || item.kind === 'developer' || under.only.includes(item.kind)) return false;
      const { colours, lightens, oxidative } = kindFacts(item.kind);
      return colours || lightens || oxidative !== false;
    });
    if (portion?.item === undefined) continue;
    const only = under.only.length === 0 ? 'nothing that colours or lightens' : `${under.only.join(' and ')} only`;
    return {
      place: placeInBowl(bowl, (own) => own === portion),
      message: `Aged ${age}, and bowl ${bowl.name} holds ${portion.item.name}, which is ${portion.item.kind}.`,
      expected: sentence`The salon’s policy is ${only} under ${under.age} (${lineName(placeOf(stood, under.policy))}).`,
      todo: 'Write what was really used, or `declined` and why; if it went on, who agreed: `because under-age "…"`.',
      label: `aged ${age}`,
      caution: cautionIn(bowl, 'under-16', 'lightener', 'peroxide', 'reaction'),
    };
  }
  return undefined;
};

export default defineRule({
  name: 'under-age',
  family: 'age',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  what: 'A kind is used on someone younger than the salon’s `policy under` line allows it.',
  why: 'Dyes sensitise the young, and an allergy gained early is for life.',
  source: { kind: 'policy', cites: 'its `policy under` line' },
  caution: 'under-16',
  check: (visit) => {
    const found = foundIn(visit);
    return found === undefined ? NONE : [found];
  },
  bad: `
    salon harbour "Harbour Row"
      policy under 16 temporary only
    range neon "Kelp direct" semi
      mix none
      shades teal
    client juno-pike "Juno Pike"
      born 2012-05-20
    visit 2026-09-04 juno-pike
      bowl A 30 neon teal
             ^^^^^^^^^^^^`,
  good: `
    salon harbour "Harbour Row"
      policy under 16 temporary only
    product rinse "Silver rinse" temporary
      mix none
    client juno-pike "Juno Pike"
      born 2012-05-20
    visit 2026-09-04 juno-pike
      bowl A 30 rinse`,
});

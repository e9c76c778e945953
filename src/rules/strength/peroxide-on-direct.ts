import { basesIn, developerStrength, hasPeroxide, placeInBowl } from '../../reckon/bowl/contents.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { sentence } from '../../text/sentence.ts';
import type { Kind } from '../../trade/kinds.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

const DIRECT: readonly Kind[] = ['semi', 'temporary'];

const foundIn = (bowl: BowlReckoned): Found | undefined => {
  if (bowl.again !== undefined || !hasPeroxide(bowl)) return undefined;
  const item = basesIn(bowl).find(
    ({ kind, mix }) => kind !== undefined && DIRECT.includes(kind) && mix?.ratio === undefined,
  );
  if (item === undefined) return undefined;
  const { mix } = item;
  const strength = developerStrength(bowl);
  return {
    place: placeInBowl(bowl, ({ role }) => role === 'developer'),
    ...(mix === undefined && { severity: 'mind' as const }),
    message: `Bowl ${bowl.name} has ${item.name} with developer${strength === undefined ? '' : ` of ${figure(strength)} %`}.`,
    expected:
      mix === undefined
        ? 'Direct dye takes no developer (common practice).'
        : sentence`${item.full} is used as it is (${citeLine(item, mix)}).`,
    todo: 'Write what was mixed, or the ratio its leaflet gives as its `mix` line.',
    label: 'developer',
    ...(mix && { also: [{ place: placeOf(item.stood, mix), says: 'its mix line' }] }),
  };
};

export default defineRule({
  name: 'peroxide-on-direct',
  family: 'strength',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: DIRECT },
  what: 'A direct dye is mixed with peroxide, against its own `mix none`; `mind` where it has no mix line.',
  why: 'Direct dye needs no developer; peroxide can turn or bleach it, and opens hair that was to be left alone.',
  source: { kind: 'shelf', cites: 'the mix line of the direct dye, else common practice' },
  check: ({ bowls }) => foundEach(bowls, foundIn),
  bad: `
    product dev-6 "Cream developer" developer 6%
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal + 30 dev-6
                            ^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal`,
});

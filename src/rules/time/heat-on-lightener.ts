import { developerStrength, itemsIn } from '../../reckon/bowl/contents.ts';
import type { BowlReckoned, HeatOn, Run, VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { isOnScalp } from '../../reckon/timing/time-line.ts';
import { bowlOf } from '../../reckon/timing/timed-runs.ts';
import { compare, exact } from '../../text/exact.ts';
import type { Severity } from '../../text/finding.ts';
import { type HeatSaid, heatSaid } from '../../trade/heat.ts';
import { defineRule, type Found } from '../rule.ts';

/** Above this, in per cent of the developer, lightener is strong: a choice, no source. */
const STRONG = exact(6);
/** Up to this it is weak, and a dryer over foil is sound. */
const WEAK = exact(3);

type Hot = { readonly severity: Severity; readonly scalp: boolean };

/**
 * How grave heat on a bowl is. On the scalp any heat but a warm towel is; in foil or film off it, a dryer on all but weak
 * lightener, and there is something to think of in heat that nobody named on strong.
 */
const gravity = (said: HeatSaid, bowl: BowlReckoned, scalp: boolean): Severity | undefined => {
  if (said === 'none') return undefined;
  if (scalp) return said === 'mild' ? 'mind' : 'fix';
  const strength = developerStrength(bowl);
  if (said === 'mild' || strength === undefined || compare(strength, WEAK) <= 0) return undefined;
  if (said === 'strong') return 'fix';
  return compare(strength, STRONG) > 0 ? 'mind' : undefined;
};

const hotOf = (visit: VisitReckoned, run: Run, heat: HeatOn): Hot | undefined => {
  const bowl = bowlOf(visit, run);
  if (bowl === undefined || !itemsIn(bowl).some(({ kind }) => kind === 'lightener')) return undefined;
  const scalp = isOnScalp(visit, bowl, run);
  const severity = gravity(heatSaid(heat.says), bowl, scalp);
  return severity && { severity, scalp };
};

const foundOf = (visit: VisitReckoned, run: Run, heat: HeatOn, { severity, scalp }: Hot): Found => {
  const bowl = bowlOf(visit, run);
  const strength = bowl && developerStrength(bowl);
  const item = bowl?.held.find(({ role }) => role === 'base')?.label;
  const said = heat.says === '' ? 'Heat' : `Heat, “${heat.says}”,`;
  return {
    place: heat.place,
    severity,
    message: scalp
      ? `${said} goes on bowl ${run.bowl}, ${item}, on the scalp.`
      : `${said} goes on bowl ${run.bowl}, ${item}${strength === undefined ? '' : ` with ${figure(strength)} %`}.`,
    expected: scalp
      ? 'Lightener on the scalp takes no heat but the scalp’s own (common practice; its leaflet comes first).'
      : 'Lightener off the scalp works without a dryer, watched (common practice; its leaflet comes first).',
    todo: scalp
      ? 'Write the zones or the bowl that the heat was for, or why: `because heat-on-lightener "…"`.'
      : 'Write what the heat was, as in `"warm towel"`, or why its leaflet allows it: `because heat-on-lightener "…"`.',
    label: scalp ? 'heat on the scalp' : 'heat on lightener',
  };
};

export default defineRule({
  name: 'heat-on-lightener',
  family: 'time',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['heat', 'dry'] },
  what: 'Heat is put on lightener that lies on the scalp, or a dryer on lightener over 3 per cent; `mind` for a warm towel on the scalp, and for heat that nobody named over 6 per cent.',
  why: 'Heat makes peroxide work faster than it can be watched: on the scalp it burns skin, and in foil it can burn through the hair.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check(visit) {
    // One line is one finding: the gravest of what it is on.
    const worst = new Map<number, Found>();
    for (const run of visit.clock.runs)
      for (const heat of run.heats ?? []) {
        const hot = hotOf(visit, run, heat);
        const known = worst.get(heat.place.line);
        if (hot !== undefined && (known === undefined || (known.severity === 'mind' && hot.severity === 'fix')))
          worst.set(heat.place.line, foundOf(visit, run, heat, hot));
      }
    return [...worst.values()];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp
      on 14:00 A roots
      heat 14:05-14:15 A
           ^^^^^^^^^^^
      check 14:15 A orange
      off 14:25 A`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp
      on 14:00 A roots
      check 14:15 A orange
      off 14:25 A`,
});

import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { isCutOff } from '../../reckon/client/cut-off.ts';
import { cautionsOn, historyKinds, isLightening, stillHanging, zonesOfBowl } from '../../reckon/client/state.ts';
import { triedSince } from '../../reckon/hair/tried-since.ts';
import { anyMeetLoosely } from '../../reckon/head/hair-meets.ts';
import { areLeftOut } from '../../reckon/head/left-out.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { firstDayOf } from '../../reckon/when.ts';
import { daysBetween } from '../../text/dates.ts';
import type { Place } from '../../text/span.ts';
import { sameLine } from '../../text/span.ts';
import { RESHAPE_REST } from '../../trade/intervals.ts';
import { relaxedTold } from '../../trade/relaxed.ts';
import { defineRule, type Found, NONE } from '../rule.ts';
import { historySaid, notesSaid } from '../said-on-file.ts';

/** `12 days before (2026-09-20)`; a month alone gives the most that it can be. */
const daysText = (days: number, when: string | undefined): string => {
  const count = days === 1 ? '1 day' : `${days} days`;
  return `${when?.length === 10 ? '' : 'at most '}${days === 0 ? 'the same day' : `${count} before`} (${when})`;
};

type Relaxed = {
  readonly when: string | undefined;
  readonly from: string;
  readonly zones: readonly string[];
  readonly place: Place;
};

const inHistory = (visit: VisitReckoned): Relaxed[] =>
  stillHanging(visit)
    .filter(({ kind }) => kind === 'relaxer')
    .map((done) => ({ ...done, from: done.when === undefined ? '' : firstDayOf(done.when) }));

const tells = (text: string): boolean => relaxedTold(text) !== undefined;

/** What remarks, notes and cautions say in words; a `history` line with the word itself stands among its kinds. */
const inWords = (visit: VisitReckoned): Relaxed[] => {
  const { client, date } = visit;
  const kinds = historyKinds(client).map(({ place }) => place);
  return [...historySaid(client, date), ...notesSaid(client, date, tells), ...cautionsOn(date, client)].flatMap(
    ({ text, place }) => {
      const isKind = kinds.some((one) => sameLine(one, place));
      if (isKind || relaxedTold(text) === undefined) return [];
      const when = /(?<!\d)\d{4}(?:-\d{2}){0,2}(?![\d-])/u.exec(text)?.[0];
      if (isCutOff(visit, when)) return [];
      const zones = ALONG.filter((zone) => text.toLowerCase().includes(zone));
      return [{ when, from: when === undefined ? '' : firstDayOf(when), zones, place }];
    },
  );
};

const ALONG = ['roots', 'mids', 'lengths', 'ends'] as const;

const foundIn = (visit: VisitReckoned): Found | undefined => {
  const { date, salon } = visit;
  const newestFirst = [...inHistory(visit), ...inWords(visit)]
    .filter(({ from }) => from <= date)
    .sort((a, b) => (a.from < b.from ? 1 : a.from > b.from ? -1 : 0));
  for (const { when, from, zones, place } of newestFirst) {
    const bowl = bowlsPutOn(visit).find(
      (one) =>
        isLightening(one) &&
        anyMeetLoosely(zonesOfBowl(visit, one.name), zones, salon.zones) &&
        !areLeftOut(visit, zones),
    );
    if (bowl === undefined) continue;
    const item = itemsIn(bowl).find(({ kind }) => kind === 'lightener' || kind === 'high-lift')?.name;
    const tried = triedSince(visit, when);
    const days = from === '' ? undefined : daysBetween(from, date);
    const soon = days !== undefined && days < RESHAPE_REST;
    const since = soon
      ? `, ${daysText(days, when)}`
      : `${when === undefined ? '' : ` of ${when}`}${tried ? '' : ', and no strand or stretch test since'}`;
    return {
      place: placeInBowl(bowl, ({ item }) => item?.kind === 'lightener' || item?.kind === 'high-lift'),
      severity: tried && !soon ? 'mind' : 'fix',
      message: `Bowl ${bowl.name} lightens hair with a relaxer on file${since}.`,
      expected: `Relaxed hair is not lightened, or only after ${RESHAPE_REST} d and a strand that was tried (common practice).`,
      todo: soon
        ? 'Write the day or the zone, if it was another, or why it was done: `because lightener-on-relaxed "…"`; `hold lightener 2w` keeps it off next time.'
        : `Write the strand that was tried, as in \`test strand ${item} 20min yellow\`, or why it was done: \`because lightener-on-relaxed "…"\`.`,
      label: 'relaxed hair',
      also: [{ place, says: 'the relaxer' }],
    };
  }
  return undefined;
};

export default defineRule({
  name: 'lightener-on-relaxed',
  family: 'condition',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener', 'high-lift'] },
  what: 'Hair that was relaxed is lightened within two weeks, or without a strand or stretch test since; else `mind`.',
  why: 'A relaxer and a lightener break the same bonds, and relaxed hair can come off where lightener touches it.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  check: (visit) => {
    const found = foundIn(visit);
    return found === undefined ? NONE : [found];
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      history 2026-03 relaxer lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^
      place A top`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
      scalp to 6%
    client wren-abbott "Wren Abbott"
      history 2026-03 relaxer lengths
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A roots on-scalp`,
});

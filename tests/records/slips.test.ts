import { describe, expect, test } from 'vitest';
import { toldOf, type Under } from './one-line.ts';

/** What is told of a slip of the hand: the rule and the characters it points to, what to do, what to put there. */
type Told = readonly [line: string, spot: string, todo: string, put?: string];

const slips: { readonly [under in Under]: readonly Told[] } = {
  visit: [
    ['bowel A 40 clay', 'unknown-word: bowel', 'Write `bowl`, or `note` before the line to keep it as text.', 'bowl'],
    ['bowl 40 clay + 20vol 1:2', 'no-bowl: 40', 'Write a letter first, as in `bowl A 40 clay …`.'],
    ['bowl roots 40 clay + 20vol 1:2', 'no-bowl: roots', 'Write a letter first, as in `bowl R 40 clay …`.'],
    ['bowl A 40 clay +', 'not-read: +', 'Write the part that is missing, as in `+ 20vol 1:2`, or take the `+` out.'],
    [
      'plus A 3 bond + "a drop"',
      'not-read: +',
      'Write the part that is missing, as in `+ 20vol 1:2`, or take the `+` out.',
    ],
    ['bowl A 40 clay 20vol 1:2', 'two-readings: 20vol', 'Write `+` before `20vol`, or before its weight.'],
    ['bowl A 20 cream 7/0 6% 1:1.5', 'two-readings: 6%', 'Write `+` before `6%`, or before its weight.'],
    ['bowl A 1.000 clay', 'two-readings: 1.000', 'Write `1` or `1000`.'],
    ['bowl A 1,000 clay + 6%', 'two-readings: 1,000', 'Write `1` or `1000`.'],
    [
      'bowl A 2 oz clay',
      'bare-oz: oz',
      'Write `oz-wt` (an ounce of weight, 28.35 g), `floz-us` (a US fluid ounce, 29.57 ml), `floz-uk` (an imperial fluid ounce, 28.41 ml) or `ml` (a label ounce, 30 ml).',
    ],
    ['bowl A 6.1 7.5 cream', 'two-readings: 6.1 7.5', 'Write the shade with a slash, as in `7/5`.'],
    ['bowl A 40 clay + 20v 80', 'two-readings: 20v', 'Write `20vol` for a strength.', '20vol'],
    ['bowl A 1/2 cream', 'two-readings: 1/2', 'Write `½` for the amount, or a weight before the shade.'],
    ['bowl A 30 clay 60 dev-6', 'no-name: 60', 'Write `+` before it, or `vol` or `%` after it for a strength.'],
    ['paid 90 by card', 'two-readings: by card', 'Write `paid 90 card`.', 'card'],
    [
      'bowl A 40 clay 7/1 7/3',
      'not-read: 7/3',
      'Write `+` between the parts of a mix; quotation marks keep the words as a remark.',
    ],
    [
      'bowl A 40 clay bond oil',
      'not-read: oil',
      'Write `+` between the parts of a mix; quotation marks keep the words as a remark.',
    ],
    [
      'bowl A 40 clay (new tub) + 20vol 1:2',
      'not-read: (new tub)',
      'Write `+` between the parts of a mix; quotation marks keep the words as a remark.',
    ],
    ['bowl A 40 clay + 6-9% 1:2', 'not-read: 6-9%', 'Write each strength with its `%`, as in `6% 9%`.'],
    ['bowl A 40 clay + 20vol 1:0', 'not-read: 1:0', 'Write two parts, as in `1:1.5`.'],
    ['bowl A 40 clay + 20vol 1:2:3', 'not-read: 1:2:3', 'Write two parts, as in `1:1.5`.'],
    ['bowl A 40 clay = about 120', 'not-read: = about 120', 'Write the total in grams, as in `= 150`.'],
    ['stopped 15:15-15:20 A', 'not-read: 15:20', 'Write the one time.'],
    ['split jo, nia 50%', 'nothing-said: jo', 'Write `split jo 50%, nia 50%`.'],
    [
      'hold lightener 8w 20min',
      'not-read: 20min',
      'Write `to` before the date the hold ends, or how long it lasts, as in `4w`.',
    ],
    ['place A gap foil', 'nothing-said: gap', 'Write it as in `gap 10mm`.'],
    ['reaction none', 'two-readings: none', 'Write `note no reaction`.'],
    [
      'check 10min A orange',
      'bad-time: 10min',
      'Write the time first, as in `check 14:35 A` or `check +10` for minutes after the first `on`.',
    ],
    ['next 6/8w', 'two-readings: 6/8w', 'Write `6-8w` for a wait.'],
    ['bowl A 40 clay 20g more', 'no-name: 20g', 'Write `+` before it, or `vol` or `%` after it for a strength.'],
    ['check', 'nothing-said: check', 'Write it out, or take the line away.'],
    ['bowl A 40 clay =', 'not-read: =', 'Write the total in grams, as in `= 150`.'],
    ['bowl A', 'nothing-said: bowl A', 'Write what goes in it, as in `bowl A 40 clay + 20vol 1:2`.'],
    ['plus 3 bond', 'no-bowl: 3', 'Write a letter first, as in `plus A 3 bond`.'],
    ['plus A', 'nothing-said: plus A', 'Write what and how much, as in `plus A 3 bond`.'],
    ['weighed clay 41', 'no-bowl: clay', 'Write a letter first, as in `weighed A clay 41`.'],
    ['more 60', 'no-bowl: 60', 'Write a letter first, as in `more A 60`.'],
    ['on 14.5 A', 'bad-time: 14.5', 'Write `14:05` or `14:50`.'],
    ['on 25:10 A', 'bad-time: 25:10', 'Write an hour from 0 to 23.'],
    ['on 14:75 A', 'bad-time: 14:75', 'Write a minute from 00 to 59.'],
    ['on 1435 A', 'bad-time: 1435', 'Write `14:35`.'],
    ['on 14h35 A', 'bad-time: 14h35', 'Write `14:35`.'],
    ['on 9 A roots', 'bad-time: 9', 'Write `09:00`.'],
    ['off A roots', 'bad-time: A', 'Write the time first, as in `off 14:35 A`.'],
    ['on 14:35-14:55', 'no-bowl: on 14:35-14:55', 'Write the bowl after the time, as in `on 14:35 A roots`.'],
    ['on 14.60 A', 'bad-time: 14.60', 'Write a minute from 00 to 59.'],
    ['on 13pm A', 'bad-time: 13', 'Write `am` and `pm` after 1 to 12 only.'],
    ['off A "clean"', 'bad-time: A', 'Write the time first, as in `off 14:35 A`.'],
    ['off 15:30 A "clean, even', 'open-quote: "', 'Put `"` where it ends; the rest of the line is kept as its text.'],
    ['check 14.5 A', 'bad-time: 14.5', 'Write `14:05` or `14:50`.'],
    ['heat 40', 'two-readings: 40', 'Write `40min`, or the degrees in quotation marks.'],
    ['reaction 18 A', 'two-readings: 18', 'Write `reaction +18` for minutes after the first `on`, or the time of day.'],
    ['next A-20%', 'two-readings: A-20', 'Write `A -20%`, with a space before the minus.'],
    ['next 2026-13', 'bad-date: 2026-13', 'Write a month from 01 to 12.'],
    ['next 19/12/2026', 'bad-date: 19/12/2026', 'Write `2026-12-19` (19 Dec).'],
    ['next', 'nothing-said: next', 'Write it as in `next 6w roots`.'],
    ['left A 90 90', 'not-read: 90', 'Write bowl, grams and fate, as in `left A 14 binned`.'],
    ['left hairline', 'no-bowl: hairline', 'For hair left out write `leave hairline`.'],
    ['left A', 'nothing-said: A', 'Write `left A 14`.'],
    ['left 14', 'no-bowl: 14', 'Write `left A 14`.'],
    ['left A 14 binnned', 'not-read: binnned', 'Write bowl, grams and fate, as in `left A 14 binned`.'],
    ['leave A 14', 'not-read: A', 'For grams in the bowl write `left A 14`.'],
    ['leave', 'nothing-said: leave', 'Write the place, as in `leave crown "stands up"`.'],
    ['place A top 6x', 'not-read: 6x', 'Write `x6`.', 'x6'],
    ['place A top 28 foils', 'not-read: 28 foils', 'Write `x28`.', 'x28'],
    ['place A top weave x6 slice x2', 'not-read: slice', 'Write a `place` line for each technique.'],
    ['place top weave', 'no-bowl: place top weave', 'Write the bowl first, as in `place A top weave x6`.'],
    ['regrowth 2', 'nothing-said: 2', 'Write it with its unit, as in `regrowth 2cm`.'],
    ['regrowth', 'nothing-said: regrowth', 'Write it with its unit, as in `regrowth 2cm`.'],
    ['start grey 50', 'two-readings: 50', 'Write `50%` for a share of grey, or a depth.'],
    ['want 8/1 roots', 'two-readings: 8/1', 'Write depth and tone, as in `8 ash`, or `8-1` for the span.'],
    ['result 9.1', 'two-readings: 9.1', 'Write depth and tone, as in `9 ash`.'],
    ['start roots 13', 'two-readings: 13', 'Write `13%` for a share of grey, or a depth.'],
    ['charge foils', 'nothing-said: charge foils', 'Write the item and the amount, as in `charge foils 95.00`.'],
    ['charge cut 1.000', 'two-readings: 1.000', 'Write `1` or `1000`.'],
    ['charge -10', 'not-read: -10', 'Write the item and one amount, as in `charge foils 95.00`.'],
    ['charge foils 95 20%', 'not-read: 20%', 'Write the item and one amount, as in `charge foils 95.00`.'],
    ['redo', 'nothing-said: redo', 'Write its date, as in `redo 2026-08-30`.'],
    ['redo last visit', 'nothing-said: last', 'Write its date, as in `redo 2026-08-30`.'],
    ['redo 30/8/2026', 'bad-date: 30/8/2026', 'Write `2026-08-30` (30 Aug).'],
    ['about 31/2/2026 ends', 'bad-date: 31/2/2026', 'Write a date as in `2026-09-04`.'],
    [
      'because',
      'nothing-said: because',
      'Write the rule and the reason, as in `because ratio-off-mix "runny on purpose"`.',
    ],
    [
      'allow ratio-off-mix "runny"',
      'unknown-word: allow',
      'Write `because` in its place; the rest of the line stays as it is.',
      'because',
    ],
    ['because ratio-off-mix', 'nothing-said: because ratio-off-mix', 'Write it in quotation marks after the rule.'],
    ['hold', 'nothing-said: hold', 'Name a kind, a product, `oxidative` or `all`, as in `hold lightener to 2027-01`.'],
    [
      'hold lightener 2027-01',
      'not-read: 2027-01',
      'Write `to` before the date the hold ends, or how long it lasts, as in `4w`.',
    ],
    [
      'test patch 2026-09-01 cream',
      'not-read: patch',
      'Begin with `test skin`, `test strand`, `test metal`, `test stretch`, `test porosity`.',
      'skin',
    ],
    [
      'test',
      'nothing-said: test',
      'Begin with `test skin`, `test strand`, `test metal`, `test stretch`, `test porosity`.',
    ],
    [
      'test skin declined',
      'not-read: declined',
      'Write `test skin not-needed "why"` for a decision, or keep it as a remark.',
    ],
    [
      'test skin 2026-09-01 cream clear',
      'nothing-said: clear',
      'Write when it was read, as in `read 2026-11-20 10:00 clear`.',
    ],
    ['test skin 2026-09-31 cream', 'bad-date: 2026-09-31', 'Write a day from 01 to 30.'],
    ['test skin 1/9/2026 cream', 'bad-date: 1/9/2026', 'Write `2026-09-01` (1 Sep) or `2026-01-09` (9 Jan).'],
    ['care', 'nothing-said: care', 'Write the text after the word.'],
    ['note', 'nothing-said: note', 'Write the text after the word.'],
    ['photo', 'nothing-said: photo', 'Write the text after the word.'],
    ['zork 12', 'unknown-word: zork', 'Write `note` before it to keep it as text.'],
    ['40 clay', 'unknown-word: 40 clay', 'Write `note` before it to keep it as text.'],
    ['allergy "nickel"', 'wrong-entry: allergy', 'Move the line there, or write `note` before it.'],
    ['mix 1:2', 'wrong-entry: mix', 'Move the line there, or write `note` before it.'],
    ['visitt A', 'unknown-word: visitt', 'Write `visit`, or `note` before the line to keep it as text.', 'visit'],
  ],
  client: [
    ['allergy none', 'two-readings: none', 'Write `note no known allergy`.'],
    ['caution pregnant to 2027-01', 'caution-to: to 2027-01', 'Write `until 2027-01` if it ends then.'],
    ['caution pregnant until 2027-13', 'bad-date: 2027-13', 'Write a month from 01 to 12.'],
    ['born 2/4/1988', 'bad-date: 2/4/1988', 'Write `1988-04-02` (2 Apr) or `1988-02-04` (4 Feb).'],
    ['born 1988-4-2', 'bad-date: 1988-4-2', 'Write `1988-04-02`.', '1988-04-02'],
    ['born 1988-13-02', 'bad-date: 1988-13-02', 'Write `1988-02-13` if day and month are swapped.'],
    ['born 1988-02-30', 'bad-date: 1988-02-30', 'Write a day from 01 to 29.'],
    ['born April', 'nothing-said: April', 'Write it as in `born 1988-04-02`, or the year alone.'],
    ['history 5/2024 henna', 'bad-date: 5/2024', 'Write `2024-05` (May).'],
    ['history 04/05/2024 perm', 'bad-date: 04/05/2024', 'Write `2024-05-04` (4 May) or `2024-04-05` (5 Apr).'],
    ['allergy', 'nothing-said: allergy', 'Write it as in `allergy "nickel"`.'],
    ['avoid', 'nothing-said: avoid', 'Write it as in `avoid "brassiness"`.'],
    ['hold', 'nothing-said: hold', 'Name a kind, a product, `oxidative` or `all`, as in `hold lightener to 2027-01`.'],
    ['zone', 'nothing-said: zone', 'Write its name, then where it is, as in `zone band "left, 8 cm down"`.'],
    ['bowl A 40 clay', 'wrong-entry: bowl', 'Move the line there, or write `note` before it.'],
  ],
  range: [
    ['strength 3,6,9%', 'two-readings: 3,6,9', 'Write `3% 6% 9%`.'],
    ['strength 6,9%', 'two-readings: 6,9%', 'Write `6.9%`, or `6% 9%`.'],
    ['strength 3-12%', 'not-read: 3-12%', 'Write each strength with its `%`, as in `6% 9%`.'],
    ['strength six', 'not-read: six', 'Write strengths with `%` or `vol`, as in `strength 3% 6% 9%`.'],
    ['mix 1.5', 'nothing-said: 1.5', 'Write colour to developer, as in `mix 1:1.5`, or `mix none`.'],
    ['mix 0:1', 'not-read: 0:1', 'Write two parts, as in `1:1.5`.'],
    ['time 30-45', 'nothing-said: 30-45', 'Write them as in `time 30-45 min from all-on`.'],
    [
      'time 30 min from on',
      'not-read: on',
      'Write `from first-on`, `from all-on`, `check every 10 min`, or `if grey 50%`, `if on-scalp`, `if with PRODUCT`, `if pre-lightened`.',
    ],
    ['tones 1', 'nothing-said: 1', 'Write `tones 0 natural, 1 ash`.'],
    ['pack', 'nothing-said: pack', 'Write size and price, as in `pack 60 g 6.80`.'],
    ['density 0', 'nothing-said: density 0', 'Write grams a millilitre, as in `density 1.01`.'],
    ['keeps forever', 'nothing-said: forever', 'Write it as in `keeps 12mo`.'],
    ['reorder soon', 'nothing-said: soon', 'Write it as in `reorder at 3 packs`.'],
  ],
  product: [
    ['scalp no', 'nothing-said: no', 'Write `scalp to 6%` or `scalp never`.'],
    ['dose 3', 'nothing-said: dose 3', 'Write it as in `dose 1-2 per 10`.'],
    ['measure scoop', 'nothing-said: measure scoop', 'Write its name and weight, as in `measure scoop 10 g`.'],
  ],
  stock: [
    ['in clay', 'nothing-said: in clay', 'Write it with its unit, as in `in clay 2 packs`.'],
    ['in 2 packs', 'nothing-said: 2 packs', 'Write it as in `in clay 2 packs`.'],
    ['in clay 2 packs 24 30', 'not-read: 30', 'Write product, shade, amount, price.'],
    ['in clay 2 packs use-by 01/2028', 'bad-date: 01/2028', 'Write `2028-01` (Jan).'],
    ['in clay 2 packs use-by spring', 'bad-date: spring', 'Write year and month, as in `use-by 2028-01`.'],
    ['out dev-9 200 g spilt', 'not-read: spilt', 'Put it in quotation marks to keep it as a remark.'],
    ['count dev-6 1.000 g', 'two-readings: 1.000', 'Write `1` or `1000`.'],
  ],
  salon: [
    ['hours 9', 'nothing-said: hours 9', 'Write both ends, as in `hours 9:00-19:00`.'],
    ['hours', 'nothing-said: hours', 'Write both ends, as in `hours 9:00-19:00`.'],
    ['money £', 'nothing-said: money £', 'Write its three letters, as in `money GBP`.'],
    ['scale', 'nothing-said: scale', 'Write the smallest step, as in `scale 1 g`.'],
    ['growth 12', 'nothing-said: growth 12', 'Write length and time, as in `growth 0.35 mm/d`.'],
    ['policy', 'nothing-said: policy', 'Write it as in `policy skin-test 48h every 26w`.'],
  ],
};

describe.for(Object.keys(slips) as Under[])('under %s', (under) => {
  test.for(slips[under])('%s', ([line, spot, todo, put]) => {
    const [told, ...more] = toldOf(line, under);
    expect(`${told?.rule}: ${told?.typed}`).toBe(spot);
    expect(told?.todo).toBe(todo);
    expect(told?.put?.text).toBe(put);
    // One cause, one finding.
    expect(more).toEqual([]);
  });

  test.for(slips[under])('%s: told in the tone of the house', ([line]) => {
    for (const { message, todo = '', label = '' } of toldOf(line, under)) {
      const words = `${message} ${todo} ${label}`;
      expect(words).not.toMatch(/\b(invalid|illegal|unexpected|please|oops|safe|you|your)\b|\?/i);
      expect(message.length).toBeLessThanOrEqual(110);
      expect(message).toMatch(/\.$/);
    }
  });
});

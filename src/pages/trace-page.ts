import type { ClientFile, Journal } from '../journal/journal.ts';
import { pathAndLine, rowOf } from '../journal/where.ts';
import { figure, listed } from '../reckon/say.ts';
import type { Touch } from '../reckon/stock/touch.ts';
import type { ClientTouch, LotTrace, Traced } from '../reckon/stock/trace.ts';
import { roundTo } from '../text/exact.ts';
import { escapeText } from './escape.ts';
import { clientName, joined } from './noted.ts';
import { table } from './tables.ts';

const HOW: Record<Touch['how'], string> = {
  bowl: 'bowl',
  home: 'taken home',
  goods: 'goods used on her',
  step: 'at the basin',
  test: 'test',
};

const howText = ({ how, bowl }: Touch): string => (how === 'bowl' ? `bowl ${escapeText(bowl ?? '')}` : HOW[how]);

const amountText = (journal: Journal, { amount, item, salon }: Touch): string => {
  if (amount === undefined) return 'not said';
  if (item?.packs.some((pack) => pack.amount.unit === 'each')) return figure(amount);
  return `${figure(roundTo(amount, (journal.salons.get(salon ?? '') ?? journal.salon).scale))} g`;
};

const labelText = (touch: Touch): string => (touch.label === '' ? 'not named' : escapeText(touch.label));

const placeText = (journal: Journal, { place }: Touch): string => escapeText(pathAndLine(journal, place));

/** A wording that is worked out once for each key: a lot of a developer can have touched everybody. */
const once = <K>(say: (key: K) => string): ((key: K) => string) => {
  const known = new Map<K, string>();
  return (key) => {
    let said = known.get(key);
    if (said === undefined) {
      said = say(key);
      known.set(key, said);
    }
    return said;
  };
};

const tracedTable = (journal: Journal, traced: readonly Traced[]): string => {
  const client = once((name: string) => clientName(journal, { name }));
  const label = once((text: string) => (text === '' ? 'not named' : escapeText(text)));
  const file = once(escapeText);
  const bowl = once((name: string) => `bowl ${escapeText(name)}`);
  const amounts = new Map<Touch['amount'], Touch & { readonly said: string }>();
  const amount = (touch: Touch): string => {
    const known = amounts.get(touch.amount);
    if (known !== undefined && known.item === touch.item && known.salon === touch.salon) return known.said;
    const said = amountText(journal, touch);
    amounts.set(touch.amount, { ...touch, said });
    return said;
  };
  return table(
    [
      { head: 'Date' },
      { head: 'Client' },
      { head: 'What' },
      { head: 'How much', figures: true },
      { head: 'How' },
      { head: 'Line' },
    ],
    traced.map(({ touch }) => [
      touch.date,
      client(touch.client),
      label(touch.label),
      amount(touch),
      touch.how === 'bowl' ? bowl(touch.bowl ?? '') : HOW[touch.how],
      `${file(touch.place.in.file)}:${rowOf(journal, touch.place) + 1}`,
    ]),
  );
};

const people = (traced: readonly Traced[]): number => new Set(traced.map(({ touch }) => touch.client)).size;

const counted = (traced: readonly Traced[]): string => {
  const clients = people(traced);
  return `${clients} ${clients === 1 ? 'client' : 'clients'}, ${traced.length} ${traced.length === 1 ? 'time' : 'times'}`;
};

/** The salon of a ware, where there are several. */
const salonText = ({ salons }: Journal, salon: string | undefined): string | undefined => {
  if (salons.size < 2) return undefined;
  const full = salons.get(salon ?? '')?.full ?? salon;
  return full === undefined ? 'salon not noted, so any' : `at ${escapeText(full)}`;
};

const wareLine = (journal: Journal, { item, shade, salon, deliveries, gone }: LotTrace['wares'][number]): string =>
  joined(
    [
      `- **${escapeText(joined([item.name, shade], ' '))}**`,
      salonText(journal, salon),
      deliveries.length === 0
        ? 'no delivery noted, so every day is possible'
        : `came in on ${listed(deliveries.map(({ date }) => date))}`,
      gone !== undefined && `counted as none on ${gone}`,
    ],
    ' · ',
  );

/** Every client and date that a lot touched or can have touched, as Markdown. */
export const lotMarkdown = (journal: Journal, { lot, wares, traced, near }: LotTrace): string => {
  const recorded = traced.filter(({ certainty }) => certainty === 'recorded');
  const possible = traced.filter(({ certainty }) => certainty === 'possible');
  const title = `# Lot ${escapeText(lot)}`;
  if (wares.length === 0) {
    const offered = near.length === 0 ? '' : ` Lots of nearly that name: ${listed(near.map(escapeText))}.`;
    return `${title}\n\nNo delivery and no bowl in the notes names this lot.${offered}\n`;
  }
  const blocks = [
    title,
    wares.map((ware) => wareLine(journal, ware)).join('\n'),
    `- **Recorded** ${counted(recorded)}: the note names the lot, or the bowl that it is made again from does\n- **Possible** ${counted(possible)}: the note itself names none, or by a slip nearly this one, which had come in by that day and was not yet counted as gone`,
    ...(recorded.length === 0 ? [] : ['## Recorded', tracedTable(journal, recorded)]),
    ...(possible.length === 0 ? [] : ['## Possible', tracedTable(journal, possible)]),
    'What the maker or an authority says of a recall comes first. The notes show what was typed, and no more.',
  ];
  return `${blocks.join('\n\n')}\n`;
};

const lotText = ({ recorded, possible }: ClientTouch): string =>
  joined(
    [
      recorded !== undefined && `recorded ${escapeText(recorded)}`,
      possible.length > 0 && `possible ${listed(possible.map(escapeText), 'or')}`,
    ],
    ', ',
  );

/** Everything that touched a client, with the lots it came or can have come from, as Markdown. */
export const clientTraceMarkdown = (journal: Journal, client: ClientFile, touches: readonly ClientTouch[]): string => {
  const rows = touches.map((one) => [
    one.touch.date,
    labelText(one.touch),
    amountText(journal, one.touch),
    howText(one.touch),
    lotText(one) || 'no lot noted',
    placeText(journal, one.touch),
  ]);
  const blocks = [
    `# Lots, ${escapeText(client.full)}`,
    'Recorded where the note names the lot, or the bowl that it is made again from does; possible where that lot had come in by the day and was not yet counted as gone.',
    rows.length === 0
      ? 'The notes show nothing that touched this client.'
      : table(
          [
            { head: 'Date' },
            { head: 'What' },
            { head: 'How much', figures: true },
            { head: 'How' },
            { head: 'Lot' },
            { head: 'Line' },
          ],
          rows,
        ),
  ];
  return `${blocks.join('\n\n')}\n`;
};

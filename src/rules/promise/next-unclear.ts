import type { ShelfItem } from '../../journal/shelf.ts';
import { nextLines } from '../../reckon/ahead/due-window.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { isKind } from '../../trade/kinds.ts';
import { STAGES } from '../../trade/stages.ts';
import { TONE_WORDS } from '../../trade/tone.ts';
import { isTechnique, isZone } from '../../trade/zones.ts';
import { defineRule, foundEach, NONE } from '../rule.ts';

/** Words of what to do next that are neither a place, a product nor a tone. Common practice, no source. */
const ASKS: ReadonlySet<string> = new Set([
  ...['same', 'again', 'lighter', 'darker', 'warmer', 'cooler', 'softer', 'brighter', 'richer', 'less', 'more'],
  ...['colour', 'color', 'cut', 'trim', 'foil', 'highlight', 'lowlight', 'balayage', 'gloss', 'toner', 'tint', 'test'],
  ...['correction', 'removal', 'fitting', 'consultation', 'treatment', 'nothing', 'call', 'wash', 'band', 'melt'],
  ...['heller', 'dunkler', 'kühler', 'wärmer', 'weicher', 'ansatz', 'strähnen', 'tönung', 'farbe', 'schnitt', 'wieder'],
  ...['plus', 'moins', 'clair', 'foncé', 'racines', 'mèches', 'couleur', 'coupe', 'même', 'patine', 'balayage'],
  ...['mais', 'menos', 'claro', 'escuro', 'raiz', 'raízes', 'madeixas', 'cor', 'corte', 'igual', 'tonalizante'],
  ...['más', 'menos', 'oscuro', 'raíz', 'raíces', 'mechas', 'color', 'corte', 'matiz'],
]);

const TONES: ReadonlySet<string> = new Set(TONE_WORDS);

const stemOf = (word: string): string => word.replace(/s$/, '');

/** Whether a word names something of the trade, of the shelf, or a service that she was charged for. */
const isKnown = (word: string, shelf: ReadonlyMap<string, ShelfItem>, charged: ReadonlySet<string>): boolean =>
  [word, stemOf(word), ...word.split('-')].some(
    (one) =>
      ASKS.has(one) ||
      isZone(one) ||
      isTechnique(one) ||
      isKind(one) ||
      shelf.has(one) ||
      charged.has(one) ||
      (STAGES as readonly string[]).includes(one) ||
      TONES.has(one),
  );

const chargedIn = (client: VisitReckoned['client']): ReadonlySet<string> =>
  new Set(
    client.visits.flatMap(({ entry }) =>
      entry.facts.flatMap((fact) =>
        fact.word === 'charge'
          ? fact.item
              .toLowerCase()
              .split(/[^\p{L}\p{N}]+/u)
              .flatMap((one) => [one, stemOf(one)])
          : [],
      ),
    ),
  );

export default defineRule({
  name: 'next-unclear',
  family: 'promise',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['next'] },
  what: 'A `next` line gives no time, no bowl and nothing that it names is known, so that nothing comes of it.',
  why: 'Whoever wrote it believes that the client is called back, or that something is changed.',
  source: { kind: 'notation' },
  check({ visit, client }, { journal: { shelf } }) {
    const lines = nextLines(visit);
    if (lines.length === 0) return NONE;
    return foundEach(lines, (line) => {
      const { wait, date, month, changes, says, rest } = line;
      const [first] = changes;
      // What could not be read is found by its typing.
      if (wait ?? date ?? month ?? says ?? rest) return undefined;
      if (first === undefined || changes.some(({ bowl, percent }) => bowl !== undefined || percent !== undefined))
        return undefined;
      const charged = chargedIn(client);
      const words = changes.flatMap((change) => change.words);
      if (words.length === 0 || words.some(({ word }) => isKnown(word, shelf, charged))) return undefined;
      return {
        place: placeOf(visit, line, words[0]?.at),
        message: `\`next ${changes.map(({ text }) => text).join(', ')}\` gives no time, and names nothing that is known here.`,
        todo: 'Write when, as in `next 6w roots`, or put the words in quotation marks.',
      };
    });
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      next zzz qqq
           ^^^`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      next 6w roots`,
});

import { hasPeroxide, portionsIn } from '../../reckon/bowl/contents.ts';
import { wordsPlace } from '../../reckon/cite.ts';
import { figure, listed } from '../../reckon/say.ts';
import { sign } from '../../text/exact.ts';
import type { ReasonWords } from '../reason-words.ts';
import { defineRule, foundEach } from '../rule.ts';

/** That the rest is used up while the client sits there, or was binned after all: it is not stored. */
const SAME_SITTING: ReasonWords = {
  en: [
    'same sitting',
    'same visit',
    'same appointment',
    'same session',
    'then binned',
    'binned after',
    'used up today',
  ],
  de: ['gleiche sitzung', 'selbe sitzung', 'gleicher termin', 'selber termin', 'danach entsorgt', 'dann entsorgt'],
  fr: ['même séance', 'même rendez vous', 'puis jeté', 'jeté ensuite', 'jeté après'],
  pt: ['mesma sessão', 'mesma visita', 'depois deitado fora', 'depois descartado'],
  es: ['misma sesión', 'misma visita', 'misma cita', 'luego tirado', 'después tirado'],
};

export default defineRule({
  name: 'mixed-kept',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  what: 'What is left of a bowl that was mixed with developer is kept.',
  why: 'Mixed colour and lightener give off oxygen: closed in they can burst, and they do not work as mixed any more.',
  source: { kind: 'common practice' },
  accepts: SAME_SITTING,
  caution: 'peroxide',
  check: ({ bowls }, { journal }) =>
    foundEach(bowls, (bowl) => {
      const { left } = bowl;
      if (left?.fate !== 'kept' || sign(left.weight) <= 0 || !hasPeroxide(bowl)) return undefined;
      const developers = new Set(portionsIn(bowl).flatMap(({ role, label }) => (role === 'developer' ? [label] : [])));
      return {
        place: wordsPlace(journal, left.place, /\bkept\b/iu),
        message: `${figure(left.weight)} g of bowl ${bowl.name}, mixed with ${listed([...developers])}, is kept.`,
        expected:
          'What is mixed with peroxide is used at once and binned open (common practice; its leaflet comes first).',
        todo: 'Write `binned` if that is what was done; what was really kept is opened, binned, and `note`d here.',
        label: 'gives off gas',
      };
    }),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      left A 55 kept
                ^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      left A 55 binned`,
});

import type { BowlReckoned, Portion } from '../reckon/model.ts';
import { figureJson } from './plain-json.ts';

const portionJson = ({ label, role, weight, weighed, shown, strength, typed, about, how, cost }: Portion): object => ({
  label,
  role,
  grams: figureJson(weight),
  weighed: figureJson(weighed),
  shown: figureJson(shown),
  strength: figureJson(strength),
  typed,
  about,
  how,
  costMinor: figureJson(cost),
});

/**
 * A bowl as plain JSON. Weights are grams (`shown`: rounded to the scales), strengths per cent, `ratio` developer to
 * one of base, `ready` per cent of peroxide ready for use, both as weighed where the scales said so (`meant`: as the note
 * means them, where that is another figure), cost in the currency's minor units. What is not known is
 * left out.
 */
export const bowlJson = (bowl: BowlReckoned): object => ({
  name: bowl.name,
  portions: bowl.portions.map(portionJson),
  total: figureJson(bowl.total),
  shownTotal: figureJson(bowl.shownTotal),
  ratio: figureJson(bowl.ratio),
  ready: figureJson(bowl.ready),
  meant: bowl.meant && { ratio: figureJson(bowl.meant.ratio), ready: figureJson(bowl.meant.ready) },
  about: bowl.about,
  mixed: figureJson(bowl.mixed),
  left: bowl.left && { grams: figureJson(bowl.left.weight), fate: bowl.left.fate },
  used: figureJson(bowl.used),
  costMinor: figureJson(bowl.cost),
  again: bowl.again && {
    date: bowl.again.visit.entry.date?.date,
    bowl: bowl.again.bowl,
    share: figureJson(bowl.again.share),
  },
  problems: bowl.problems.map(({ kind, message }) => ({ kind, message })),
});

import { said } from './said.ts';

const GRAVE =
  /(?<!\p{L})(?:blister|swell|swollen|swelled|weep|hives|welts?\b|wheal|burns?\b|burnt|burned|scab|raw\b|bleed|bled\b|wheez|breath|throat|faint|doctor|hospital|clinic\b|ambulance|a&e|rash|nettle|eyes? shut|blase|geschwollen|schwell|quaddel|nässend|verbrann|atemnot|arzt|ärzt|krankenhaus|ausschlag|ampoule|cloque|gonfl|enfl|brûlure|urticaire|médecin|hôpital|bolha|inchad|inchaç|queimadura|urticária|médico|ampolla|hinchad|hinchaz|quemadura|urticaria)/giu;

const MILD =
  /(?<!\p{L})(?:tingl|scratch|nick(?:s|ed)?\b|kratz|égratignure|arranh|rasguñ|arañ|slight|mild|faintly|a little|a bit|bit (?:warm|itchy)|warm(?:th|ed)?\b|tickl|prickl|as (?:always|usual)|kribbel|leicht|prickel|wie immer|picot|léger|légère|un peu|comme toujours|formig|leve\b|um pouco|como sempre|hormigue|ligero|un poco|como siempre)/iu;

/** How a reaction is told: grave by blisters, swelling, breath, a doctor; mild by a tingle, or a cause of its own such as a scratch. A reading of ours. */
export function reactionTold(text: string): 'grave' | 'mild' | undefined {
  if (said(text, GRAVE) !== undefined) return 'grave';
  return MILD.test(text) ? 'mild' : undefined;
}

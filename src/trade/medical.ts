import { isLongPast } from './denial.ts';
import { said } from './said.ts';

/** Treatments that change hair and skin. Common practice, no source: the trade asks for a doctor's leave first. */
const TREATMENT =
  /(?<!\p{L})(?:chemo(?:therap\p{L}*)?|radio-?therap\p{L}*|radiation (?:therapy|treatment)|radiation|immunotherap\p{L}*|chemotherap\p{L}*|strahlentherap\p{L}*|bestrahlung\p{L}*|bestrahlt|chimio(?:thérapie)?|radiothérapie|rayons|quimio(?:terapia)?|radioterapia)(?!\p{L})/giu;

const OPERATION =
  /(?<!\p{L})(?:operation|surgery|operated (?:on)?|post-?op|an(?:a)?esthetic|op\b|operiert|vollnarkose|narkose|opérée?|anesthésie|opération|chirurgie|cirurgia|operad[ao]|anestesia|cirugía|operación)(?!\p{L})/giu;

const RECENT =
  /(?<!\p{L})(?:recent(?:ly)?|last (?:week|month|fortnight)|(?:weeks?|days?|fortnight) ago|a month ago|just (?:had|out|back)|this (?:week|month)|since (?:her|his|the|an)|after (?:her|his|the|an)|post-?op|still healing|neulich|kürzlich|frisch|letzte[nr]? (?:woche|monat)|vor \p{L}+ (?:wochen|tagen)|nach (?:der|ihrer|seiner)|récemment|récente?|la semaine dernière|il y a \p{L}+ (?:semaines?|jours)|recém|recente(?:mente)?|há \p{L}+ (?:semanas?|dias)|semana passada|mês passado|recién|reciente(?:mente)?|hace \p{L}+ (?:semanas?|días)|semana pasada|mes pasado)(?!\p{L})/iu;

const NUMBERED =
  /(?<!\p{L})(?:\d+ (?:days?|weeks?|months?) (?:ago|since)|vor \d+ (?:tagen|wochen)|il y a \d+ (?:jours|semaines)|há \d+ (?:dias|semanas)|hace \d+ (?:días|semanas))/iu;

/** Somebody else's: `her mother had chemotherapy`. */
const ANOTHER =
  /(?<!\p{L})(?:mother|mum|mom|father|dad|sister|brother|husband|wife|partner|friend|son|daughter|aunt|uncle|neighbour|dog|cat|mutter|vater|schwester|bruder|mann|freundin|mère|père|mari|sœur|soeur|frère|amie?|mãe|pai|marido|irmã|irmão|amiga|madre|padre|hermana|hermano)(?:['’]s)?(?!\p{L})/iu;

/** Leave that a doctor is said to have given: `oncologist agrees`, `GP is happy`. */
const LEAVE =
  /(?<!\p{L})(?:doctor|dr\.?|gp|consultant|oncolog\p{L}*|surgeon|hospital|nurse|arzt|ärztin|onkolog\p{L}*|médecin|oncologue|chirurgien\p{L}*|médic[ao]|oncólog[ao]|cirurgiã?o?|cirujan[ao])(?!\p{L})[^.;]{0,30}(?<!\p{L})(?:ok|okay|fine|agree[sd]?|happy|clear(?:ed|s)?|allow(?:s|ed)|leave|approved?|permission|said yes|says yes|einverstanden|erlaubt|d['’]accord|autoris\p{L}*|liberou|autoriz\p{L}*|permit\p{L}*|de acuerdo)(?!\p{L})/giu;

/** The treatment that a text tells of; undefined without one, of another person, long past, or with a doctor's leave. */
export function treatmentTold(text: string): string | undefined {
  if (isLongPast(text) || ANOTHER.test(text) || said(text, LEAVE) !== undefined) return undefined;
  const treatment = said(text, TREATMENT);
  if (treatment !== undefined) return treatment;
  return RECENT.test(text) || NUMBERED.test(text) ? said(text, OPERATION) : undefined;
}

/** Days after which a dated treatment says nothing any more. A choice. */
export const TREATMENT_HOLDS = 365;

const MEDICINE =
  /(?<!\p{L})(?:medicines?|medications?|meds|tablets?|pills?|antibiotics?|blood[\s-]thinners?|anticoagulants?|antihistamines?|steroids?|cortisone?|prednisolone|hrt|hormones?|thyroxine|isotretinoin|methotrexate|immunosuppress\p{L}*|injections?|prescription|medikamente?|tabletten?|antibiotik\p{L}*|blutverdünner|antihistaminik\p{L}*|kortison|médicaments?|comprimés?|antibiotiques?|antihistaminiques?|corticoïdes?|medicamentos?|remédios?|comprimidos?|antibióticos?|anticoagulantes?|antihistamínicos?|anti-?histamínicos?|corticoides?|medicación|medicação|pastillas?)(?!\p{L})/giu;

const BEGUN =
  /(?<!\p{L})(?:new|start(?:s|ed|ing)|began|begun|now on|put on|just (?:on|prescribed)|prescribed|since (?:last|the|her|his|a|two|three|\d)|changed|switched|(?:first|second) course|course of|neue?[nrs]?|begonnen|angefangen|seit|nimmt jetzt|verschrieben|nouveau|nouvelle|nouveaux|commencé\p{L}*|depuis|prescrit\p{L}*|novo|nova|novos|começou|iniciou|desde|receitad\p{L}*|nuevo|nueva|nuevos|empez\p{L}*|comenz\p{L}*|recetad\p{L}*)(?!\p{L})/giu;

/** What was asked about, and answered with more than no. */
const ASKED =
  /^(?:new )?(?:medicines?|medications?|meds|medikamente?|médicaments?|medicamentos?|medicación|medicação|remédios?)(?::|$)/iu;

const UNCHANGED =
  /(?<!\p{L})(?:same|as before|as ever|unchanged|no change|still the|for years|stopped|finished|wie immer|unverändert|comme avant|inchangé\p{L}*|os mesmos|igual|los mismos|sin cambios)(?!\p{L})/iu;

/** What is taken beside food and hides or brings on nothing that a test would show. Common practice, no source. */
const SUPPLEMENT =
  /(?<!\p{L})(?:folic acid|folate|vitamins?|iron|magnesium|zinc|calcium|omega|fish oil|collagen|biotin|probiotics?|folsäure|vitamine?|eisen|acide folique|fer|ácido fólico|vitaminas?|ferro|hierro)(?!\p{L})/iu;

/** The medicine that a text says was begun; undefined without one, of another person, and where it is as before. */
export function medicineBegun(text: string): string | undefined {
  if (UNCHANGED.test(text) || ANOTHER.test(text) || SUPPLEMENT.test(text)) return undefined;
  if (ASKED.test(text)) return said(text, MEDICINE);
  const medicine = said(text, MEDICINE);
  return medicine === undefined || said(text, BEGUN) === undefined ? undefined : medicine;
}

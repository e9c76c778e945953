import { wholeWord } from '../denial.ts';

/**
 * What the words of harm stand beside, in the five languages that free text is read in: parts of the head, hair, the work
 * itself, and what else can hurt. Common practice, no source.
 */

const any = (...words: readonly string[]): string => words.join('|');

const pattern = (words: string): RegExp => new RegExp(wholeWord(words), 'iu');

const HEAD_WORDS = any(
  'scalp\\p{L}*|heads?|face|facial|cheeks?|forehead|necks?|neckline|nape|ears?|earlobes?|eyes?|eyelids?|lids?|eyebrows?|brows?|hairline|temples?|crown|parting|lips?|jaw|chin|chest|bald spot',
  'kopfhaut|kopf|gesicht\\p{L}*|stirn|nacken|hals|ohr|ohren|ohrläppchen|augen?|augenlid\\p{L}*|lid|lider|lidern|schläfen?|haaransatz|scheitel|lippen?|wangen?|haut|hinterkopf|oberkopf|kopfseite|dekolleté',
  'cuir chevelu|crâne|tête|visage|front|cou|nuque|oreilles?|yeux|œil|paupières?|tempes?|lèvres?|joues?|raie',
  'couro cabeludo|couro|cabeça|rosto|cara|testa|pescoço|nuca|orelhas?|olhos?|olho|pálpebras?|têmporas?|lábios?|bochechas?|risca',
  'cuero cabelludo|cuero|cabeza|cara|frente|cuello|orejas?|ojos?|párpados?|sien|sienes|labios?|mejillas?|coronilla|raya',
);

const SKIN_WORDS = 'skin|haut|peau|pele|piel';

/** A part of the head that colour work comes to. */
export const HEAD = pattern(HEAD_WORDS);
/** The same, or skin without saying where. */
export const HEAD_OR_SKIN = pattern(`${HEAD_WORDS}|${SKIN_WORDS}`);

/** Skin that shows, apart from the places that hair is spoken of by: red there is no colour of hair. */
export const BARE_SKIN = pattern(
  any(
    'scalp\\p{L}*|skin|face|cheeks?|forehead|neck|ears?|earlobes?|eyes?|eyelids?|lids?|lips?|chest|chin|jaw',
    'kopfhaut|haut|gesicht\\p{L}*|stirn|hals|ohr|ohren|augen?|augenlid\\p{L}*|lider|lippen?|wangen?',
    'cuir chevelu|crâne|peau|visage|cou|oreilles?|yeux|œil|paupières?|lèvres?|joues?',
    'couro cabeludo|couro|pele|rosto|testa|pescoço|orelhas?|olhos?|pálpebras?|lábios?|bochechas?',
    'cuero cabelludo|cuero|piel|cara|cuello|orejas?|ojos?|párpados?|labios?|mejillas?',
  ),
);

const HAIR_WORDS = any(
  'hairs?|ends|strands?|lengths?|fibres?|fibers?|mids?|mid-lengths|fringe|tips|curls?|locks|layers|foils?|sections?|pieces|regrowth|roots?|blonde|bleach(?:ed)?|ponytail',
  'haar\\p{L}*|\\p{L}*haare?|spitzen|längen|strähnen?|\\p{L}*strähnen?|ansatz|pony|locken',
  'cheveux?|pointes?|mèches?|longueurs?|fibres?|frange|racines?',
  'cabelos?|fios?|pontas?|mechas?|comprimentos?|franja|raiz|raízes',
  'pelos?|cabellos?|puntas?|mechón|mechones|medios|largos|flequillo|hebras?|fibras?|raíz|raíces',
);

/** Hair, and what is done to it. */
export const HAIR = pattern(HAIR_WORDS);

/** What tells that hair is spoken of, though it is not named. */
export const HAIR_TOLD = pattern(
  any(
    'crown|nape|front|hairline|money piece|density|beard|inch(?:es)?|cm|perm(?:ed)?|highlights|balayage|remover|bonds?|lifted|lightening|lightened|bleach\\p{L}*|toner|test strand|strand test|band|brush(?:es|ed|ing)?|comb(?:s|ed|ing)?|wet|dry|cut(?:ting)?|chop(?:ped)?|root|foil|tint|dye|texture|remover|vol|washes|wash|plughole|sink|shower|drain|condition',
    'ansatz|folie|blondier\\p{L}*|probesträhne|cm|kämmen|bürsten|nass|ab|farbabzug|verfilzt|überall|färben',
    'décoloration|papillote|brosse|peigne|mouillée?s?|couper|coupé|cm|salon|partout|sains?',
    'descoloração|papelote|escova|pente|molhad[oa]s?|cortar|cortei|cm',
    'decoloración|papel|cepillo|peine|mojad[oa]s?|cortar|corté|cm',
  ),
);

/** The work, its products, and the days after it. */
export const WORK = pattern(
  any(
    'dyes?|tint(?:ed|s)?|colou?r(?:ed|s)?|bleach(?:ed|ing)?|lighten(?:er|ed|ing)|toner|gloss|developer|peroxide|foils?|rins(?:e|ed|ing)|basin|patch(?: ?test)?|test (?:area|spot|patch)|(?:elbow|ear|arm) test|our test|the mix|application|developing|processing|development|perm(?:s|ed|anent)?|demi|highlights|balayage|relaxer|soln|solution|ammonia|fumes|henna|remover|vol|salon|appointment|processed|lift(?:ed|ing)?|washed off|rinsed',
    'farbe|färben|gefärbt|färbung|tönung|blondierung|blondiert|blondieren|entwickler|folien?|ausgespült|ausspülen|einwirkzeit|waschbecken',
    'couleur|coloration|teinture|décoloration|décolorant|oxydant|rinçage|rincé|bac|papillotes?',
    'tinta|tintura|coloração|descoloração|descolorante|pó|oxidante|enxágue|enxaguar|lavatório|papelotes?',
    'tinte|coloración|decoloración|decolorante|oxidante|enjuagu\\p{L}*|lavacabezas|papel(?:es)? de aluminio',
  ),
);

/** Parts of the body that colour work does not come to; the back of the head is none of them. */
export const ELSEWHERE = pattern(
  any(
    'wrists?|hands?|fingers?|fingertips?|thumbs?|knuckles?|knees?|foot|feet|heels?|toes?|ankles?|legs?|calf|calves|(?:lower )?back(?! (?:of|from|to|in|at|on|again|today|the|her|with|home|left|right|and|came|came))|shoulders?|arms?|forearms?|elbows?|tooth|teeth|gums?|tummy|stomach|belly|ribs?|hips?|nails?|muscles?|tongue|bump|thighs?|shins?|palms?|bum|tonsils|sinus(?:es)?|joints?|limbs?',
    'handgelenke?|hand|hände|händen|finger|daumen|knie|fuß|fuss|füße|füßen|ferse|zehen?|knöchel|beine?|rücken|rachen|schultern?|arme?|unterarme?|ellbogen|zahn|zähne|zahnfleisch|bauch|rippen?|hüfte|nagel|nägel|zunge',
    'poignets?|mains?|doigts?|pouces?|genoux?|pieds?|talons?|orteils?|chevilles?|jambes?|dos|gorge|épaules?|bras|coudes?|dents?|ventre|côtes?|hanche|ongles?|langue',
    'pulsos?|mãos?|dedos?|polegar|joelhos?|pés?|calcanhar|tornozelos?|pernas?|costas|garganta|ombros?|braços?|cotovelos?|dentes?|barriga|unhas?|língua',
    'muñecas?|manos?|dedos?|pulgar|rodillas?|pies?|talón|talones|tobillos?|piernas?|espalda|garganta|hombros?|brazos?|codos?|dientes?|muelas?|barriga|uñas?|lengua',
  ),
);

const CAUSES = any(
  'wool|jumper|sweater|scarf|collar|label|sun|sunshine|heatwave|holiday|beach|strap|watch|nickel|necklace|chain|earrings?|bracelet|nettles?|wasps?|bees?|hornet|mosquito(?:es)?|midges?|horsefl(?:y|ies)|jellyfish|insects?|bites?|kettle|oven|stove|hob|pan|grill|barbecue|bbq|coffee|tea|soup|candle|toast|shoes?|boots?|sandals?|trainers|plasters?|seat ?belt|cats?|dogs?|horse|pollen|hay ?fever|onions?|chill?i(?:es)?|peanuts?|strawberr(?:y|ies)|shellfish|prawns?|penicillin|antibiotics?|sun ?cream|sunscreen|mascara|eyeliner|contact lens(?:es)?|lenses|laundry|washing powder|detergent|wool|gardening|gym|running|marathon|football|skiing|tennis|cycling|bike|yoga|shav(?:e|ing)|razor|wax|waxing|tattoo|piercing|dentist|pregnancy|flu|chickenpox|measles|shingles|acne|frost|chlorine|ladder|accident|operation|surgery|cake|jam|iron(?!s? (?:salts|in))|radiator|glue|deodorant|headband|hairband|perfume|washing[- ]up|oyster|curry|baby|toddler|sunbed',
  'sonne|urlaub|strand|armband|uhr|nickel|kette|ohrringe?|brennnesseln?|wespen?|bienen?|mücken?|insekten?|wasserkocher|ofen|herd|pfanne|kaffee|tee|suppe|kerze|schuhen?|stiefeln?|pflaster|katzen?|hund\\p{L}*|pollen|heuschnupfen|zwiebeln?|nüssen?|erdbeeren?|penicillin|sonnencreme|kontaktlinsen|waschmittel|garten\\p{L}*|sport|laufen|rasieren|rasur|tattoo|zahnarzt|schwangerschaft|grippe|rauch|wind|kälte|chlor|mütze|sturz|unfall|backen|bügeleisen|wolle|film',
  "soleil|plage|vacances|bracelet|montre|nickel|collier|boucles? d'oreilles?|orties?|guêpes?|abeilles?|moustiques?|insectes?|bouilloire|four|poêle|café|thé|soupe|bougie|chaussures?|sandales?|pansement|chats?|chiens?|pollen|rhume des foins|oignons?|piments?|noix|fraises?|pénicilline|crème solaire|lentilles|lessive|jardin\\p{L}*|sport|course|rasoir|rasage|tatouage|dentiste|grossesse|grippe|fumée|vent|froid|piscine|chute|accident|fer à repasser|film",
  'sol|praia|férias|pulseira|relógio|níquel|colar|brincos?|urtigas?|vespas?|abelhas?|mosquitos?|insetos?|chaleira|forno|fogão|panela|café|chá|sopa|vela|sapatos?|sandálias?|penso|gatos?|cães|cão|cachorros?|pólen|cebolas?|amendoim|morangos?|camarão|penicilina|protetor solar|lentes|detergente|jardim|academia|corrida|gilete|barbear|depilação|tatuagem|dentista|gravidez|gripe|fumaça|fumo|vento|frio|piscina|queda|acidente|ferro de passar|filme',
  'sol|playa|vacaciones|pulsera|reloj|níquel|pendientes?|ortigas?|avispas?|abejas?|mosquitos?|insectos?|hervidor|horno|sartén|café|té|sopa|vela|zapatos?|sandalias?|tirita|gatos?|perros?|polen|cebollas?|nueces|fresas?|marisco|penicilina|protector solar|lentillas|detergente|jardín|gimnasio|correr|cuchilla|afeitado|depilación|tatuaje|dentista|embarazo|gripe|humo|viento|frío|piscina|caída|accidente|plancha de ropa|película',
);

const FROM = any(
  'from|by|off|on|due to|because of|thanks to|after|with|to|of|against|under|in|at|over',
  'von|vom|durch|wegen|nach|an|am|auf|gegen|beim|im|mit',
  "de|du|des|d'|à|au|aux|par|après|avec|sur|contre|à cause (?:de|du|des)",
  'do|da|dos|das|de|pelo|pela|por|com|na|no|depois|após|ao',
  'del|de|por|con|tras|en|al',
);

/** What makes eyes run and faces burn wherever in the sentence it is named. */
export const ANYWHERE = pattern(
  'hay ?fever|pollen|onions?|laughing|laughed|flight|wedding|sunburn\\p{L}*|teething|heuschnupfen|rhume des foins|alergia ao pólen',
);

const ARTICLE =
  "(?:an?|the|her|his|their|some|too much|that|this|my|hot|new|all that|der|die|das|den|dem|einer?|einem|einen|ihrer?|ihrem|ihre|le|la|les|l'|une?|sa|son|ses|o|os|as|uma?|el|los|las|una|su|sus)";

/** Something else that hurts, named as the cause: `from a watch strap`, `by a wasp`, `on the kettle`. */
export const OTHER_CAUSE = pattern(`(?:${FROM})\\s?(?:${ARTICLE}\\s?){0,2}(?:[\\p{L}-]+\\s){0,2}(?:${CAUSES})`);

/** The same straight before the word of harm: `wasp sting`, `nettle rash`, `razor burn`. */
export const CAUSE_BEFORE = new RegExp(
  `(?<!\\p{L})(?:${CAUSES}|nappy|heat|diaper|prickly|friction|carpet|rope|wind|mouth|saddle|bed|canker|diabetic)[\\s-]$`,
  'iu',
);

/** Of somebody or something else: `her son broke`, `the dog was swollen`. One who rings for her is none. */
export const OTHER_ONE =
  /(?<!\p{L})(?:^\s*(?:baby|husband|mum|son|daughter|dog|cat|kids?|toddler|sister|partner|boyfriend)|(?:her|his|my|the|their|a|our)\s(?:little\s|elder\s|younger\s|best\s|own\s)?(?:sons?|daughters?|husband|wife|partner|boyfriend|girlfriend|mum|mom|mother|dad|father|sisters?|brothers?|gran|granny|grandmother|aunt|uncle|cousin|friend|neighbour|boss|colleague|niece|nephew|baby|toddler|kids?|child|children|twins?|dogs?|cats?|pup|puppy|horse|pony|boy|girl)|(?:ihr|ihre|sein|mein|der|die)\s(?:sohn|tochter|mann|mutter|vater|schwester|bruder|freundin|hund|katze|kind|oma)|(?:son|sa|le|la|mon|ma)\s(?:fils|fille|mari|mère|père|sœur|frère|amie?|chien|chat|bébé)|(?:o|a|seu|sua|minha)\s(?:filh[oa]|marido|mãe|pai|irm[ãa]o?|amiga|cão|cachorro|gato|bebê)|(?:su|el|la|mi)\s(?:hij[oa]|marido|madre|padre|hermana?o?|amiga|perr[oa]|gato|bebé))(?!['’]s (?:colour|dye|tint))(?!\s(?:has\s)?(?:rang|rings|called|calls|phoned|texted|wrote|writes|messaged|emailed|took|drove|says|said|reports?|reported|tells|told|noticed|saw|found|had to|brought|sent|rief|schrieb|sagt|a appelé|appelle|dit|ligou|disse|telefonou|llamó|dice|dijo))/iu;

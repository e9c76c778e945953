import { wholeWord } from '../denial.ts';

/**
 * The words by which notes tell of harm, in the five languages that free text is read in, and what each has to stand
 * beside. Common practice, no source.
 */

/** What a text tells of: hurt to skin, eyes or breath, or hair that gave way. */
export type HarmKind = 'skin' | 'fibre';

/**
 * What must stand beside a word for it to tell of harm: a part of the head, skin that shows, hair, the head or the work,
 * or nothing.
 */
export type Beside = 'head' | 'bare skin' | 'hair' | 'head or work' | 'nothing';

export type Sign = { readonly kind: HarmKind; readonly beside: Beside; readonly words: RegExp };

const sign = (kind: HarmKind, beside: Beside, ...words: readonly string[]): Sign => ({
  kind,
  beside,
  words: new RegExp(wholeWord(words.join('|')), 'giu'),
});

export const SIGNS: readonly Sign[] = [
  sign(
    'skin',
    'nothing',
    "(?:face|eyes?|eyelids?|lids?|scalp|neck|forehead|ears?) (?:all |just |really |has |had )?(?:came|comes|blew|blown|ballooned) up|on a drip|(?:chest|throat) (?:went|felt|feels|goes|got|getting|was|is) (?:a bit |all |so |very )?tight(?:ened|ening)?|tight[- ](?:chest\\p{L}*|throat)|eyelids? like (?:cushions|pillows|plums)|blister(?:s|ed|ing|y)?|bubbled|welts?|hives|urticaria|anaphyla\\p{L}*|epi-?pen|swell(?:s|ed|ing|ings)?|swollen|swelled|rash(?:es|y)?|scab(?:s|bed|by|bing)?|chemical burns?|burn(?:s|ed|ing)|burned|scald(?:ed|ing|s)?|sting(?:s|ing)?|stung|itch(?:y|es|ed|ing|iness)?|inflam(?:ed|mation)|pustules?|weeping (?:sores?|patch(?:es)?|skin|spots?)|sores|lesions?|dermatitis|red raw|raw (?:patch(?:es)?|spots?|skin)|allergic reaction|bad reaction|(?:reacted|reaction) (?:badly )?to (?:the |her |our |that )?(?:dye|tint|colou?r|bleach|lightener|toner|patch|test)|wheez(?:ed|ing|es|y)|(?:struggl\\p{L}+|hard|trouble|difficulty|could(?: not|n'?t)|unable) (?:to |in |with )?breath(?:e|ing)|eyes? (?:were |was |are |is |both |nearly |almost |completely |half |so )*(?:shut|closed|closing|slits|closed up)(?! (?:for|while|during|when|at the|under))|(?:(?:could|can|would|did)(?: not|n'?t)|unable to|cannot) open (?:her |his |their |the |both |one |my |either )*eyes?|lost (?:her|his) eyebrows|throat (?:felt |feels |was |is |went |got )?(?:closing|closed|tight|swelling)|tight (?:chest|throat)|chest (?:felt |was )?tight|paramedics?|nosebleed|spots? (?:all )?(?:over|on|along|round|across) (?:her |his |the |my )(?:scalp|face|neck|hairline)|allergic to (?:\\p{L}+ |\\d+ ){0,4}(?:dye|tint|colou?r|series|shade|bleach|range|lightener|toner)|flar(?:ed|ing) (?:it|them|her \\p{L}+) up|asthma attack|fainted|fainting|(?:felt|feeling|feels|went) faint|passed out|collapsed|light-?headed|dizzy|o?edema|ooze|weepy|scratch(?:ed|ing) (?:her|it|till|until|at|herself)|contact (?:allergy|dermatitis)|pos(?:itive)? (?:patch|skin|allergy)(?: test)?|(?:patch|skin|elbow|allergy) test (?:was |came (?:up|back) |read )?(?:pos(?:itive)?|bubbled|raised|red|angry|itchy)|(?:red |itchy |angry )?raised (?:red |itchy )?(?:dis[ck]|patch(?:es)?|bumps?|rash|spots?|lumps?)|(?:went|gone|turned|is|was) (?:as )?(?:red as a )?lobster(?:[- ]red)?|bloodshot|balloon(?:ed|ing|s)?|doubled in size|twice (?:its|the) size|prednisolone|piriton|skin (?:\\p{L}+ )?(?:split|cracked|came (?:away|off)|broke|peel\\p{L}*|lifted|burned|burnt|raw|off)|(?:flak|peel|com)(?:ed|ing) off in (?:sheets|strips|bits|flakes)|(?:soreness|redness|stinging|irritation|puffiness|the red) (?:has |had |was |all )?(?:eased|settled|went (?:down|by|in|after|away)|calmed|gone (?:by|in|within|after)|down by|faded (?:by|overnight|in an))|scalp (?:has |is |was |now )?(?:recovered|healed|settled|calmed|better|calmer)|breathing (?:calmed|settled|eased|went|got|was (?:bad|fast|tight|hard|short))|breathless|eyes? (?:were |was |had |has |have |is |are )?(?:stopped )?(?:water(?:ing|ed|y)|streaming)|hurt(?:s|ing)? (?:like|so|a lot|badly|too much|the whole)|(?:a|an|had|bad|mild|slight|small|delayed|any|late|severe) reaction|reaction (?:last|since|overnight|behind|along|round|around|again)|(?:tint|dye|developer|bleach|colou?r|mix|toner|peroxide|lightener) (?:\\p{L}+ ){0,3}(?:in|into) (?:her |his |the |one |both |my )*(?:left |right )?eyes?",
  ),
  sign(
    'skin',
    'head',
    'redness|reddened|pinkness|pink and (?:bumpy|hot|sore|raised)|bolhinhas|se le irritó|scratching|balloon(?:s|ed)?|twice (?:its|their|the) size|like (?:a |two )?(?:tomato(?:es)?|beetroots?|boxer|balloons?|sausages?|golf ?balls?|footballs?|lobster)|red (?:patch(?:es)?|marks?|lumps?|spots?|rims?|lines?|welts?)|sore|soreness|raw|tender|peel(?:s|ed|ing)?|flak(?:es|ed|ing|y)|hurts?|hurting|pain|painful|angry|swells|flar(?:e|ed|es|ing)(?: up| it up)?|raised|bloodshot|nasty|aches?|aching|bleed(?:s|ing)?|bled|blood|bloody|weep(?:s|ing|y)?|wept|burnt|burn|on fire|throb(?:s|bed|bing)|(?:scalp|skin|forehead) (?:felt |feels |is |was )?(?:very |so |too )?(?:tight|hot)|wounds?|ulcers?|cracked|healed|irritad[oa]s?|lumps on|stuck (?:shut|together)|irritat(?:ed|ion)|smart(?:s|ed|ing)|prickl(?:y|ing|ed)|pus|infected|infection|bruis(?:ed|ing)|discharge',
  ),
  sign(
    'skin',
    'bare skin',
    'red|crimson|scarlet|crust(?:ed|y|ing)|fire|beetroot|lobster|puffy|puffed up|ooz(?:es|ed|ing|y)|rouges?|rot|rote|vermelh[oa]s?|roj[oa]s?',
  ),
  sign(
    'skin',
    'head or work',
    "(?:went|gone|goes|going|off|sent|send|rushed|drove|driven|taken|took (?:her|him)|ended up|had to go|been|is|spent (?:the|a) night|sat|stayed|waited|admitted|straight|overnight|night|day|hours?|from|kept)(?: straight| back| off)?(?: to| at| in| the)* (?:a ?& ?e|er|emergency|casualty|hospital|urgent care|the doctor'?s?|a doctor|her doctor|his doctor|her gp|the gp|gp|walk-in|minor injuries|out-of-hours|dermatologist|clinic)|a ?& ?e|(?:saw|seen|seeing|rang|called|visited|asked|needed?|consulted) (?:by )?(?:a |the |her |his )?(?:doctor|gp|dermatologist|nurse|paramedics?|pharmacist|ambulance)|(?:doctor|gp|dermatologist|nurse|hospital|pharmacist|chemist) (?:has |had )?(?:said|says|gave|put|prescribed|told|confirmed|thinks|called|sent|calls|kept|blames|advised|stopped|warned)|(?:spot|patch|site) (?:was |came up |is |had )?raised|ambulance|under (?:the|a) dermatologist|(?:so |very |too |really )?(?:tender|sore|painful) (?:after|since|from)|(?:needed|used|reached for|took) (?:her|his) (?:pump|puffer|inhaler)|coughing (?:fit|her|his)|could(?: not|n'?t) (?:bear|stand) it|hurt(?:s|ing)? (?:that|so) much|eczema flared|scratching|steroids?|steroid cream|cortisone|hydrocortisone|antihistamines?|prednisolone|prescribed",
  ),
  sign(
    'skin',
    'nothing',
    '(?:brand)?blasen?|bläschen|pusteln|schuppt sich|in fetzen|brandblasen|blasig|verbrannt\\p{L}*|brennt|brannte|gebrannt|brennen|brennend\\p{L}*|juck(?:t|te|en|end\\p{L}*)|gejuckt|juckreiz|\\p{L}*geschwollen\\p{L}*|schwoll|schwellung\\p{L}*|schwillt|ausschlag|hautausschlag|quaddeln?|pusteln?|nesselsucht|näss(?:t|te|en|end\\p{L}*)|verkrustet\\p{L}*|krusten?|schorf|verätz\\p{L}*|veraetz\\p{L}*|atemnot|notaufnahme|notarzt|allergische reaktion|allergisch reagiert|entzünd\\p{L}*|wund(?:e[rnms]?)?|rötung\\p{L}*|gerötet\\p{L}*',
  ),
  sign(
    'skin',
    'head or work',
    'feuerrot\\p{L}*|schmerz\\p{L}*|(?:tat|tut|taten|tun)(?: \\p{L}+)? weh|weh(?:getan|tat)|blutet\\p{L}*|blutig\\p{L}*|geblutet|eiter\\p{L}*|eitrig|schält|pellt|offen(?:e|en|er)? stellen?|zum arzt|beim arzt|zur ärztin|hautarzt|hautärztin|krankenhaus|klinik|kortison\\p{L}*|cortison\\p{L}*|antihistamin\\p{L}*|(?:augen?|lider) (?:\\p{L}+ )*zu',
  ),
  sign(
    'skin',
    'nothing',
    "cloques?|cloqué|brûl(?:e|é|és|ée|ées|ait|aient|ent|ures?|ant)|démang\\p{L}*|en feu|pèlent|cloqu\\p{L}*|gonfl(?:é|ée|és|ées|e|ait|ement)|enfl(?:é|ée|és|ées|ure)|urticaire|suint(?:e|ait|ant|ent|ement)|croûtes?|eczéma|boutons|plaies?|plaques? (?:rouges?|d'urticaire)|rougeurs?|à vif|picote(?:ments?|nt|ait)?|samu|réaction allergique|irrit(?:é|ée|ation)|inflam\\p{L}*|enflamm\\p{L}*",
  ),
  sign(
    'skin',
    'head or work',
    'gratt(?:e|ait|ent)|saign(?:e|é|ait|ent)|pique|piquait|douleurs?|douloureux|fait mal|mal au cuir chevelu|pèle|urgences|hôpital|médecin|dermato\\p{L}*|ambulance|pharmacien(?:ne)?|cortisone|antihistaminiques?|(?:yeux|paupières) (?:\\p{L}+ )*fermée?s?',
  ),
  sign(
    'skin',
    'nothing',
    'bolhas?|queimaduras?|queimou|queimad[oa]s?|queima(?:ndo|va)?|ard(?:eu|ia|endo|ência|or|ido)|coceiras?|coç(?:a|ava|ando|ou)|comich(?:ão|ões)|inch(?:ou|ad[oa]s?|aço|aram|ando)|urticária|erupç(?:ão|ões)|brotoeja|feridas?|crostas?|casquinhas?|cascas?|em carne viva|reação alérgica|alergia (?:à|da|na|com)|descam(?:ando|ou|ação)|irritação|vermelhidão|pronto[- ]socorro|purgando|supur\\p{L}*|inflama(?:d[oa]s?|ção|ndo)|inflamou',
  ),
  sign(
    'skin',
    'head or work',
    'irritando|sangr(?:ou|ando|ava|amento)|dor|dores|do[ií]a|doeu|doendo|hospital|médic[oa]|dermatologista|urgências?|ambulância|antialérgico|anti-?histamínico|corticoides?|olhos? (?:\\p{L}+ )*fechad[oa]s?|manchas? vermelhas?|pus',
  ),
  sign(
    'skin',
    'nothing',
    'ampollas?|quemaduras?|quem(?:ó|ad[oa]s?|aba|a|ando)|ard(?:ía|ió|ores)|escoz(?:or|ía)|escoc(?:ió|ía)|escuece|pic(?:ó|aba|azón|azones|ores?)|picor|hinch(?:ó|ad[oa]s?|azón|aron|aba)|ronchas?|sarpullidos?|habones|costras?|heridas?|llagas?|enrojec\\p{L}*|rojeces|rojez|supura\\p{L}*|reacción alérgica|irritación',
  ),
  sign(
    'skin',
    'head or work',
    'sangr(?:ó|aba|ando|e)|dolor|dolía|duele|arde|pica|médic[oa]|dermatólog[oa]|urgencias|ambulancia|antihistamínicos?|corticoides?|cortisona|ojos? (?:\\p{L}+ )*cerrad[oa]s?|se pela',
  ),
  sign(
    'fibre',
    'nothing',
    "(?:like|as) (?:wet |cooked |overcooked |old |a |chewed )?(?:seaweed|spaghetti|noodles|jelly|slime|chewing gum|cotton wool|wet tissue|cobwebs?|tights|rubber bands?)|(?:strands?|pieces?|ends|lengths|sections?) parted (?:when|as|under|in|at)|(?:like|just|pure|total|is|to|felt like|feels like|turned (?:in)?to) (?:just )?straw|stubble|spongy|like (?:a )?sponge|as a sponge|velcro|candy ?floss|bubble ?gum and|knicker elastic|(?:fall|fell|falling|falls|drop|dropping|dropped|cutting|coming|came) (?:off |out |to |away )?(?:in |to |off )?(?:bits|pieces)|fall(?:ing|s)? to bits|bits (?:dropping|falling|coming|breaking|snapping)|broken bits|snap(?:ped|ping|s) (?:clean |right |all )?off|bald (?:strip|bit|area|patch(?:es)?|spots?)|see[- ]thr(?:u|ough) ends|wrecked|frazzled|too far gone|ate through|cuticles? (?:is |was |are )?(?:blown|shot|gone)|(?:stretch(?:es|ed)?|stretchy) (?:and|but) (?:did ?n'?o?t|wo ?n'?t|does ?n'?t|no|stay)|did(?:n't|nt| not) spring back|pull(?:ed|s) apart|lost (?:all |most of )?(?:her|his) (?:length|fringe|hair)|(?:took|lost|losing|shed) (?:a |her |some |loads|lots|so )*(?:lumps?|chunks?|handfuls?|clumps?|loads|lots|hair)|pattern (?:wo ?n'?t|has ?n'?t|never) (?:come|came)|curls? (?:dropped|won'?t|wont|gone|dead|never)|lost (?:her |all |the )*curl|hair (?:is |has |all )?(?:gone|ruined|wrecked|fried|falling|lost|smok\\p{L}*)|pinged off|(?:plughole|drain|brush|sink|shower|basin|comb|pillow|hat)[, ]+(?:its|it's|it is|is|was) full|gummy|mush|mushy|(?:like|to) (?:\\p{L}+ )?(?:gum|chewing gum|mush|jelly|spaghetti|noodles|cotton wool|candyfloss|cobweb|slime)|disintegrat\\p{L}+|stay(?:s|ed)? stretched|stretch(?:es|ed)? and (?:stay\\p{L}*|snap\\p{L}*|br[eo]\\p{L}*)|(?:did not|didn't|won't|would not|never|does not|doesn't) (?:spring|come|go|bounce) back|pillow (?:full|covered)|full of (?:broken )?hairs?|bald (?:patch(?:es)?|spots?)|breakage|(?:handfuls?|clumps?|chunks?|lumps?|fistfuls?|tufts?) (?:of (?:\\p{L}+ )?hair|c[ao]m\\p{L}+|fell|falling|missing|gone|out)|(?:in|by the) (?:handfuls?|clumps?|chunks?|tufts?)|shredd(?:ed|ing)|chemical haircut|overprocessed|over-processed|frizzled",
  ),
  sign(
    'fibre',
    'hair',
    'snap(?:s|ped|ping)?|frizzed (?:it |them |her |up )?(?:to|into) nothing|sheared off|fray(?:ed|ing)|(?:is |was |are |were |basically |all )gone(?= *(?:,|$|short|down|at))|won.?t coil|elasticity(?:.s| is| has)? (?:shot|gone|lost)|(?:halo|patch|lot|bit) of (?:fuzz|fluff|stubble)|lost (?:an? |two |three )?(?:inch(?:es)?|cm)|no more hair|plughole|density (?:\\p{L}+ ){0,3}(?:gone|lost|halved)|porous as|spong\\p{L}*|smoking|left half|br(?:eaks?|eaking|oke|oken)|melt(?:s|ed|ing)?|dissolv(?:es|ed|ing)|(?:falls|fell|came|coming|comes|falling) (?:apart|off|out|away)|crumbl(?:es?|ed|ing|y)|fried|frazzled|brittle|elastic|rubbery|stretchy|slimy|sloughing|shed(?:s|ding)?|burnt|burned|singed|frayed|ripped|tore|tearing|torn|ruined|destroyed|matted|splitting|on (?:the|her) pillow|(?:hairs?|strands?|pieces?|lengths?|ends|bits|lots|loads|half|ponytail|full|left|more|lock|section|it) (?:\\p{L}+ ){0,3}in (?:the (?:comb|brush|sink|shower|drain|plughole|towel)|(?:her|my|his|your) hands?)',
  ),
  sign(
    'fibre',
    'hair',
    'stroh\\p{L}*|aufgelöst|löst sich auf|in der folie geblieben|kaputt|(?:kau)?gummi(?:artig)?\\p{L}*|matschig\\p{L}*|breiig\\p{L}*|(?:ab)?gebrochen|abgebrochen\\p{L}*|br(?:icht|echen|ach|achen)|abbrechen|abbrachen|abgerissen|reiß(?:t|en)|reisst|rissen|riss|gerissen|geschmolzen|schmolz(?:en)?|büschel\\p{L}*|fallen (?:\\p{L}+ )*aus|fielen (?:\\p{L}+ )*aus|ausgefallen|ausfall|zerbrösel\\p{L}*|bröckel\\p{L}*|überdehnt|zerfallen|zerfällt|watte|spröde|kahle?|in der (?:hand|bürste)|im kamm|auf dem kissen|schwammig',
  ),
  sign('fibre', 'nothing', 'haarbruch|haarausfall'),
  sign(
    'fibre',
    'hair',
    'cram(?:é|ée|és|ées|ent)|paille|perd(?:s|u|ent)? (?:des|beaucoup|par|ses cheveux|la moitié)|abîm\\p{L}*|élastiques?|chewing-gum|caoutchou\\p{L}*|cass(?:e|é|és|ée|ées|ent|ait|aient|ants?|antes?|ure)|fond(?:u|us|ue|ues|ent|aient)|bouillie|pâteu\\p{L}*|effrit\\p{L}*|tomb(?:e|é|és|ent|ait|aient|ées?)|poignées?|touffes?|rompu\\p{L}*|rompent|charpie|guimauve|se détach\\p{L}*|dans la (?:main|brosse)|oreiller',
  ),
  sign(
    'fibre',
    'hair',
    'palha|estragad[oa]s?|destruíd[oa]s?|elástic[oa]s?|emborrachad[oa]s?|chicletes?|borrach(?:a|udo)|quebr(?:ou|aram|ando|ad[oa]s?|adiç[oa]s?|a|am|ava|avam|eira)|derret(?:eu|ido|endo|eram|e)|mingau|papa|arrebent\\p{L}*|part(?:iu|iram|indo|idos?)|ca(?:indo|iu|íram|i|em)|tufos?|esfarel\\p{L}*|desmanch\\p{L}*|desfe\\p{L}*|na mão|no (?:pente|ralo|travesseiro)|na escova',
  ),
  sign('fibre', 'nothing', 'corte químico'),
  sign(
    'fibre',
    'hair',
    'paja|estropead[oa]s?|destrozad[oa]s?|chicles?|gomos[oa]s?|elástic[oa]s?|romp(?:e|en|ió|ían|ía|ieron|iendo)|rot[oa]s?|quebr(?:ó|aron|aba|adiz[oa]s?|ad[oa]s?)|part(?:ió|ieron|ían)|se (?:le )?parten?|derrit\\p{L}*|derret\\p{L}*|papilla|ca(?:yó|yeron|ía|ían|e|en|yendo)|mechones|puñados?|desh(?:ac|iz|ech)\\p{L}*|en la (?:mano|almohada)|en el (?:peine|cepillo|desagüe)',
  ),
];

import { type Kind, kindFacts } from './kinds.ts';

/** Stands at the end of every caution. */
export const FIRST = "The maker's instructions, local law and licensed practice come first.";

const WORDS = {
  'skin-test':
    'Hair dye can cause severe allergic reactions, at any time and after years without one; a clear skin test lessens the risk and does not rule a reaction out.',
  reaction:
    'After any reaction to hair dye, or to a black henna tattoo, a later one can be worse; medical advice comes before any further dye.',
  lightener:
    'Lightener can burn skin and break hair; it is watched all the time it is on, and rinsed at once when it hurts.',
  peroxide:
    'Hydrogen peroxide burns skin and eyes, the more the stronger it is; the strength that counts is that of the mixture on the head.',
  metallic:
    'Metal left in the hair can heat up, bubble and break the hair when peroxide meets it; a cutting is tested away from the head first.',
  persulphate:
    'Persulphates can cause asthma and skin allergy, in client and colourist; dust is kept out of the air and the room aired.',
  'under-16': 'Oxidative hair dyes carry the warning that they are not meant for anyone under 16.',
  scalp: 'A rash, or a scalp that is sensitive, irritated or damaged, is a reason given on the label not to colour.',
  eyes: 'Products near the eye can injure it; if any gets in, the eye is rinsed at once with water and medical help is sought.',
  medical: 'Illness and its treatment change how hair and skin take colour; the doctor’s leave comes before it.',
} as const;

export type CautionTopic = keyof typeof WORDS;

/** Something in a bowl: its kind, and whether peroxide was mixed with it. */
export type InBowl = { readonly kind: Kind; readonly developed: boolean };

const isOxidativeDye = ({ kind, developed }: InBowl): boolean => {
  const { skinTest, oxidative } = kindFacts(kind);
  return skinTest && (oxidative === true || developed);
};
const hasDye = ({ kind }: InBowl): boolean => kindFacts(kind).colours;
const isLightener = ({ kind }: InBowl): boolean => kind === 'lightener' || kind === 'high-lift';
const hasPeroxide = ({ kind, developed }: InBowl): boolean => developed || kindFacts(kind).oxidative === true;

/** Of what in a bowl each caution is true: a direct dye burns nobody with peroxide, lightener alone holds no dye. */
const TRUE_OF: Readonly<Record<CautionTopic, (one: InBowl) => boolean>> = {
  'skin-test': hasDye,
  reaction: hasDye,
  lightener: isLightener,
  peroxide: hasPeroxide,
  metallic: hasPeroxide,
  persulphate: ({ kind }) => kind === 'lightener',
  'under-16': isOxidativeDye,
  scalp: isOxidativeDye,
  eyes: () => true,
  medical: () => true,
};

/** Whether a caution is true of something in a bowl. */
export function isTrueOf(topic: CautionTopic, one: InBowl): boolean {
  return TRUE_OF[topic](one);
}

/** Every topic that a caution is held for. */
export const CAUTION_TOPICS = Object.keys(WORDS) as readonly CautionTopic[];

/**
 * The caution on a topic, ready to print. The facts: label warnings in Regulation (EC) 1223/2009, Annex III, entry 12 and
 * the oxidative dyes; on tests, opinions SCCP/1104/07 and SCCS/1607/19; on persulphates, the French agency ANSES; on
 * metal, the hairdressing page "Incompatibility test". What is felt on the head is common practice, no source.
 */
export function caution(topic: CautionTopic): string {
  return `${WORDS[topic]} ${FIRST}`;
}

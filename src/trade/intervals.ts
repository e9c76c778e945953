/** Days that hair rests before lightener goes on the same place again: common practice, no source. */
export const LIGHTENER_REST = 14;

/** Days between a perm, relaxer or smoothing and permanent colour or lightener: common practice, no source. */
export const RESHAPE_REST = 14;

/**
 * New growth in mm beyond which roots lightened in one go lift unevenly: the scalp warms only the hair next to it. An
 * inch, common practice, no source.
 */
export const WARM_GROWTH = 25;

/** Days after which a test of strength or porosity says little of the hair: about as long as three cuts. A choice. */
export const CONDITION_HOLDS = 180;

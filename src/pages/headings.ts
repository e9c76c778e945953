/** Headings of our pages that the HTML page marks out by more than their text. */
export const ALERTS_HEADING = 'Before touching the hair';
export const AHEAD_HEADING = 'Before mixing';
export const CAUTION_HEADING = 'Caution';
export const ASKED_HEADING = 'Asked for';
export const VISITS_HEADING = 'Visits';
/** The visits of a long history that stand on the card in a line each. */
export const EARLIER_HEADING = 'Earlier visits';
export const FILL_IN_HEADING = 'Clock, to fill in';
export const CLIENTS_HEADING = 'Clients';
export const WORKED_HEADING = 'How the grams came about';

/** The class of a section by its heading; a heading is always ours, so no note can choose one. */
export const SECTION_CLASSES: ReadonlyMap<string, string> = new Map([
  [ALERTS_HEADING, 'alerts'],
  [AHEAD_HEADING, 'ahead'],
  [CAUTION_HEADING, 'caution'],
  [VISITS_HEADING, 'visits'],
  [ASKED_HEADING, 'asked'],
  [FILL_IN_HEADING, 'fill-in'],
  [WORKED_HEADING, 'worked'],
  [CLIENTS_HEADING, 'clients'],
  [EARLIER_HEADING, 'earlier'],
]);

/** Sections of a page that are folded up under their heading, and left out in print. */
export const FOLDED_HEADINGS: ReadonlySet<string> = new Set([WORKED_HEADING]);

/** Sections whose parts are folded up, each under its own heading; in print they are whole. */
export const FOLDED_PARTS: ReadonlySet<string> = new Set([EARLIER_HEADING]);

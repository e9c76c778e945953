/** Headings of our pages that the HTML page marks out by more than their text. */
export const ALERTS_HEADING = 'Before touching the hair';
export const CAUTION_HEADING = 'Caution';
export const VISITS_HEADING = 'Visits';
export const FILL_IN_HEADING = 'Clock, to fill in';

/** The class of a section by its heading; a heading is always ours, so no note can choose one. */
export const SECTION_CLASSES: ReadonlyMap<string, string> = new Map([
  [ALERTS_HEADING, 'alerts'],
  [CAUTION_HEADING, 'caution'],
  [VISITS_HEADING, 'visits'],
  [FILL_IN_HEADING, 'fill-in'],
]);

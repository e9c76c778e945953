import { strengthText, wordText } from './figures.ts';
import { namesText } from './names.ts';
import { quoted } from './quoted.ts';
import { type SaidHead, spaced } from './said.ts';
import { clockText } from './times.ts';

/** What a header opens, by its short name and its full one. */
const named = ({ name, full }: SaidHead<'client'>): string => spaced(name?.name, full && quoted(full.text));

/** `client wren-abbott "Wren Abbott"` */
export const printNamed = (head: SaidHead<'salon' | 'client'>): string => named(head);

/** `stylist io "Io" at harbour` */
export const printStylist = (head: SaidHead<'stylist'>): string =>
  spaced(named(head), head.salon && `at ${head.salon.name}`);

export const printRange = (head: SaidHead<'range'>): string =>
  spaced(named(head), head.kindWord && wordText(head.kindWord));

/** `product dev-6 "Cream developer" developer 6%` */
export const printProduct = (head: SaidHead<'product'>): string =>
  spaced(printRange(head), head.strength && strengthText(head.strength), head.inRatio && 'in ratio');

/** `stock 2026-08-01 at harbour` */
export const printStock = ({ date, time, salon, says }: SaidHead<'stock'>): string =>
  spaced(date?.date, time && clockText(time), salon && `at ${salon.name}`, says && quoted(says.text));

/** `visit 2026-09-04 14:00 wren-abbott by io at harbour` */
export const printVisit = ({ date, time, client, more, by, salon, says }: SaidHead<'visit'>): string =>
  spaced(
    date?.date,
    time && clockText(time),
    client?.name,
    more && namesText(more),
    by && `by ${by.name}`,
    salon && `at ${salon.name}`,
    says && quoted(says.text),
  );

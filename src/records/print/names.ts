import { isBowlName } from '../../notation/words.ts';
import { fold } from '../../text/fold.ts';
import type { Name, Zone } from '../schema/values.ts';
import type { Said } from './said.ts';

/** A bowl's name, a letter in a capital: `A`, `b2`. */
export const bowlText = ({ name }: Said<Name>): string => {
  const capital = name.toUpperCase();
  return name.length === 1 && isBowlName(capital) && fold(capital) === name ? capital : name;
};

/** Bowls that go together: `A+B` */
export const bowlsText = (bowls: readonly Said<Name>[]): string => bowls.map(bowlText).join('+');

/** Names with one space between them. */
export const namesText = (names: readonly Said<Name>[]): string => names.map(({ name }) => name).join(' ');

/** Places, each of its own: `hairline, back left` */
export const zonesText = (zones: readonly Said<Zone>[]): string => zones.map(({ zone }) => zone).join(', ');

import type { LiveVisit } from '../../pages/live-page.ts';
import type { VisitReckoned } from '../../reckon/model.ts';

type Stamp = LiveVisit['stamps'][number];

const lineOf = (word: string, { bowl, zone }: { readonly bowl: string | undefined; readonly zone: string }): string =>
  [word, bowl, zone].filter((part) => part !== undefined && part !== '').join(' ');

/**
 * What can be noted of a visit with one press: a look at what is on and its coming off, and a bowl going on. These lines
 * alone are ever taken from a page, with the time put in.
 */
export const stampsFor = ({ clock, bowls }: VisitReckoned): Stamp[] => {
  const open = clock.runs.filter(({ off, told }) => off === undefined && told === undefined);
  const stamps = new Map<string, Stamp>();
  const add = (word: string, label: string, of: { readonly bowl: string | undefined; readonly zone: string }): void => {
    const line = lineOf(word, of);
    const what = [of.bowl === undefined ? '' : `bowl ${of.bowl}`, of.zone].filter((part) => part !== '').join(', ');
    stamps.set(line, { line, label: what === '' ? label : `${label}: ${what}` });
  };
  for (const run of open) add('check', 'Looked at', run);
  for (const run of open) add('off', 'Off', run);
  for (const { name } of bowls)
    if (![...clock.runs, ...clock.unclocked].some(({ bowl }) => bowl === name))
      add('on', 'On', { bowl: name, zone: '' });
  return [...stamps.values()];
};

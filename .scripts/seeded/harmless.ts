import { changedFirst, isLineOf, put, wordOf } from './lines.ts';
import type { Mistake } from './mistakes.ts';

/** Changes of a sound note that are no mistakes: nothing new may be found after any of them. */
export const HARMLESS: readonly Mistake[] = [
  {
    name: 'other white space',
    says: 'tabs, more blanks, an empty line and a comment',
    plant: ({ visit }) => ({
      visit: visit.flatMap((line, index) => (index === 0 ? [line, '', '# later'] : [`\t${line}  `])),
    }),
  },
  {
    name: 'capitals',
    says: 'first words in capitals',
    plant: ({ visit }) => ({
      visit: visit.map((line, index) =>
        index === 0
          ? line
          : line.replace(/^(\s*)(\S+)/, (_, blank: string, word: string) => blank + word.toUpperCase()),
      ),
    }),
  },
  {
    name: 'other order',
    says: 'charges and the result in front of the work',
    plant: ({ visit: [header = '', ...lines] }) => {
      const isMoved = isLineOf('charge', 'result', 'next', 'aim');
      const moved = lines.filter(isMoved);
      return moved.length < 2 ? undefined : { visit: [header, ...moved, ...lines.filter((line) => !isMoved(line))] };
    },
  },
  {
    name: 'harm denied',
    says: 'a note that nothing happened',
    plant: ({ visit }) => ({ visit: [...visit, '  note no redness, no itching, scalp calm when she left'] }),
  },
  {
    name: 'times with a dot',
    says: '14.35 in the place of 14:35',
    plant: ({ visit }) => ({
      visit: visit.map((line, index) =>
        index > 0 && ['on', 'off', 'check'].includes(wordOf(line)) ? put(line, /(\d\d):(\d\d)/g, '$1.$2') : line,
      ),
    }),
  },
  {
    name: 'volumes for per cent',
    says: '20vol in the place of 6%',
    plant: ({ visit }) => {
      const changed = changedFirst(visit, (line) => (wordOf(line) === 'bowl' ? put(line, /\b6%/, '20vol') : line));
      return changed === undefined ? undefined : { visit: changed };
    },
  },
  {
    name: 'a remark',
    says: 'a word behind the last time off',
    plant: ({ visit }) => {
      const at = visit.findLastIndex((line) => wordOf(line) === 'off' && !/["“#]/.test(line));
      return at < 0 ? undefined : { visit: visit.with(at, `${visit[at]} "as she likes it"`) };
    },
  },
];

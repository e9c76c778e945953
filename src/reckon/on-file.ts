import type { ClientFile } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import type { Caution } from '../records/schema/client.ts';
import type { Client, ClientFact, Visit, VisitFact } from '../records/schema/entry.ts';
import type { Asked } from '../records/schema/visit.ts';
import { recently } from '../text/recently.ts';
import { isNo } from '../trade/said.ts';

/** Words of the lines that are on file: they hold for later visits too, or are asked for at them. */
type Word = 'test' | 'caution' | 'hold' | 'reaction';

/** A line that is on file, where it is noted, and the day of its visit: undefined under the client. */
export type Noted<W extends Word = Word> = {
  readonly stood: Stood<Client> | Stood<Visit>;
  readonly fact: Extract<ClientFact | VisitFact, { word: W }>;
  readonly day: string | undefined;
};

/** What is on file of a client, each in the order of her entries, then of her visits. */
export type OnFile = { readonly [W in Word]: readonly Noted<W>[] };

/** What was asked that day and not answered with no, as a caution of that day. */
const answerOf = ({ about, answer, says, line }: Asked): Caution | undefined => {
  if (answer === 'no' || (answer === undefined && (says === undefined || isNo(says.text)))) return undefined;
  const asked = about.map(({ word }) => word).join(' ');
  return { word: 'caution', line, text: says === undefined ? asked : `${asked}: ${says.text}` };
};

const lookThrough = ({ entries, visits }: ClientFile): OnFile => {
  const on = { test: [], caution: [], hold: [], reaction: [] } as { [W in Word]: Noted<W>[] };
  const add = (stood: Stood<Client> | Stood<Visit>, day: string | undefined): void => {
    for (const fact of stood.entry.facts) {
      switch (fact.word) {
        case 'test':
          on.test.push({ stood, fact, day });
          break;
        case 'caution':
          on.caution.push({ stood, fact, day });
          break;
        case 'asked': {
          const said = answerOf(fact);
          if (said !== undefined) on.caution.push({ stood, fact: said, day });
          break;
        }
        case 'hold':
          on.hold.push({ stood, fact, day });
          break;
        case 'reaction':
          on.reaction.push({ stood, fact, day });
          break;
      }
    }
  };
  for (const entry of entries) add(entry, undefined);
  for (const visit of visits) add(visit, visit.entry.date?.date);
  return on;
};

/**
 * The tests, cautions, holds and reactions noted of a client and under her visits. Every rule on them asks at every
 * visit; the lines are looked through once.
 */
export const onFile: (client: ClientFile) => OnFile = recently(lookThrough);

/** Those under the client herself, and those under the visits given. */
export const notedUnder = <W extends Word>(
  noted: readonly Noted<W>[],
  visits: readonly Stood<Visit>[],
): readonly Noted<W>[] => {
  if (noted.length === 0) return noted;
  const given = new Set<Stood>(visits);
  return noted.filter(({ stood }) => stood.entry.kind !== 'visit' || given.has(stood));
};

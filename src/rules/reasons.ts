import type { ClientFile, Journal } from '../journal/journal.ts';
import type { SalonSettings } from '../journal/salon.ts';
import type { Stood } from '../journal/source.ts';
import { factAt } from '../journal/thing-at.ts';
import { salonOf } from '../reckon/salon-of.ts';
import type { Client, Visit } from '../records/schema/entry.ts';
import type { Place } from '../text/span.ts';
import { findingKey } from './finding-key.ts';

/** Whose notes a finding is about, which rules are explained there, with the reasons, and in whose salon. */
export type Subject = {
  readonly client?: string;
  readonly reasons: ReadonlyMap<string, string>;
  readonly salon: SalonSettings;
};

const reasonsOf = (entries: readonly (Stood<Client> | Stood<Visit>)[]): Map<string, string> => {
  const reasons = new Map<string, string>();
  // A `because` without a reason explains nothing.
  for (const { entry } of entries)
    for (const fact of entry.facts)
      if (fact.word === 'because' && fact.says !== undefined) reasons.set(fact.rule.name, fact.says.text);
  return reasons;
};

/** The entry that a place is counted from; undefined for one that is counted from a whole file. */
const entryOf = ({ in: ground }: Place): Stood | undefined => (ground.isWhole === true ? undefined : (ground as Stood));

/** Answers whose notes an entry or a place belongs to. Made once for a journal. */
export type Subjects = {
  readonly ofEntry: (stood: Stood | undefined) => Subject;
  readonly at: (place: Place) => Subject;
  /** What stays the same of what a rule finds at a place. */
  readonly keyOf: (rule: string, place: Place) => string;
  /** The remark of a line, where it stands in one entry with another place. */
  readonly remarkAt: (place: Place, beside: Place) => string | undefined;
};

/**
 * What `because` lines cover: on a visit that visit, on a client everything noted of that client. A visit's own reason
 * stands before the client's.
 */
export const subjectsOf = (journal: Journal): Subjects => {
  const nobody: Subject = { reasons: new Map(), salon: journal.salon };
  const byClient = new Map<string, Subject>();
  const ofClient = (client: ClientFile): Subject => {
    let subject = byClient.get(client.name);
    if (subject === undefined) {
      subject = { ...nobody, client: client.name, reasons: reasonsOf(client.entries) };
      byClient.set(client.name, subject);
    }
    return subject;
  };
  const ofEntry = (stood: Stood | undefined): Subject => {
    const entry = stood?.entry;
    if (entry?.kind !== 'client' && entry?.kind !== 'visit') return nobody;
    const name = entry.kind === 'client' ? entry.name?.name : entry.client?.name;
    const client = name === undefined ? undefined : journal.clients.get(name);
    const whole = client === undefined ? nobody : ofClient(client);
    if (entry.kind === 'client') return whole;
    const visit = stood as Stood<Visit>;
    const salon = salonOf(journal, visit);
    const isAllowing = entry.facts.some(({ word }) => word === 'because');
    if (!isAllowing) return salon === whole.salon ? whole : { ...whole, salon };
    return { ...whole, salon, reasons: new Map([...whole.reasons, ...reasonsOf([visit])]) };
  };
  const remarkAt: Subjects['remarkAt'] = (place, beside) => {
    const stood = entryOf(beside);
    if (stood === undefined || entryOf(place) !== stood) return undefined;
    return factAt(stood.entry, place.line)?.says?.text;
  };
  const keyOf: Subjects['keyOf'] = (rule, place) => {
    const stood = entryOf(place);
    const fact = stood && factAt(stood.entry, place.line);
    return findingKey(rule, place, { stood, fact }, journal);
  };
  return { ofEntry, keyOf, at: (place) => ofEntry(entryOf(place)), remarkAt };
};

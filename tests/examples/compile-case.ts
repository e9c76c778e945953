import { type Journal, joinSources } from '../../src/journal/journal.ts';
import { readSource, type Source } from '../../src/journal/source.ts';
import { neatenText } from '../../src/notation/neaten.ts';
import { cardMarkdown } from '../../src/pages/card.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { judge } from '../../src/rules/judging.ts';
import type { AllFound } from '../../src/rules/reported.ts';
import type { Finding } from '../../src/text/finding.ts';
import { fromOf, toOf } from '../../src/text/span.ts';
import { printRecords } from './print-records.ts';
import type { Asserted, Block, Case } from './read-example.ts';

const NOTE = 'note.bowl';

export const sourceOf = (path: string, text: string): Source => readSource(path, Buffer.from(text));

/** The note and the shelf beside it as one journal. */
export const journalOf = (note: string, shelf: string | undefined): Journal =>
  joinSources([sourceOf(NOTE, note), ...(shelf === undefined ? [] : [sourceOf('shelf.bowl', shelf)])]);

/** `3:7-10 fix unknown-name — message`: line and columns counted from 1, the last column included. */
const printFinding = ({ place, severity, rule, message, reason }: Finding): string => {
  const { file, line, at } = place;
  const where = `${line + 1}:${fromOf(at) + 1}-${Math.max(toOf(at), fromOf(at) + 1)}`;
  const given = reason === undefined ? '' : ` (reason: ${reason})`;
  return `${file === NOTE ? '' : `${file.replace(/\.bowl$/, '')} `}${where} ${severity} ${rule} — ${message}${given}`;
};

const printFindings = ({ findings, answered }: AllFound): string =>
  [...findings, ...answered.filter((one) => !findings.includes(one))].map((one) => `${printFinding(one)}\n`).join('');

const printCard = (journal: Journal, day: string): string => {
  const source = journal.sources.get(NOTE);
  const name = source?.entries
    .map(({ entry }) => (entry.kind === 'visit' ? entry.client : entry.kind === 'client' ? entry.name : undefined))
    .find((one) => one !== undefined)?.name;
  const client = name === undefined ? undefined : journal.clients.get(name);
  if (client === undefined) throw new Error('a card needs a client in the note');
  const reckoned = reckonAll(journal);
  const { findings, answered } = judge(journal).all();
  const own = [...findings, ...answered.filter((one) => !findings.includes(one))].filter(
    (finding) => finding.client === client.name,
  );
  return cardMarkdown(journal, client, [...(reckoned.get(client.name) ?? [])], own, { on: day });
};

/** What the compiler makes of a case, as the block of that kind shows it. */
export const compileBlock = ({ note, shelf }: Case, kind: Asserted, { info }: Block): string => {
  switch (kind) {
    case 'records':
      return printRecords(sourceOf(NOTE, note).entries.map(({ entry }) => entry));
    case 'findings':
      return printFindings(judge(journalOf(note, shelf)).all());
    case 'neaten':
      return neatenText(note);
    case 'card':
      return printCard(journalOf(note, shelf), info);
  }
};

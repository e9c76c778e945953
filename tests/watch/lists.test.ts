import { describe, expect, test } from 'vitest';
import { type Drawing, FINDINGS, INDEX, startDrawing } from '../../src/cli/watch/draw.ts';
import { openSession } from '../../src/rules/session.ts';
import { DAY, notesOf, SHELF } from './watching.ts';

const ROOT = '/notes';

/** Clients of a salon large enough for its index to be parted by letters; every tenth begins with an accent or a figure. */
const names = Array.from({ length: 240 }, (_, index) => `${'abcdefghij'[index % 10]}${'xyz'[index % 3]}-lund-${index}`);
const fullOf = (name: string, index: number): string =>
  index % 20 === 0 ? `É${name}` : index % 20 === 10 ? `9 ${name}` : name.toUpperCase();

const fileOf = (name: string): string => `${ROOT}/${name}.bowl`;
const noteOf = (name: string, index: number): string =>
  notesOf(name).replace(name.toUpperCase(), fullOf(name, index)) + (index % 7 === 0 ? '  bowl A 10 clay\n' : '');

type Files = Map<string, string>;

const begun = (files: Files): { readonly session: ReturnType<typeof openSession>; readonly drawing: Drawing } => {
  const [session, drawing] = [openSession(), startDrawing(ROOT)];
  for (const [path, text] of files) session.put(path, Buffer.from(text));
  drawing.take(session.settle(DAY), DAY);
  return { session, drawing };
};

const lists = (drawing: Drawing): readonly (string | undefined)[] => [drawing.page(INDEX), drawing.page(FINDINGS)];

describe('the lists of a large salon', () => {
  const files: Files = new Map([
    [`${ROOT}/shelf.bowl`, SHELF],
    ...names.map((name, index): [string, string] => [fileOf(name), noteOf(name, index)]),
  ]);
  const { session, drawing } = begun(files);

  const first = names[0] ?? '';
  const second = names[7] ?? '';
  test.each<[string, string, string | undefined]>([
    ['as they are begun', first, noteOf(first, 0)],
    ['a note more', first, `${noteOf(first, 0)}  note another\n`],
    ['another name', first, noteOf(first, 3)],
    ['a finding more', first, `${noteOf(first, 3)}  on 14:00 Q\n`],
    ['a finding less', second, notesOf(second)],
    ['a client goes', second, undefined],
    ['and only a visit names her', second, `visit 2026-09-04 ${second}\n`],
    ['a name given twice', first, `${noteOf(first, 0)}client ${names[1]} "Twice"\n`],
    ['a visit of today', first, `${noteOf(first, 0)}visit ${DAY} 10:00 ${first}\n`],
    ['a line of nobody', 'stray', 'bowl A 40 clay\n'],
  ])('are after a change what they are drawn anew: %s', (_what, name, text) => {
    if (text === undefined) files.delete(fileOf(name));
    else files.set(fileOf(name), text);
    session.put(fileOf(name), text === undefined ? undefined : Buffer.from(text));
    drawing.take(session.settle(DAY), DAY);
    expect(lists(drawing)).toEqual(lists(begun(files).drawing));
  });

  test('part the clients by letter, without accents, and lead to each', () => {
    const index = begun(files).drawing.page(INDEX) ?? '';
    const letters = [...index.matchAll(/<h3 id="([^"]+)">(.)<\/h3>/gu)].map(([, id, letter]) => [id, letter]);
    expect(letters.map(([, letter]) => letter).join('')).toBe('9BCDEFGHIJ');
    for (const [id, letter] of letters) expect(index).toContain(`<a href="#${id}">${letter}</a>`);
    expect(index.match(/<a href="clients\//g)?.length).toBeGreaterThanOrEqual(240);
  });
});

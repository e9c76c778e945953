import { describe, expect, test } from 'vitest';
import { CLIENTS, JOURNAL, read, SHELF, useProgram } from './program.ts';

const program = await useProgram();

const stub = (date: string): string => `visit ${date} wren-abbott by io at quay
  note planned on 2026-09-04: roots, bring a picture
  aim brighter at the front
  again A from 2026-09-04 A 80%
  place A hairline slice x2 gap 0 off-scalp 1cm foil
  leave crown "stands up"
`;

describe('rebook', () => {
  test('prints the next visit: its day, bowls at their share, aims and places', () => {
    const { code, out, err } = program.run(['rebook', 'wren-abbott'], { cwd: program.folder(JOURNAL) });
    expect([code, err]).toEqual([0, '']);
    expect(out).toBe(stub('2026-10-30'));
  });

  test('--append auto adds it to the file of the last visit, and it checks clean', () => {
    const cwd = program.folder(JOURNAL);
    const { code, out } = program.run(['rebook', 'Wren Abbott', '--append', 'auto'], { cwd });
    expect([code, out]).toEqual([0, 'clients.bowl:23  visit 2026-10-30 wren-abbott by io at quay\n']);
    expect(read(cwd, 'clients.bowl')).toBe(`${CLIENTS}\n${stub('2026-10-30')}`);
    expect(program.run(['check', '--only', 'stop,fix'], { cwd }).out).toMatch(/^No findings in 2 visits/);
  });

  test('--append FILE begins a new file; --on is the day', () => {
    const cwd = program.folder(JOURNAL);
    const words = ['rebook', 'wren-abbott', '--on', '2026-11-02', '--append', 'november.bowl'];
    expect(program.run(words, { cwd }).out).toBe('november.bowl:1  visit 2026-11-02 wren-abbott by io at quay\n');
    expect(read(cwd, 'november.bowl')).toBe(stub('2026-11-02'));
    expect(program.run(words, { cwd })).toMatchObject({
      code: 2,
      err: expect.stringContaining('a visit on 2026-11-02 already'),
    });
  });

  test('--append into a folder that is not there names the folder', () => {
    const cwd = program.folder(JOURNAL);
    expect(program.run(['rebook', 'wren-abbott', '--append', 'days/x.bowl'], { cwd })).toEqual({
      code: 2,
      out: '',
      err: '`days/x.bowl` cannot be written: the folder `days` is not there.\nMake the folder first.\n',
    });
  });

  test('adds to a file outside the paths too', () => {
    const cwd = program.folder({ ...JOURNAL, 'other.bowl': 'client x-one "X"\r\n' });
    program.run(['rebook', 'wren-abbott', 'salon.bowl', 'shelf.bowl', 'clients.bowl', '--append', 'other.bowl'], {
      cwd,
    });
    expect(read(cwd, 'other.bowl')).toBe(`client x-one "X"\r\n\r\n${stub('2026-10-30').replaceAll('\n', '\r\n')}`);
  });

  test('without a wish, bowls are at the share that the forecast comes to, in the words of the sheet', () => {
    const plain = CLIENTS.replace('roots, A -20%', 'roots');
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': plain });
    const { out } = program.run(['rebook', 'wren-abbott', '--append', 'auto'], { cwd });
    const added = read(cwd, 'clients.bowl').slice(plain.length);
    expect(out).toContain('visit 2026-10-30 wren-abbott');
    // 120 g less 14 left, and a tenth to spare while the notes tell nothing of other bowls.
    expect(added).toContain('  note bowl A: about 106 g (106 g used before), +10 % = 117 g\n');
    expect(added).toContain('  again A from 2026-09-04 A 97.5%\n');
    const { visits } = JSON.parse(program.run(['card', 'wren-abbott', '--json'], { cwd }).out);
    expect(visits.at(-1).bowls[0].total.value).toBe(117);
    const sheet = program.run(['prep', 'wren-abbott', '--on', '2026-10-30'], {
      cwd: program.folder({ ...JOURNAL, 'clients.bowl': plain }),
    });
    expect(sheet.out).toContain('about 106 g (106 g used before), +10 % = **117 g**');
  });

  test('bowls are those of the last visit that did what `next` asks for, as on the prep sheet', () => {
    const visits = `
visit 2026-06-04 otto-lund by io at quay
  bowl A 40 clay + 80 dev-6
  place A crown slice x4 off-scalp 1cm foil
  bowl B 30 tint + 30 dev-6
  place B roots apply
  charge foils 80.00
  charge root colour 40.00
visit 2026-07-16 otto-lund by nia at quay
  bowl A 25 tint + 25 dev-6
  place A roots apply
  charge root colour 40.00
  next 8w foils
visit 2026-08-01 otto-lund by nia at quay
  note came by for a fringe trim
`;
    const shelf = `${SHELF}product tint "Bay tint" permanent\n  mix 1:1\n`;
    const cwd = program.folder({ ...JOURNAL, 'shelf.bowl': shelf, 'clients.bowl': CLIENTS + visits });
    const { out } = program.run(['rebook', 'otto-lund'], { cwd });
    expect(out.replace(/ {2}note bowl .*\n/, '')).toBe(`visit 2026-09-10 otto-lund by nia at quay
  note planned on 2026-07-16: foils
  again A from 2026-06-04 A
  place A crown slice x4 off-scalp 1cm foil
`);
    expect(program.run(['prep', 'otto-lund', '--on', '2026-09-10'], { cwd }).out).toContain('foils as on 2026-06-04');
  });

  test('after a visit without colour the bowls are those before it', () => {
    const cwd = program.folder({
      ...JOURNAL,
      'clients.bowl': `${CLIENTS}\nvisit 2026-09-20 wren-abbott\n  note a fringe trim\n`,
    });
    expect(program.run(['rebook', 'wren-abbott'], { cwd }).out).toBe(stub('2026-10-30').replace(' by io at quay', ''));
  });

  test('a bowl without a weight is made again at the share that `next` asks for', () => {
    const notes = CLIENTS.replace(/bowl A .*/, 'bowl A clay + dev-6').replace(/ {2}left .*\n/, '');
    const again = (clients: string): string =>
      program.run(['rebook', 'wren-abbott'], { cwd: program.folder({ ...JOURNAL, 'clients.bowl': clients }) }).out;
    expect(again(notes)).toContain('again A from 2026-09-04 A 80%\n');
    expect(again(notes.replace(', A -20%', ''))).toContain('again A from 2026-09-04 A\n');
  });

  test('her own rhythm gives the day too', () => {
    const visits = ['2026-07-22', '2026-09-02', '2026-10-14'].map(
      (date) => `visit ${date} otto-lund\n  bowl A 40 clay + 80 dev-6\n`,
    );
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': `${CLIENTS}\n${visits.join('')}` });
    expect(program.run(['rebook', 'otto-lund'], { cwd }).out).toMatch(/^visit 2026-11-25 otto-lund\n/);
  });

  test('a `next` with a day and a time', () => {
    const dated = CLIENTS.replace(/next .*/, 'next 2026-12-19 14:00 foils');
    const { out } = program.run(['rebook', 'wren-abbott'], {
      cwd: program.folder({ ...JOURNAL, 'clients.bowl': dated }),
    });
    expect(out).toMatch(/^visit 2026-12-19 14:00 wren-abbott by io at quay\n {2}note planned on 2026-09-04: foils\n/);
    expect(out).toContain('again A from 2026-09-04 A 97.5%\n');
  });

  test('without a `next` the day is asked for; without a visit too', () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': CLIENTS.replace(/ {2}next .*\n/, '') });
    expect(program.run(['rebook', 'wren-abbott'], { cwd })).toMatchObject({
      code: 2,
      err: 'The last visit of Wren Abbott, 2026-09-04, has no `next` with a date or a length.\nGive the day, as in `--on 2026-10-30`.\n',
    });
    expect(program.run(['rebook', 'otto'], { cwd }).err).toContain('Otto Lund has no visit to go by.');
  });
});

describe('a client is found by name, full name or part', () => {
  test.each(['WREN-ABBOTT', 'wren abbott', 'abb'])('%s', (name) => {
    expect(program.run(['rebook', name], { cwd: program.folder(JOURNAL) }).out).toBe(stub('2026-10-30'));
  });

  test('several are listed, near ones are offered', () => {
    const cwd = program.folder(JOURNAL);
    expect(program.run(['rebook', 'wren'], { cwd })).toMatchObject({
      code: 2,
      err: '2 clients fit `wren`: `wren-abbott` (Wren Abbott), `wren-tarn` (Wren Tarn).\nWrite the whole name of one.\n',
    });
    expect(program.run(['rebook', 'oto-lund'], { cwd }).err).toBe(
      'No client goes by `oto-lund` in these notes.\nNear names: `otto-lund`.\n',
    );
    expect(program.run(['rebook', 'abott'], { cwd }).err).toContain('Near names: `wren-abbott`.');
    expect(program.run(['rebook', ''], { cwd }).code).toBe(2);
  });
});

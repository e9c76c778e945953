import { describe, expect, test } from 'vitest';
import { JOURNAL, useProgram } from './program.ts';

const program = await useProgram();

describe('mix with no journal', () => {
  test('solves a ratio', () => {
    const { code, out, err } = program.run(['mix', '40 clay + 20vol 1:2']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toBe(`Bowl A
   40 g  clay
   80 g  6 % developer  6 % (20 vol)
  120 g  in all         1:2, 4.0 % ready for use
`);
  });

  test('solves parts and a total, and two strengths made into one', () => {
    expect(program.run(['mix', '90 g of 2p cream 7/0 + 1p cream 7/43 + 6% 1:1']).out).toMatch(
      /30 g {2}cream 7\/0 *\n +15 g {2}cream 7\/43 *\n +45 g/,
    );
    expect(program.run(['mix', '30 clay + 7.5% from dev-6 dev-9 1:2']).out).toMatch(
      /30 g {2}dev-6 .*\n +30 g {2}dev-9/,
    );
  });

  test('takes the words of the shell as they come, with or without the bowl’s name', () => {
    const plain = program.run(['mix', '40 clay + 20vol 1:2']);
    expect(program.run(['mix', '40', 'clay', '+', '20vol', '1:2'])).toEqual(plain);
    expect(program.run(['mix', 'bowl A 40 clay + 20vol 1:2'])).toEqual(plain);
    expect(program.run(['mix', 'A 40 clay + 20vol 1:2'])).toEqual(plain);
  });

  test('two facts that disagree are shown over the text as typed: exit 1', () => {
    const { code, err } = program.run(['mix', '40 clay + 80 dev-6 1:1.5']);
    expect(code).toBe(1);
    expect(err).toMatch(/^\n1:\d+ fix bowl-disagrees {2}.*20 g/);
    expect(err).toContain('     1  40 clay + 80 dev-6 1:1.5\n');
  });

  test('what cannot be read points at its characters in the argument', () => {
    const { code, err } = program.run(['mix', '1.000 clay + 20vol 1:2']);
    expect(code).toBe(1);
    expect(err).toContain('1:1 fix two-readings');
    expect(err).toContain('     1  1.000 clay + 20vol 1:2\n        ^^^^^');
  });

  test('what is not known is said, not left blank', () => {
    const { code, out } = program.run(['mix', 'clay + 20vol 1:2']);
    expect([code, out]).toEqual([
      1,
      'Bowl A\n  not known  clay\n  not known  6 % developer  6 % (20 vol)\n  not known  in all\n',
    ]);
    expect(program.run(['mix', '40 clay']).out).toBe('Bowl A\n  40 g  clay\n  40 g  in all\n');
    expect(program.run(['mix', ' '])).toMatchObject({ code: 2, err: expect.stringContaining('The bowl is empty.') });
  });

  test('what is typed after the developer and its ratio stands outside it, and is said to', () => {
    const { code, out } = program.run(['mix', '30 clay + 20vol 1:2 + 3 bond']);
    expect(code).toBe(0);
    expect(out).toContain('  60 g  6 % developer');
    expect(out).toMatch(/^ +3 g {2}bond +outside the ratio$/m);
    expect(out).toMatch(/^ +93 g {2}in all +1:2, /m);
  });

  test('rounding to the scales is said, and --scale sets them', () => {
    const whole = program.run(['mix', '10.5 clay + 20vol 1:2']).out;
    expect(whole).toMatch(/11 g {2}clay/);
    expect(whole).toContain('Typed: 10.5 g clay. The scales show steps of 1 g (`--scale 0.1` for finer ones).');
    const fine = program.run(['mix', '10.5 clay + 20vol 1:2', '--scale', '0.1']).out;
    expect(fine).toMatch(/10\.5 g {2}clay/);
    expect(fine).not.toContain('Typed:');
    expect(program.run(['mix', '40 clay', '--scale', 'fine'])).toMatchObject({ code: 2 });
  });

  test('--json gives rounded and exact figures', () => {
    const { code, out } = program.run(['mix', '10 clay + 5 bond + 20vol 1:1.5', '--json']);
    const { bowl, findings } = JSON.parse(out);
    expect([code, findings]).toEqual([0, []]);
    expect(bowl).toMatchObject({ name: 'A', ratio: { value: 1.5, exact: '3/2' } });
    expect(bowl.portions[0]).toMatchObject({ label: 'clay', grams: { value: 10, exact: '10' }, typed: true });
  });
});

describe('mix on a shelf', () => {
  test('goes by the shelf of the current folder and says so; --no-shelf leaves it out', () => {
    const cwd = program.folder(JOURNAL);
    const { code, out } = program.run(['mix', '40 clay + 20vol'], { cwd });
    expect(code).toBe(0);
    expect(out).toContain('80 g  dev-6');
    expect(out).toContain('\n\nProducts cost 2.51 GBP.\n');
    expect(out).toContain('\n\nBy the shelf of this folder: 2 products (`--no-shelf` leaves it out).\n');
    const bare = program.run(['mix', '40 clay + 20vol 1:2', '--no-shelf'], { cwd });
    expect(bare).toEqual(program.run(['mix', '40 clay + 20vol 1:2']));
  });

  test('goes by its ratios and judges by its rules', () => {
    const cwd = program.folder(JOURNAL);
    const { code, out } = program.run(['mix', '40 clay + 20vol', '--shelf', 'shelf.bowl'], { cwd });
    expect(code).toBe(0);
    expect(out).toContain('80 g  dev-6');
    const thin = program.run(['mix', '40 clay + 20vol 1:3', '--shelf', 'shelf.bowl'], { cwd });
    expect(thin.code).toBe(1);
    expect(thin.err).toContain('fix ratio-off-mix');
    const unknown = program.run(['mix', '40 caly + 20vol 1:2', '--shelf', 'shelf.bowl'], { cwd });
    expect(unknown.err).toContain('1:4 fix unknown-name');
  });
});

import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'merge-conflict',
  family: 'reading',
  severity: 'stop',
  bears: 'always',
  over: 'reading',
  what: 'The marks of a merge stand in the notes, with two versions between them.',
  why: 'Two versions of the same lines stand side by side, and neither can be trusted.',
  source: { kind: 'notation' },
  bad: `
    client wren-abbott "Wren Abbott"
    <<<<<<< mine
    ^^^^^^^^^^^^
      natural 6
    =======
      natural 7
    >>>>>>> theirs`,
  good: `
    client wren-abbott "Wren Abbott"
      natural 6`,
});

import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { codeSpan, escapeSaid, escapeText, shownText } from '../../src/pages/escape.ts';

const markdown = new MarkdownIt({ html: false, linkify: false });

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };

/** The text content of rendered HTML: tags out, entities back. */
const contentOf = (html: string): string =>
  html.replace(/<[^>]*>/g, '').replace(/&(amp|lt|gt|quot);/g, (_, name: string) => ENTITIES[name] ?? '');

const HOSTILE = [
  '</title><script>alert(1)</script>',
  '*not* _emphasis_ ~~struck~~ **bold**',
  '[a](javascript:alert(1)) ![b](http://c/d.png)',
  '<b>|</b> &lt; &amp; &#60; &copy',
  '# heading #',
  '## ',
  '- item',
  '+ item',
  '> quote',
  '=== ',
  '--- | ---',
  '1. first',
  '2) second',
  '```',
  '~~~ js',
  'a `code` b',
  'back\\slash\\',
  'https://example.org/?a=b&c=d www.example.org',
  '::: box',
  '| a | b |',
];

const anyText = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.string({ unit: fc.constantFrom(...'`*_[]()<>|~#-+=.!&\\ \t12ab;:"\'é') }),
  fc.constantFrom(...HOSTILE),
);

const PLACES: readonly [string, (text: string) => string][] = [
  ['a paragraph', (text) => text],
  ['a list item', (text) => `- ${text}`],
  ['a heading', (text) => `## ${text}`],
  ['a table cell', (text) => `| ¶ |\n|---|\n| ${text} |\n`],
];

describe('escapeText', () => {
  for (const [place, put] of PLACES) {
    it(`shows any text as that text in ${place}`, () => {
      fc.assert(
        fc.property(anyText, (text) => {
          const html = markdown.render(put(`x${escapeText(text)}x`));
          expect(shownText(contentOf(html)).replace(/^¶ ?/, '')).toBe(`x${shownText(text)}x`);
        }),
        { numRuns: 400 },
      );
    });

    it(`opens nothing at the start of ${place}`, () => {
      fc.assert(
        fc.property(anyText, (text) => {
          fc.pre(shownText(text) !== '');
          const html = markdown.render(put(escapeText(text)));
          expect(shownText(contentOf(html)).replace(/^¶ ?/, '')).toBe(shownText(text));
          const tags = [...html.matchAll(/<([a-z0-9]+)/g)].map(([, tag]) => tag);
          const plain = [...markdown.render(put('x')).matchAll(/<([a-z0-9]+)/g)].map(([, tag]) => tag);
          expect(tags).toEqual(plain);
        }),
        { numRuns: 400 },
      );
    });
  }

  it('leaves plain prose as it is', () => {
    expect(escapeText('soft at the root, 9.5 by May (see photo #3)')).toBe(
      'soft at the root, 9.5 by May (see photo \\#3)',
    );
  });

  it('shows a mark that turns the direction of the text as unknown', () => {
    expect(escapeText('Io\u202eoI')).toBe('Io\ufffdoI');
  });
});

describe('codeSpan', () => {
  it('keeps any one line exactly, backquotes and spaces too', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const line = text.replace(/[\r\n\u0085\u2028\u2029]/g, ' ');
        fc.pre(
          line.trim() !== '' && !/(?!\t)\p{Cc}/u.test(line) && shownText(line) === line.replace(/\s+/g, ' ').trim(),
        );
        const html = markdown.renderInline(`x${codeSpan(line)}x`);
        expect(html.startsWith('x<code>') && html.endsWith('</code>x')).toBe(true);
        expect(contentOf(html)).toBe(`x${line}x`);
      }),
      { numRuns: 400 },
    );
  });
});

describe('escapeSaid', () => {
  it('shows what stands between backquotes as code and keeps the words around it', () => {
    expect(markdown.renderInline(escapeSaid('`caly` is not on the shelf; near: `clay`, <b>.'))).toBe(
      '<code>caly</code> is not on the shelf; near: <code>clay</code>, &lt;b&gt;.',
    );
  });

  it('shows a lone backquote as text', () => {
    expect(contentOf(markdown.renderInline(escapeSaid('a ` b')))).toBe('a ` b');
  });
});

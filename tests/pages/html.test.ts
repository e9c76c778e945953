import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeText } from '../../src/pages/escape.ts';
import { pageHtml } from '../../src/pages/html.ts';

const page = (markdown: string, title = 'Ada Lowe'): string => pageHtml({ title, markdown });
const main = (markdown: string): string => /<main>\n([\s\S]*)<\/main>/.exec(page(markdown))?.[1] ?? '';

describe('pageHtml', () => {
  it('is a whole document with a title, a language, a header and a main part', () => {
    const html = page('# Ada\n\nborn 1990\n\n## Tests\n\nnone\n', 'Ada <Lowe> & "co"');
    expect(html.startsWith('<!doctype html>\n<html lang="en-GB">')).toBe(true);
    expect(html).toContain('<title>Ada &lt;Lowe&gt; &amp; &quot;co&quot;</title>');
    expect(html).toMatch(/<header>\n<h1 id="ada">Ada<\/h1>\n<p>born 1990<\/p>\n<\/header>/);
    expect(html.match(/<h1/g)).toHaveLength(1);
  });

  it('lets nothing run or load but its own style sheet, which it names by its hash', () => {
    const html = page('# Ada\n');
    const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1] ?? '';
    const hash = createHash('sha256').update(style).digest('base64');
    expect(html).toContain(`content="default-src 'none'; style-src 'sha256-${hash}';`);
    expect(html).not.toMatch(/<script|<link|@import|url\(|https?:|style="/);
  });

  it('holds a table of all clients of a large salon', () => {
    const rows = Array.from({ length: 20_000 }, (_, row) => `| ${row} | b | c | d | e |`);
    const html = main(`## Clients\n\n| A | B | C | D | E |\n| --- | --- | --- | --- | --- |\n${rows.join('\n')}\n`);
    expect(html.match(/scope="row"/g)).toHaveLength(20_000);
  });

  it('puts a bold line above a table into the table as its caption', () => {
    const html = main('## Mix\n\n**Bowl A** · 120 g\n\n| What | Grams |\n| --- | ---: |\n| clay | 40 |\n');
    expect(html).toContain('<caption><strong>Bowl A</strong> · <span class="whole">120 g</span></caption>');
    expect(html).not.toContain('<p>');
  });

  it('gives table headings a scope, the first cell of a row too, and figures a class in place of a style', () => {
    const html = main('## Mix\n\n| What | Grams |\n| --- | ---: |\n| clay | 40 |\n');
    expect(html).toContain('<th scope="col" role="columnheader">What</th>');
    expect(html).toContain('<th scope="col" role="columnheader" class="figures">Grams</th>');
    expect(html).toContain('<th role="rowheader" scope="row">clay</th>');
    expect(html).toMatch(/<td [^>]*class="figures">40<\/td>/);
    expect(html).not.toContain('class="folds"');
  });

  it('says the column beside each cell of a wide table, for windows that fold it', () => {
    const html = main('## Times\n\n| A | B "x" | C | D |\n| --- | --- | --- | --- |\n| 1 | 2 | 3 | 4 |\n');
    expect(html).toContain('<table role="table" class="folds">');
    expect(html).toContain('data-head="B &quot;x&quot;"');
    expect(main('## T\n\n| A | B | C |\n| --- | --- | --- |\n| 1 | 2 | 3 |\n')).toContain('class="folds"');
    expect(main('## T\n\n| A | B | C |\n| --- | ---: | --- |\n| 1 | 2 | 3 |\n')).not.toContain('class="folds"');
  });

  it('makes a list of terms from items that begin in bold, equal terms once', () => {
    const html = main('## Hair\n\n- **Placed** A top\n- **Placed** B `x` nape\n- **Left out** crown\n');
    expect(html.replace(/\n/g, '')).toContain(
      '<dl><div><dt>Placed</dt><dd>A top</dd><dd>B <code>x</code> nape</dd></div><div><dt>Left out</dt><dd>crown</dd></div></dl>',
    );
  });

  it('leaves any other list a list', () => {
    expect(main('## Hair\n\n- **a** b\n- c\n')).toContain('<ul>');
  });

  it('names its sections by their headings, and links to the parts where there are three or more', () => {
    const parts = ['2026-09-04, Friday', '2026-07-10, Friday', '2026-07-10, Friday, 15:00'];
    const html = main(`## Visits\n\n${parts.map((part) => `### ${part}\n\nx\n`).join('\n')}`);
    expect(html).toContain('<section class="visits" aria-labelledby="visits">');
    expect(html).toContain('<nav aria-label="Visits">');
    for (const id of ['day-2026-09-04', 'day-2026-07-10', 'day-2026-07-10-2']) {
      expect(html).toContain(`<a href="#${id}">`);
      expect(html).toContain(`<h3 id="${id}">`);
      expect(html).toContain(`<section class="part" aria-labelledby="${id}">`);
    }
    expect(main(`## Visits\n\n### ${parts[0]}\n\nx\n`)).not.toContain('<nav');
  });

  it('marks the alerts by more than colour: a section of its own under a heading', () => {
    expect(main('## Before touching the hair\n\n- **Allergy** nickel\n')).toContain(
      '<section class="alerts" aria-labelledby="before-touching-the-hair">',
    );
  });

  it('keeps every tag of any text out of the page', () => {
    const tags = (html: string): string[] => html.match(/<[a-z/!][^\s>]*/gi) ?? [];
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: fc.constantFrom(...'<>&"\'/=script img') })),
        (text) => {
          const put = (one: string): string =>
            pageHtml({ title: one, markdown: `# x${escapeText(one)}\n\n## Hair\n\n- **Note** x${escapeText(one)}\n` });
          expect(tags(put(text)).filter((tag) => !/^<\/?span/.test(tag))).toEqual(tags(put('')));
        },
      ),
      { numRuns: 300 },
    );
  });
});

import { describe, expect, it } from 'vitest';
import { codeSpan, escapeText } from '../../../src/pages/escape.ts';
import { FIGURE_WORD, figureSheet, noFigures } from '../../../src/pages/figures/sheet.ts';
import { pageHtml } from '../../../src/pages/html.ts';

const page = (markdown: string, figures: readonly string[]): string => pageHtml({ title: 'x', markdown, figures });

describe('a sheet of figures', () => {
  it('keeps the figures beside the Markdown and puts each where its block stands', () => {
    const { sheet, figures } = figureSheet();
    const blocks = [
      '# A',
      '## B',
      ...sheet([(id) => `<svg class="${id}"/>`]),
      'after',
      ...sheet([(id) => `<svg class="${id}"/>`]),
    ];
    expect(figures).toEqual(['<svg class="figure-1"/>', '<svg class="figure-2"/>']);
    expect(page(blocks.join('\n\n'), figures)).toMatch(
      /<svg class="figure-1"\/><p>after<\/p>\s*<svg class="figure-2"\/>/,
    );
  });

  it('sets figures of one block beside each other, and leaves out what is not drawn', () => {
    const { sheet, figures } = figureSheet();
    const both = sheet([() => '<svg/>', () => undefined, () => '<svg/>']);
    expect(page(both.join(''), figures)).toContain('<div class="beside"><svg/><svg/></div>');
    expect(sheet([() => undefined])).toEqual([]);
  });

  it('draws a part again whose words are the same and whose figure is another', () => {
    const rendered = new Map();
    const drawn = (of: string): string => {
      const { sheet, figures } = figureSheet();
      const markdown = ['# A', '## B', ...sheet([() => `<svg>${of}</svg>`]), '## C', 'after'].join('\n\n');
      const html = pageHtml({ title: 'x', markdown, figures, rendered });
      expect(html).toBe(page(markdown, figures));
      return html;
    };
    expect(drawn('one')).toContain('<svg>one</svg>');
    expect(drawn('two')).toContain('<svg>two</svg>');
    const [, , last] = [...rendered.values()];
    drawn('three');
    expect([...rendered.values()][2]).toBe(last);
  });

  it('has no block on a page of text alone', () => {
    expect(noFigures([() => '<svg/>'])).toEqual([]);
  });

  it('cannot be reached by what a note says', () => {
    const forged = `\`\`\`${FIGURE_WORD}\n0\n\`\`\``;
    for (const text of [escapeText(forged), `- ${escapeText(forged)}`, codeSpan(forged), `- ${codeSpan(forged)}`])
      expect(page(`# A\n\n${text}\n`, ['<svg/>'])).not.toContain('<svg/>');
  });

  it('leaves any other block of code as it is', () => {
    expect(page('```note\n0\n```', ['<svg/>'])).toContain('<pre><code class="language-note">0');
    expect(page(`\`\`\`${FIGURE_WORD}\n7 x __proto__\n\`\`\``, ['<svg/>'])).not.toContain('<svg/>');
  });
});

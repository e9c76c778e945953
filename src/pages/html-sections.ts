import { FOLDED_HEADINGS, FOLDED_PARTS, SECTION_CLASSES } from './headings.ts';
import type { Section } from './html-blocks.ts';
import { htmlText } from './html-text.ts';

/** Fewer parts than this need no list of links. */
const FEWEST_LINKED = 3;

const linksTo = ({ title }: Section, parts: readonly Section[]): string => {
  if (parts.length < FEWEST_LINKED) return '';
  const links = parts.map((part) => `<li><a href="#${part.id}">${htmlText(part.title)}</a></li>`).join('\n');
  return `<nav aria-label="${htmlText(title)}">\n<ul>\n${links}\n</ul>\n</nav>\n`;
};

const opening = (id: string, kind: string | undefined, named: boolean): string =>
  `<section${kind === undefined ? '' : ` class="${kind}"`}${named ? ` aria-labelledby="${id}"` : ''}>\n`;

/** A section that is read when it is wanted, folded up under its heading; a heading and blocks of our own. */
const folded = (html: string): string => {
  const end = (/<\/h[23]>/.exec(html)?.index ?? 0) + '</h2>'.length;
  return `<details>\n<summary>${html.slice(0, end)}</summary>\n${html.slice(end).trimStart()}</details>\n`;
};

/**
 * Sections of level two with those of level three inside them, and links to the parts where there are several. Where
 * several sheets stand on one page their sections have equal names, so none of them is a landmark.
 */
export const nested = (sections: readonly Section[]): string => {
  const named = sections.every(({ level }) => level > 1);
  const out: string[] = [];
  for (let index = 0; index < sections.length; ) {
    const section = sections[index] as Section;
    const from = index + 1;
    for (index = from; (sections[index]?.level ?? 0) > 2; ) index += 1;
    if (section.level > 2) continue;
    const parts = sections.slice(from, index);
    out.push(
      opening(section.id, SECTION_CLASSES.get(section.title), named),
      FOLDED_HEADINGS.has(section.title) ? folded(section.html) : section.html,
      linksTo(section, parts),
      ...parts.map(
        ({ id, html }) =>
          `${opening(id, 'part', named)}${FOLDED_PARTS.has(section.title) ? folded(html) : html}</section>\n`,
      ),
      '</section>\n',
    );
  }
  return out.join('');
};

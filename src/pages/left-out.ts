import { escapeText } from './escape.ts';
import { commas } from './noted.ts';

/** A client at whose notes the program failed: what is named of her on a page that has to do without her. */
export type LeftOut = { readonly full: string };

/** The sentence that names them, in plain text; none for nobody. */
export const leftOutText = (clients: readonly LeftOut[], shown: (full: string) => string): string | undefined => {
  if (clients.length === 0) return undefined;
  const names = commas(clients.map(({ full }) => shown(full)));
  const [are, whose] = clients.length === 1 ? ['is', 'her'] : ['are', 'their'];
  return `${names} ${are} left out here, and no sum counts ${clients.length === 1 ? 'her' : 'them'}: the program failed at ${whose} notes.`;
};

/** A page's Markdown with the clients who are left out of it named right under its title, beside whatever it sums. */
export const withLeftOut = (markdown: string, clients: readonly LeftOut[]): string => {
  const text = leftOutText(clients, escapeText);
  if (text === undefined) return markdown;
  const block = `**${text}**`;
  const [title = ''] = /^# [^\n]*\n\n?/.exec(markdown) ?? [];
  return title === '' ? `${block}\n\n${markdown}` : `${title.trimEnd()}\n\n${block}\n\n${markdown.slice(title.length)}`;
};

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as HTML, for content and for attributes in either quotation marks. */
export const htmlText = (text: string): string =>
  /[&<>"']/.test(text) ? text.replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? '') : text;

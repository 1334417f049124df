/** Characters that no XML may hold (XML 1.0, production 2). */
const notXml = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

/** A text as XML can hold it: a single character that it cannot in a name, and no picture could be read; each becomes U+FFFD. */
export function xmlText(text: string): string {
  return text.replaceAll(notXml, '\uFFFD');
}

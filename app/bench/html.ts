import { xmlText } from '../../lib/charts/xmlText';

/** Text that is HTML: made by the functions below only, which escape whatever they are given. */
export type Html = string & { readonly html: unique symbol };

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const withoutContent = ['meta', 'br'];

/** A text of any content, escaped. */
export function text(content: string): Html {
  return xmlText(content).replaceAll(/[&<>"']/g, (letter) => entities[letter] ?? letter) as Html;
}

/** An element with its attributes, whose values are escaped, and its content. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string>>,
  ...content: readonly Html[]
): Html {
  const given = Object.entries(attributes).map(([key, value]) => ` ${key}="${text(value)}"`);
  const open = `<${name}${given.join('')}>`;
  return (withoutContent.includes(name) ? open : `${open}${content.join('')}</${name}>`) as Html;
}

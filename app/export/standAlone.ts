import { xmlText } from '../../lib/charts/xmlText';
import type { PictureWords } from './savedPicture';

const namespace = 'http://www.w3.org/2000/svg';

/**
 * A drawn picture that stands alone as a file: it says what it is and what it shows, leads nowhere and runs nothing. Its
 * colours, paper and font are in it as they were drawn.
 */
export function standAlone(svg: string, { title, description }: PictureWords): string {
  const picture = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  for (const link of picture.querySelectorAll('a')) link.replaceWith(...link.childNodes);
  for (const script of picture.querySelectorAll('script, foreignObject')) script.remove();
  const says = (name: 'title' | 'desc', text: string) => {
    const element = picture.ownerDocument.createElementNS(namespace, name);
    element.id = `picture-${name}`;
    element.textContent = xmlText(text);
    return element;
  };
  picture.prepend(says('title', title), says('desc', description));
  picture.setAttribute('role', 'img');
  picture.setAttribute('aria-labelledby', 'picture-title');
  picture.setAttribute('aria-describedby', 'picture-desc');
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(picture)}\n`;
}

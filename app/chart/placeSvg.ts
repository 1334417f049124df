/**
 * Puts a drawn picture into its box: text only, nothing in it can run. What a mark says of itself is its hint when pointed
 * at, and a mark that stands for something, such as a unit, carries it as data-pick.
 */
export function placeSvg(box: HTMLElement, svg: string): void {
  const picture = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  picture.setAttribute('aria-hidden', 'true');
  for (const link of picture.querySelectorAll('a')) {
    const address = link.getAttribute('xlink:href') ?? link.getAttribute('href') ?? '';
    link.removeAttribute('xlink:href');
    link.removeAttribute('href');
    link.setAttribute('data-pick', decodeURIComponent(address.replace(/^#/, '')));
  }
  for (const mark of picture.querySelectorAll('[role]')) mark.removeAttribute('role');
  box.replaceChildren(document.adoptNode(picture));
}

/** What the mark under the pointer stands for, or null. */
export function pickedAt(target: EventTarget | null): string | null {
  return target instanceof Element
    ? (target.closest('[data-pick]')?.getAttribute('data-pick') ?? null)
    : null;
}

/** What the mark under the pointer says, or null; what an axis says of itself is no finding. */
export function hintAt(target: EventTarget | null): string | null {
  return target instanceof Element
    ? (target.closest('.role-mark [aria-label]')?.getAttribute('aria-label') ?? null)
    : null;
}

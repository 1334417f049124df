import axe from 'axe-core';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds in an element; contrast and what needs a laid-out page are for the browser tests. */
export async function accessFaults(element: Element): Promise<readonly string[]> {
  const { violations } = await axe.run(element, {
    runOnly: { type: 'tag', values: tags },
    rules: { 'color-contrast': { enabled: false }, region: { enabled: false } },
  });
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

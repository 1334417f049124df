// @vitest-environment happy-dom
import { act } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { Later } from '../../../app/frame/Later';
import { mounted } from '../mounted';

const now = mounted();

/** What stood in the box at each time it was changed. */
function seen(after: number): readonly string[] {
  const texts: string[] = [];
  const observe = (element: HTMLElement | null) => {
    if (element !== null) texts.push(element.textContent ?? '');
  };
  act(() =>
    now.root.render(
      <div ref={observe}>
        <p>Picture</p>
        <Later after={after}>
          <p ref={() => void texts.push(now.box.textContent ?? '')}>Table</p>
        </Later>
      </div>,
    ),
  );
  return texts;
}

test('what follows many rows comes after them, with its room kept until then; what follows few comes with them', () => {
  expect(seen(1_000)).toEqual(['Picture', 'PictureTable']);
  expect(now.box.textContent).toBe('PictureTable');
  expect(renderToStaticMarkup(<Later after={1_000}>Table</Later>)).toBe('<div class="roomForTable"></div>');
  expect(renderToStaticMarkup(<Later after={5}>Table</Later>)).toBe('Table');
});

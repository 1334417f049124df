import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { Prose } from '../../app/frame/Prose';

/** The pieces of a sentence that stay on one line. */
function kept(text: string): readonly string[] {
  const markup = renderToStaticMarkup(<Prose text={text} />);
  return [...markup.matchAll(/<span class="unbroken">(.*?)<\/span>/g)].map(([, piece]) => piece ?? '');
}

test('dates, serials and codes of parts stay on one line; words with a hyphen may break', () => {
  expect(kept('1 of GS-H (Gasket set) by 2026-12-02 for O-3005; a sister-informed band')).toEqual([
    'GS-H',
    '2026-12-02',
    'O-3005;',
  ]);
  expect(kept('as left after a re-read')).toEqual([]);
});

// @vitest-environment happy-dom
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import PageError from '../../app/error';

function shown(error: Error): HTMLElement {
  const box = document.createElement('main');
  box.innerHTML = renderToStaticMarkup(<PageError error={error} reset={() => {}} />);
  return box;
}
const buttons = (box: HTMLElement) => [...box.querySelectorAll('button')].map((one) => one.textContent);

test('a part of a page that did not come is named, with what to do', () => {
  const error = Object.assign(new Error('Failed to load chunk /_next/static/chunks/12ab.js from module 5'), {
    name: 'ChunkLoadError',
  });
  const box = shown(error);
  expect(box.querySelector('h1')?.textContent).toBe('This page did not come as a whole');
  expect(box.textContent).toContain('could not be loaded: /_next/static/chunks/12ab.js.');
  expect(box.textContent).toContain('Check the connection, then load the page again.');
  expect(buttons(box)).toEqual(['Load the page again']);
});

test('any other fault is told with its own words, and tried again in place', () => {
  const box = shown(new Error('a chunk of text is missing'));
  expect(box.textContent).toContain('A fault in the page itself stopped it: a chunk of text is missing.');
  expect(buttons(box)).toEqual(['Try again']);
  expect(box.querySelector('a')?.getAttribute('href')).toMatch(/^\/records\/?$/);
});

import { expect, test } from 'vitest';
import { drawSvg } from '../../lib/charts/drawSvg';
import { lighterSvg } from '../../lib/charts/lighterSvg';
import type { LayeredSpec } from '../../lib/charts/theme';
import { schema } from '../../lib/charts/theme';

const rows = Array.from({ length: 40 }, (_, index) => ({
  from: index % 8,
  to: (index % 8) + 1,
  row: `R-${Math.floor(index / 8)}.0456 & <b>`,
  shade: index % 3,
}));
const y = { field: 'row', type: 'nominal' as const, axis: null };
const spec: LayeredSpec = {
  $schema: schema,
  width: 401,
  height: 120,
  datasets: { rows },
  layer: [
    {
      data: { name: 'rows' },
      mark: 'rect',
      encoding: {
        y,
        x: { field: 'from', type: 'quantitative' },
        x2: { field: 'to' },
        color: {
          field: 'shade',
          type: 'nominal',
          scale: { range: ['var(--a)', 'var(--b)', 'var(--c)'] },
          legend: null,
        },
      },
    },
    {
      data: { name: 'rows' },
      mark: { type: 'point', shape: 'M-1,-1L1,1', stroke: '#123' },
      encoding: { y, x: { field: 'from', type: 'quantitative' } },
    },
    { data: { name: 'rows' }, mark: { type: 'rect', opacity: 0 }, encoding: { y, href: { field: 'row' } } },
    { data: { name: 'rows' }, mark: { type: 'text' }, encoding: { y, text: { field: 'row' } } },
  ],
};

/** Every shape with its colours and where it begins, to a tenth of a pixel: what is seen. */
function shapesOf(svg: string): readonly string[] {
  const paths = [...svg.matchAll(/<path ([^>]*)\/>/g)].flatMap(([, text = '']) => {
    const of = (name: string) => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(text)?.[1] ?? '';
    if (of('opacity') === '0') return [];
    const [, left = '0', top = '0'] = /translate\(([^,]*),([^)]*)\)/.exec(of('transform')) ?? [];
    return of('d')
      .split(/(?=M)/)
      .filter((part) => part !== '')
      .map((part) => {
        const points = part.replace(
          /([ML])([^,]*),([-\d.e]+)/g,
          (_, kind, x, y2) => `${kind}${tenth(Number(x) + Number(left))},${tenth(Number(y2) + Number(top))}`,
        );
        const rounded = points.replace(/[hv](-?[\d.e-]+)/g, (step, by) => `${step[0]}${tenth(Number(by))}`);
        return [of('fill'), of('stroke'), of('stroke-width'), rounded].join(' ');
      });
  });
  return paths.sort();
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10 + 0;
}

test('shows every shape in its place and colour, and every text, with a fraction of the elements', async () => {
  const svg = await drawSvg(spec);
  const light = lighterSvg(svg);
  expect(shapesOf(svg).length).toBeGreaterThan(80);
  expect(shapesOf(light)).toEqual(shapesOf(svg));
  const texts = (text: string) => [...text.matchAll(/<text[^>]*>([^<]*)/g)].map(([, words]) => words);
  expect(texts(light)).toEqual(texts(svg));
  expect(texts(light)).toContain('R-0.0456 &amp; &lt;b&gt;');
  const count = (text: string) => text.match(/<path/g)?.length ?? 0;
  expect(count(light) * 5).toBeLessThan(count(svg));
  expect(light).not.toMatch(/href|role=|<a[ >]/);
});

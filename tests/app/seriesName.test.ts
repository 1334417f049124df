import { expect, it } from 'vitest';
import { seriesName } from '../../app/words/seriesName';
import { fleet } from './fixture';

it('names are those of the characteristics asked about, however often others were asked about before', () => {
  const { characteristics } = fleet();
  const renamed = characteristics.map((one) => ({ ...one, name: `Own ${one.name}` }));
  const names = (of: typeof characteristics) => of.map(({ code }) => seriesName(code, of));
  const first = names(characteristics);
  expect(names(renamed)).toEqual(first.map((name) => `Own ${name}`));
  expect(names(characteristics)).toEqual(first);
  expect(seriesName('tip_compressor_smallest', characteristics)).toMatch(/, smallest$/);
});

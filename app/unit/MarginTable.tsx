import { useId } from 'react';
import type { MarginRow } from '../../lib/analysis/types';
import {
  formatChance,
  formatDate,
  formatHours,
  formatLevel,
  formatMm,
  formatRate,
} from '../../lib/charts/format';
import { ScrollBox } from '../table/ScrollBox';
import { Written } from '../table/Written';
import { expectedRange, marginRemark, pointText } from '../words/marginWords';
import { capitalised } from '../words/seriesName';

interface Quantity {
  readonly name: string;
  readonly text: (margin: MarginRow) => string | null;
  readonly reason?: string;
}

const quantities: readonly Quantity[] = [
  { name: 'Source of the limit', text: (margin) => margin.limitSource, reason: 'not given in the data' },
  { name: 'Run hours', text: (margin) => formatHours(margin.runHours) },
  { name: 'Level ± SD', text: (margin) => formatLevel(margin.level_mm, margin.levelSd_mm) },
  { name: 'Slope ± SD', text: (margin) => formatRate(margin.slope_mm_per_10kh, margin.slopeSd_mm_per_10kh) },
  { name: 'Margin', text: (margin) => formatMm(margin.margin_mm, margin.levelSd_mm) },
  { name: 'Chance of being past it now', text: (margin) => formatChance(margin.chanceNow) },
  { name: 'Early, 10 %', text: (margin) => pointText(margin, margin.hoursEarly, margin.dateEarly) },
  { name: 'Median, 50 %', text: (margin) => pointText(margin, margin.hoursMedian, margin.dateMedian) },
  { name: 'Late, 90 %', text: (margin) => pointText(margin, margin.hoursLate, margin.dateLate) },
  {
    name: 'Next overhaul',
    text: (margin) => formatDate(margin.nextOverhaulDate),
    reason: 'no overhaul planned',
  },
  { name: 'Chance of being past it then', text: (margin) => formatChance(margin.chanceAtNextOverhaul) },
  { name: 'Expected as found then, 10 / 50 / 90 %', text: expectedRange },
  { name: 'Reason or caution', text: marginRemark, reason: 'nothing to remark' },
];

function limitText(margin: MarginRow): string | null {
  return margin.limit_mm === null
    ? null
    : `${capitalised(margin.limitKind ?? 'upper')} limit ${formatMm(margin.limit_mm)}`;
}

function reasonOf(margin: MarginRow): string {
  if (margin.limit_mm === null) return 'no limit, no verdict';
  return margin.reason ?? 'no overhaul planned, or no forecast';
}

interface MarginTableProps {
  readonly caption: string;
  readonly margins: readonly MarginRow[];
}

/** Every number of the margins of one series: a column a limit, a row a quantity. */
export function MarginTable({ caption, margins }: MarginTableProps) {
  const captionId = useId();
  const columns = margins.map((margin, index) => ({ margin, key: `${margin.limitKind ?? 'none'} ${index}` }));
  return (
    <ScrollBox labelledBy={captionId}>
      <table>
        <caption id={captionId}>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Quantity</th>
            {columns.map(({ margin, key }) => (
              <th key={key} scope="col" className="text">
                <Written text={limitText(margin)} reason="no limit, no verdict" />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {quantities.map((quantity) => (
            <tr key={quantity.name}>
              <th scope="row">{quantity.name}</th>
              {columns.map(({ margin, key }) => (
                <td key={key} className="value">
                  <Written text={quantity.text(margin)} reason={quantity.reason ?? reasonOf(margin)} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}

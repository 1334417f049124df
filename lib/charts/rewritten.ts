import { formatDate, formatFixed, formatPercent } from './format';

const before = '(?<![\\w.,-])';
const number = '(-?(?:\\d{1,3}(?:,\\d{3})+|\\d+))(\\.\\d+)?';
const day = /(?<![\w-])\d{4}-\d{2}-\d{2}(?![\w-])/g;
const percent = new RegExp(`${before}${number} %`, 'g');
const quantity = new RegExp(`${before}${number}(?= (?:h|mm|weeks|standard deviations)\\b)`, 'g');
const chance = /(?<=p = |p below |correlation |standard error of )(\d+)(\.\d+)/g;

/**
 * A sentence of the analysis, which writes its days, shares and quantities as its files do (2026-03-01, 99.5 %, 12,345 h), in
 * the style in force. Names in it stay: only what carries a unit or is a whole ISO day is written anew.
 */
export function rewritten(sentence: string): string {
  return sentence
    .replace(day, (found) => formatDate(found))
    .replace(percent, (_, whole: string, fraction = '') => formatPercent(numberOf(whole, fraction) / 100))
    .replace(quantity, writtenAnew)
    .replace(chance, writtenAnew);
}

function writtenAnew(_: string, whole: string, fraction = ''): string {
  return formatFixed(numberOf(whole, fraction), Math.max(0, fraction.length - 1));
}

function numberOf(whole: string, fraction: string): number {
  return Number(whole.replaceAll(',', '') + fraction);
}

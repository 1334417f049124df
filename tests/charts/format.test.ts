import { describe, expect, test } from 'vitest';
import {
  formatChance,
  formatCount,
  formatDate,
  formatHours,
  formatLength,
  formatLevel,
  formatMm,
  formatRate,
  noValue,
} from '../../lib/charts/format';

describe('lengths', () => {
  test('three decimals under an SD of 0.02 mm or without one, else two', () => {
    expect(formatMm(0.3124)).toBe('0.312\u00a0mm');
    expect(formatLevel(0.3124, 0.0119)).toBe('0.312\u00a0±\u00a00.012\u00a0mm');
    expect(formatLevel(0.3124, 0.0449)).toBe('0.31\u00a0±\u00a00.04\u00a0mm');
    expect(formatLevel(0.3124, null)).toBe('0.312\u00a0mm');
  });

  test('a true minus, and none before a rounded zero', () => {
    expect(formatLength(-0.02)).toBe('\u22120.020');
    expect(formatLength(-0.0001)).toBe('0.000');
  });

  test('a rate names its hours', () => {
    expect(formatRate(0.0812, 0.012)).toBe('0.081\u00a0±\u00a00.012\u00a0mm per 10\u202f000\u00a0h');
  });
});

test('thousands are parted by narrow spaces', () => {
  expect(formatHours(1_234_567.4)).toBe('1\u202f234\u202f567\u00a0h');
  expect(formatHours(999.4)).toBe('999\u00a0h');
  expect(formatCount(12_345)).toBe('12\u202f345');
});

test('chances never read as certain', () => {
  expect(formatChance(0)).toBe('<1\u00a0%');
  expect(formatChance(0.0099)).toBe('<1\u00a0%');
  expect(formatChance(0.01)).toBe('1\u00a0%');
  expect(formatChance(0.336)).toBe('34\u00a0%');
  expect(formatChance(0.99)).toBe('99\u00a0%');
  expect(formatChance(0.9999)).toBe('>99\u00a0%');
  expect(formatChance(1)).toBe('>99\u00a0%');
});

test('what is no value is a dash, whatever it is', () => {
  for (const nothing of [null, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
    const written = [
      formatMm(nothing),
      formatLength(nothing),
      formatLevel(nothing, 0.01),
      formatRate(nothing, null),
      formatHours(nothing),
      formatCount(nothing),
      formatChance(nothing),
    ];
    expect(new Set(written)).toEqual(new Set([noValue]));
    expect(formatLevel(0.3, nothing)).toBe('0.300\u00a0mm');
  }
  expect(formatDate(null)).toBe(noValue);
  expect(formatDate('Invalid Date')).toBe(noValue);
  expect(formatDate('2027-03-01')).toBe('2027-03-01');
});

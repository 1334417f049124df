'use client';

import { useEffect } from 'react';
import { formatDate, formatFixed } from '../../lib/charts/format';
import {
  type DateStyleName,
  dateStyles,
  type NumberStyleName,
  numberStyles,
  writtenIn,
} from '../../lib/charts/writingStyle';
import { useWriting } from './useWriting';
import styles from './writing.module.css';
import { chooseWriting, followKeptWriting } from './writingChoice';

const numberNames = Object.keys(numberStyles) as NumberStyleName[];

/** How numbers and days are written on every page: a choice by example, kept in this browser. */
export function WritingControls() {
  const writing = useWriting();
  useEffect(followKeptWriting, []);
  return (
    <p className={`${styles.writing} screenOnly`}>
      <label>
        Numbers
        <select
          value={writing.numbers}
          onChange={(event) => chooseWriting({ ...writing, numbers: event.target.value as NumberStyleName })}
        >
          {numberNames.map((numbers) => (
            <option key={numbers} value={numbers}>
              {writtenIn({ ...writing, numbers }, () => formatFixed(12_345.6, 1))}
            </option>
          ))}
        </select>
      </label>
      <label>
        Dates
        <select
          value={writing.dates}
          onChange={(event) => chooseWriting({ ...writing, dates: event.target.value as DateStyleName })}
        >
          {dateStyles.map((dates) => (
            <option key={dates} value={dates}>
              {writtenIn({ ...writing, dates }, () => formatDate('2026-12-31'))}
            </option>
          ))}
        </select>
      </label>
      <span>On every page, kept in this browser; files are always written as 12345.6 and 2026-12-31.</span>
    </p>
  );
}

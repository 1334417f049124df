'use client';

import { useEffect, useRef, useState } from 'react';
import type { ChartTheme } from '../../lib/charts/theme';
import { whenIdle } from '../engine/whenIdle';
import styles from './chart.module.css';
import { readTheme } from './readTheme';
import { type BuildSpec, useDrawing } from './useDrawing';

/** Width of the text on A4 paper, less the margins of the print style sheet. */
const printWidth_px = 680;

interface PaperChartProps {
  readonly build: BuildSpec;
  readonly label: string;
}

/** A picture as it is printed, drawn when the page has nothing else to do: a print cannot wait for one. */
export function PaperChart({ build, label }: PaperChartProps) {
  const box = useRef<HTMLDivElement>(null);
  const [theme, setTheme] = useState<ChartTheme | null>(null);
  useEffect(() => whenIdle(() => setTheme(readTheme('paperTheme'))), []);
  useDrawing(box, build, theme, printWidth_px);
  return <div ref={box} role="img" aria-label={label} className={styles.onPaper} />;
}

'use client';

import { useState } from 'react';
import type { BuildSpec } from '../chart/useDrawing';
import { saveFile } from '../records/saveFile';
import { ExportRow } from './ExportRow';
import styles from './export.module.css';
import { fileName } from './fileName';
import { type PictureWords, savedPng, savedSvg } from './savedPicture';

interface PictureExportProps extends PictureWords {
  readonly build: BuildSpec;
}

/** Saves a picture as SVG or PNG, as it is printed: black on white, whatever the screen shows. */
export function PictureExport({ build, title, description }: PictureExportProps) {
  const [said, setSaid] = useState('');
  const save = (kind: 'svg' | 'png') => {
    const draw = async () => {
      const svg = await savedSvg(build, { title, description });
      saveFile(
        fileName(title, kind),
        kind === 'svg' ? svg : await savedPng(svg),
        kind === 'svg' ? 'image/svg+xml' : 'image/png',
      );
    };
    draw().then(
      () => setSaid('Saved.'),
      (error: unknown) =>
        setSaid(
          `Not saved (${error instanceof Error ? error.message : String(error)}): the table below holds the same numbers.`,
        ),
    );
  };
  const acts = [
    { words: 'Save SVG', hint: 'As it is printed, for any size', act: () => save('svg') },
    { words: 'Save PNG', hint: 'As it is printed, in pixels', act: () => save('png') },
  ];
  return <ExportRow title={title} acts={acts} said={said} className={styles.picture} />;
}

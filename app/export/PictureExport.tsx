'use client';

import { useState } from 'react';
import type { BuildSpec } from '../chart/useDrawing';
import { saveFile } from '../records/saveFile';
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
  return (
    <p className={`${styles.row} ${styles.picture} screenOnly`}>
      <button
        type="button"
        title="As it is printed, for any size"
        onClick={() => save('svg')}
        aria-label={`Save SVG ${title}`}
      >
        Save SVG
      </button>
      <button
        type="button"
        title="As it is printed, in pixels"
        onClick={() => save('png')}
        aria-label={`Save PNG ${title}`}
      >
        Save PNG
      </button>
      <span role="status">{said}</span>
    </p>
  );
}

'use client';

import type { BenchSheet } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import type { LengthUnit } from '../../lib/records/lengthUnits';
import { saveFile } from '../records/saveFile';
import { sheetFile } from './sheetFile';

interface SheetButtonsProps {
  readonly sheet: BenchSheet;
  readonly characteristics: FleetResult['characteristics'];
  readonly uom: LengthUnit;
}

/** The sheet on paper, or as one file that opens without this site. */
export function SheetButtons({ sheet, characteristics, uom }: SheetButtonsProps) {
  return (
    <p className="buttons">
      <button type="button" onClick={() => window.print()}>
        Print the sheet
      </button>
      <button
        type="button"
        onClick={() => {
          const { name, html } = sheetFile(sheet, characteristics, uom);
          saveFile(name, html, 'text/html');
        }}
      >
        Save the sheet as one file
      </button>
    </p>
  );
}

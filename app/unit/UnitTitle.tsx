'use client';

import { useEffect } from 'react';
import { useEngine } from '../engine/EngineProvider';
import { UnitPicker } from './UnitPicker';

interface UnitTitleProps {
  /** Name of the page. */
  readonly page: string;
  /** Heading once a unit is chosen. */
  readonly heading: string;
  /** The unit in the address; empty until one is chosen. */
  readonly id: string;
  readonly onPick: (unit: string) => void;
}

/** The title of a page about one unit, also that of its tab, with the choice of another unit. */
export function UnitTitle({ page, heading, id, onPick }: UnitTitleProps) {
  const { fleet } = useEngine().state;
  useEffect(() => {
    document.title = [...(id === '' ? [] : [id]), page, 'Endfloat'].join(' · ');
  }, [id, page]);
  return (
    <div className="titleRow">
      <h1>{id === '' ? page : heading}</h1>
      {fleet !== null && <UnitPicker fleet={fleet} id={id} onPick={onPick} />}
    </div>
  );
}

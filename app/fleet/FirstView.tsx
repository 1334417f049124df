'use client';

import { useEffect, useLayoutEffect } from 'react';
import { useEngine } from '../engine/EngineProvider';
import { isOfLastTime } from '../engine/engineState';
import { openingSentence } from '../engine/WithFleet';
import { FleetFigure, fleetPictureTitle } from './FleetFigure';
import { FleetFilters } from './FleetFilters';
import { fillFirstView, firstViewNames } from './fillFirstView.mjs';
import styles from './fleet.module.css';
import { everything } from './fleetRows';
import { forgetLastPicture, noteFleetShown } from './lastPicture';

const nothing = { units: [], margins: [], characteristics: [] };
const ignore = () => {};

/** What stands in it comes from the page's own text and from the browser's memory, and is none of the framework's business. */
const filledElsewhere = (text = '') => ({
  suppressHydrationWarning: true,
  dangerouslySetInnerHTML: { __html: text },
});

/**
 * What the Fleet page shows while nothing else is there: laid out like the page that takes its place, filled by
 * `fillFirstView` before the framework is loaded, or empty but for a sentence.
 */
export function FirstView() {
  useLayoutEffect(() => fillFirstView(firstViewNames), []);
  return (
    <div data-first="view" className={styles.first} suppressHydrationWarning>
      <p className="answer" data-first="sentence" {...filledElsewhere(openingSentence)} />
      <ul className="remarks" data-first="remarks" {...filledElsewhere()} />
      <FleetFilters fleet={nothing} filter={everything} onChange={ignore} />
      <FleetFigure>
        <div role="img" aria-label={fleetPictureTitle} data-first="picture" {...filledElsewhere()} />
      </FleetFigure>
      <div hidden data-first="source" {...filledElsewhere()} />
    </div>
  );
}

/** Follows which fleet is shown, and forgets the last picture as soon as other data are open than those it shows. */
export function useFleetShown(): void {
  const { state } = useEngine();
  const { fleet, before } = state;
  const source = fleet?.source;
  const isOther = fleet !== null && !isOfLastTime(state) && (before === null || source === 'demo');
  useEffect(() => {
    if (source !== undefined) noteFleetShown(source);
  }, [source]);
  useEffect(() => {
    if (isOther && fleet !== null) forgetLastPicture();
  }, [isOther, fleet]);
}

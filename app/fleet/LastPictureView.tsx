'use client';

import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { placeSvg } from '../chart/placeSvg';
import { useEngine } from '../engine/EngineProvider';
import { isOfLastTime } from '../engine/engineState';
import { BeingOpened } from '../engine/WithFleet';
import { fleetPictureTitle } from './FleetPicture';
import { forgetLastPicture, type LastPicture, lastPicture } from './lastPicture';

/** The answer and the picture of last time while nothing else is there yet. */
export function LastPictureView() {
  const box = useRef<HTMLDivElement>(null);
  const [last, setLast] = useState<LastPicture | null>(null);
  // A view that the address narrows is another picture.
  useLayoutEffect(() => setLast(location.search === '' ? lastPicture() : null), []);
  useLayoutEffect(() => {
    if (last !== null && box.current !== null) placeSvg(box.current, last.svg);
  }, [last]);
  if (last === null) return <BeingOpened />;
  return (
    <>
      <p className="answer">{last.sentence}</p>
      <p role="status">This is what was shown last; the answer is being opened.</p>
      <div ref={box} role="img" aria-label={`${fleetPictureTitle}, as shown last`} />
    </>
  );
}

/** Forgets the last picture as soon as other data are open than those it shows. */
export function useLastPicture(): void {
  const { state } = useEngine();
  const { fleet, before } = state;
  const isOther = fleet !== null && !isOfLastTime(state) && (before === null || fleet.source === 'demo');
  useEffect(() => {
    if (isOther && fleet !== null) forgetLastPicture();
  }, [isOther, fleet]);
}

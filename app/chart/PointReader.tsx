'use client';

import { type CSSProperties, type KeyboardEvent, type RefObject, useEffect, useRef, useState } from 'react';
import { markUnit } from '../units/unitMarks';
import { counted } from '../words/counted';
import styles from './chart.module.css';
import { placeByKey, pointsOf } from './picturePoints';
import { hintAt, pickedAt } from './placeSvg';

interface PointReaderProps {
  readonly box: RefObject<HTMLElement | null>;
  readonly label: string;
  /** How many points the picture has. */
  readonly count: number;
  /** Number of the drawing: another one has its points elsewhere. */
  readonly drawing: number;
  readonly onPick: ((picked: string) => void) | undefined;
}

/** A point as it is shown: what it says, where it lies in the picture, px. */
interface ReadPoint {
  readonly says: string;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Whether what it says stands at its left and above it, where there is more room. */
  readonly isRight: boolean;
  readonly isLow: boolean;
}

/** Where a point lies in its box. */
function read(box: Element, point: Element): ReadPoint {
  const around = box.getBoundingClientRect();
  const at = point.getBoundingClientRect();
  const left = Math.max(0, at.left - around.left);
  const top = at.top - around.top;
  const width = Math.min(at.width, around.width - left);
  return {
    says: hintAt(point) ?? '',
    left,
    top,
    width,
    height: at.height,
    isRight: left + width / 2 > around.width / 2,
    isLow: top + at.height / 2 > around.height / 2,
  };
}

/** The places of ring and words, for the style sheet. */
function placeOf({ left, top, width, height }: ReadPoint): CSSProperties {
  const px = { '--left': left, '--top': top, '--width': width, '--height': height };
  return Object.fromEntries(Object.entries(px).map(([name, value]) => [name, `${value}px`]));
}

/**
 * The way through the points of a picture by keyboard, as one stop of the Tab key: arrows, Page, Home and End move, each point
 * says its values, Enter opens what it stands for, Escape puts the words away. To a screen reader it is a slider over the points,
 * which is what hands it the arrow keys.
 */
export function PointReader({ box, label, count, drawing, onPick }: PointReaderProps) {
  const slider = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState(0);
  const [shown, setShown] = useState<ReadPoint | null>(null);
  const go = (to: number) => {
    const point = box.current === null ? undefined : pointsOf(box.current)[to];
    if (box.current === null || point === undefined) return;
    setPlace(to);
    setShown(read(box.current, point));
    markUnit(pickedAt(point));
    // A tall picture may have it out of sight.
    point.scrollIntoView?.({ block: 'nearest' });
  };
  const at = Math.min(place, count - 1);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new drawing has the same point elsewhere.
  useEffect(() => {
    if (document.activeElement === slider.current) go(at);
  }, [drawing]);
  const press = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const to = placeByKey(event.key, at, count);
    if (to !== null) go(to);
    else if (event.key === 'Escape' && shown !== null) setShown(null);
    else if (event.key === 'Enter' && onPick !== undefined && box.current !== null) {
      const picked = pickedAt(pointsOf(box.current)[at] ?? null);
      if (picked !== null) onPick(picked);
    } else return;
    event.preventDefault();
  };
  return (
    <>
      <div
        ref={slider}
        role="slider"
        tabIndex={0}
        className={styles.reader}
        aria-label={`Points of the picture: ${label}`}
        aria-valuemin={1}
        aria-valuemax={count}
        aria-valuenow={at + 1}
        aria-valuetext={shown?.says ?? `${counted(count, 'point')}, arrow keys move`}
        onFocus={() => go(at)}
        onBlur={() => {
          setShown(null);
          markUnit(null);
        }}
        onKeyDown={press}
      />
      {shown !== null && (
        <div className={styles.read} style={placeOf(shown)} aria-hidden="true">
          <div className={styles.ring} />
          <p className={styles.says} data-right={shown.isRight} data-low={shown.isLow}>
            {shown.says}
          </p>
        </div>
      )}
    </>
  );
}

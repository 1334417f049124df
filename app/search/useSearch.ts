'use client';

import { type KeyboardEvent, useMemo, useState } from 'react';
import type { UnitRow } from '../../lib/analysis/types';
import { searchedUnits, type UnitMatches, unitMatches } from './unitMatches';

const listed = 8;

/** The state of a search for a unit, and what its field does with keys. */
export interface Search {
  readonly text: string;
  readonly isOpen: boolean;
  readonly matches: UnitMatches;
  /** Place of the marked unit among those shown. */
  readonly marked: number;
  readonly type: (text: string) => void;
  readonly close: () => void;
  readonly clear: () => void;
  readonly press: (event: KeyboardEvent<HTMLInputElement>) => void;
}

/**
 * A search among units: the first match is marked, arrows move the mark round, Enter takes it, Escape closes the list and
 * then empties the field.
 *
 * @param units none while no fleet is open
 */
export function useSearch(units: readonly UnitRow[], onTake: (unit: UnitRow) => void): Search {
  const [text, setText] = useState('');
  const [isOpen, setOpen] = useState(false);
  const [place, setPlace] = useState(0);
  // Not before somebody searches: a large fleet that has just been opened has enough to draw.
  const isUsed = text !== '';
  const searched = useMemo(() => searchedUnits(isUsed ? units : []), [isUsed, units]);
  const matches = useMemo(() => unitMatches(searched, text, listed), [searched, text]);
  const last = matches.shown.length - 1;
  // Another fleet may have been opened since the mark was moved.
  const marked = Math.max(0, Math.min(place, last));
  const move = (to: number) => {
    setOpen(true);
    setPlace(to > last ? 0 : to < 0 ? Math.max(last, 0) : to);
  };
  const clear = () => {
    setText('');
    setOpen(false);
  };
  const press = (event: KeyboardEvent<HTMLInputElement>) => {
    if (text.trim() === '') return;
    const taken = matches.shown[marked];
    switch (event.key) {
      case 'ArrowDown':
        move(isOpen ? marked + 1 : marked);
        break;
      case 'ArrowUp':
        move(isOpen ? marked - 1 : last);
        break;
      case 'Escape':
        if (isOpen) setOpen(false);
        else clear();
        break;
      case 'Enter':
        // Enter that ends the writing of a composed letter is no choice.
        if (taken !== undefined && !event.nativeEvent.isComposing) onTake(taken);
        break;
      default:
        return;
    }
    event.preventDefault();
  };
  return {
    text,
    isOpen: isOpen && text.trim() !== '',
    matches,
    marked,
    type: (typed) => {
      setText(typed);
      setOpen(true);
      setPlace(0);
    },
    close: () => setOpen(false),
    clear,
    press,
  };
}

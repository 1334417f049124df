'use client';

import { useRouter } from 'next/navigation';
import { useId } from 'react';
import type { UnitRow } from '../../lib/analysis/types';
import { unitAddress } from '../address/unitAddress';
import { useEngine } from '../engine/EngineProvider';
import { nothingToSearch, placeWords, searchWords } from '../words/searchWords';
import styles from './search.module.css';
import { useSearch } from './useSearch';

const noUnits: readonly UnitRow[] = [];

/** Finds a unit by letters of its serial or engine, from any page: a combobox with its list, by keyboard, pointer or touch. */
export function UnitSearch() {
  const { fleet, work } = useEngine().state;
  const router = useRouter();
  const id = useId();
  const take = ({ unit }: UnitRow) => {
    search.clear();
    router.push(unitAddress(unit));
    // Whoever chose reads on, and need not go through the title block again.
    document.getElementById('content')?.focus();
  };
  const search = useSearch(fleet?.units ?? noUnits, take);
  const { shown, found } = search.matches;
  const hasList = search.isOpen && shown.length > 0;
  const said =
    fleet === null ? nothingToSearch(work !== null) : searchWords(search.text, found, shown.length);
  return (
    <search aria-label="Find a unit" className={`screenOnly ${styles.search}`}>
      <label htmlFor={`${id}field`}>Find a unit</label>
      <input
        id={`${id}field`}
        role="combobox"
        type="text"
        aria-expanded={hasList}
        aria-controls={hasList ? `${id}list` : undefined}
        aria-autocomplete="list"
        aria-activedescendant={hasList ? `${id}${search.marked}` : undefined}
        aria-describedby={`${id}said`}
        autoComplete="off"
        spellCheck={false}
        placeholder="serial or engine"
        value={search.text}
        onChange={(event) => search.type(event.target.value)}
        onKeyDown={search.press}
        onBlur={search.close}
      />
      <div className={search.isOpen ? styles.found : undefined}>
        {hasList && (
          <div role="listbox" id={`${id}list`} aria-label="Units found">
            {shown.map((unit, place) => (
              // The keyboard moves the mark in the field above, which keeps the focus.
              <button
                key={unit.unit}
                type="button"
                role="option"
                id={`${id}${place}`}
                tabIndex={-1}
                aria-selected={place === search.marked}
                onPointerDown={(event) => event.preventDefault()}
                onClick={() => take(unit)}
              >
                <b>{unit.unit}</b> {placeWords(unit)}
              </button>
            ))}
          </div>
        )}
        <p role="status" id={`${id}said`}>
          {search.isOpen && said}
        </p>
      </div>
    </search>
  );
}

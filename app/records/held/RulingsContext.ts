import { createContext } from 'react';
import type { Rulings } from './useRulings';

/** The rulings being made, for the cells of the list; null where nothing may be ruled. */
export const RulingsContext = createContext<Rulings | null>(null);

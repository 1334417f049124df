import type { ReactNode } from 'react';
import { ChanceKey } from './ChanceKey';

/** What the picture is of. */
export const fleetPictureTitle = 'Chance that the first limit is met, by date';

/** The frame of the Fleet page's picture: what it shows, and the key to it. */
export function FleetFigure({ children }: { readonly children: ReactNode }) {
  return (
    <figure>
      <figcaption>
        <h2>{fleetPictureTitle}</h2>
        <p>
          One row a unit, what cannot wait first; a click opens the unit. The stronger the ink, the higher the
          chance that its first limit has been met by then, if nothing is renewed. At the right: the chance at
          the next planned overhaul, and the series that decides.
        </p>
        <ChanceKey />
      </figcaption>
      {children}
    </figure>
  );
}

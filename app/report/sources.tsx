import type { ReactNode } from 'react';
import { sameView, sparesNames } from './reportAddress';
import { Source } from './Source';

/** Where each part of the paper comes from. */
export interface Sources {
  readonly fleet: ReactNode;
  readonly advice: ReactNode;
  readonly drift: ReactNode;
  readonly spares: ReactNode;
  readonly records: ReactNode;
}

/**
 * The tables behind the paper, each with the view that the address asks for.
 *
 * @param note what the pages show otherwise than the paper, if they do
 */
export function sourcesOf(query: URLSearchParams, note: string | null): Sources {
  const scope = ['site', 'frame', 'engine', 'workshop', 'units', 'risk'];
  const fleet = sameView('/', query, scope);
  return {
    fleet: <Source href={fleet} page="Fleet" table="Units" note={note} />,
    advice: <Source href={fleet} page="Fleet" table="At the next overhaul" note={note} />,
    drift: (
      <Source
        href={sameView('/drift/', query, ['budget', 'charts', 'rules'])}
        page="Drift"
        table="Signals"
        note={note}
      />
    ),
    spares: (
      <Source href={sameView('/spares/', query, sparesNames)} page="Spares" table="Orders" note={note} />
    ),
    records: <Source href="/records/?action=held" page="Records" table="Held and interpreted" />,
  };
}

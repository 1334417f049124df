'use client';

import Link from 'next/link';
import { useCallback, useMemo } from 'react';
import type { Spares } from '../../lib/analysis/demand/types';
import type { FleetResult } from '../../lib/analysis/types';
import { useQuery } from '../address/useQuery';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { WithFleet } from '../engine/WithFleet';
import { Cautions } from '../frame/Cautions';
import { Prose } from '../frame/Prose';
import { ordersDue, planSentence, sparesSentence } from '../words/sparesSentence';
import { BudgetTable } from './BudgetTable';
import { CalendarPanel } from './CalendarPanel';
import { DemandFigure } from './DemandFigure';
import { IntervalCurve } from './IntervalCurve';
import { OrderTable } from './OrderTable';
import { PlanMessages } from './PlanMessages';
import { SparesControls } from './SparesControls';
import { sparesSettings } from './sparesAddress';
import { WhatIfPanel } from './WhatIfPanel';

interface SparesContentProps {
  readonly fleet: FleetResult;
  readonly spares: Spares;
  readonly query: URLSearchParams;
  readonly change: (changes: Readonly<Record<string, string>>) => void;
}

function SparesContent({ fleet, spares, query, change }: SparesContentProps) {
  const asked = query.get('part') ?? '';
  const known = spares.orders.some(({ part }) => part === asked);
  const part = known ? asked : (ordersDue(spares)[0]?.part ?? spares.orders[0]?.part ?? '');
  const choose = useCallback((code: string) => change({ part: code }), [change]);
  const order = spares.orders.find((one) => one.part === part);
  return (
    <>
      <p className="answer">
        <Prose text={sparesSentence(spares)} />
      </p>
      <p>
        <Prose text={planSentence(spares)} />
      </p>
      <SparesControls settings={spares.settings} onChange={change} />
      {order !== undefined && <DemandFigure spares={spares} order={order} onPart={choose} />}
      <OrderTable spares={spares} query={query} onPart={choose} />
      <PlanMessages messages={spares.messages} />
      <BudgetTable spares={spares} />
      <WhatIfPanel fleet={fleet} settings={spares.settings} query={query} onChange={change} />
      <IntervalCurve fleet={fleet} settings={spares.settings} query={query} onChange={change} />
      <CalendarPanel fleet={fleet} settings={spares.settings} />
    </>
  );
}

function SparesAnswer({ fleet }: { readonly fleet: FleetResult }) {
  const [query, change] = useQuery();
  const settings = useMemo(() => sparesSettings(query), [query]);
  const asked = useAsked(fleet, 'spares', settings);
  return (
    <>
      <WithAnswer asked={asked}>
        {(spares, computing) => (
          <div aria-busy={computing}>
            <SparesContent fleet={fleet} spares={spares} query={query} change={change} />
          </div>
        )}
      </WithAnswer>
      <h2>Cautions</h2>
      <Cautions />
      <p className="screenOnly">
        <Link href="/methods/#spares">How this was computed</Link>
      </p>
    </>
  );
}

/** The Spares page: what to order by which day, the demand behind it, what-if, the interval, the calendar. */
export function SparesPage() {
  return <WithFleet>{(fleet) => <SparesAnswer fleet={fleet} />}</WithFleet>;
}

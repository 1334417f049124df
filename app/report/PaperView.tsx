'use client';

import { useMemo, useState } from 'react';
import { ordersDueOf } from '../../lib/analysis/report/paperSummary';
import type { Report } from '../../lib/analysis/report/types';
import { isWholeFleet } from '../../lib/analysis/scope';
import { formatDate } from '../../lib/charts/format';
import { useAcknowledgements } from '../drift/useAcknowledgements';
import { FleetPicture } from '../fleet/FleetPicture';
import { fleetRows } from '../fleet/fleetRows';
import { Cautions } from '../frame/Cautions';
import { Prose } from '../frame/Prose';
import { fleetSentence } from '../words/fleetSentence';
import { daySentence, emptyPaperSentence, paperTitle } from '../words/reportWords';
import { useWrittenMemo } from '../writing/useWriting';
import { AnswerSection } from './AnswerSection';
import { ChangesSection } from './ChangesSection';
import { HeldSection } from './HeldSection';
import { MethodSection } from './MethodSection';
import { OrdersSection } from './OrdersSection';
import { keptOf, sparesNames } from './reportAddress';
import { SignalsSection } from './SignalsSection';
import { sourcesOf } from './sources';
import { UrgentUnits } from './UrgentUnits';

interface PaperViewProps {
  readonly report: Report;
  /** Latest day in the records: the one that the other pages stand on. */
  readonly latest: string;
  readonly query: URLSearchParams;
}

/** The planning paper: answer, picture, units that cannot wait, signals, orders, held data, changes, method, cautions. */
export function PaperView({ report, latest, query }: PaperViewProps) {
  const { paper, compared } = report;
  const { fleet, scope } = paper;
  const [page, setPage] = useState(1);
  const filter = useMemo(() => ({ ...scope, series: '' }), [scope]);
  const rows = useMemo(() => fleetRows(fleet, filter), [fleet, filter]);
  const acknowledged = useAcknowledgements(fleet.source);
  const open = paper.drift.findings.filter((finding) => acknowledged.of(finding) === null);
  const due = useMemo(() => ordersDueOf(paper.spares), [paper]);
  const sources = useWrittenMemo(
    () => sourcesOf(query, fleet.asOf === latest ? null : `that page stands on ${formatDate(latest)}`),
    [query, fleet, latest],
  );
  const answer = useWrittenMemo(() => fleetSentence(rows, !isWholeFleet(scope)), [rows, scope]);
  const sparesQuery = useMemo(() => keptOf(query, sparesNames), [query]);
  const empty = emptyPaperSentence(paper);
  const day = daySentence(fleet.asOf, latest);
  const head = (
    <>
      <p>
        <Prose text={paperTitle(paper)} />
      </p>
      {day !== null && <p>{day}</p>}
    </>
  );
  if (empty !== null)
    return (
      <>
        {head}
        <p className="answer">{empty}</p>
        <Cautions />
      </>
    );
  return (
    <>
      {head}
      <AnswerSection
        answer={answer}
        paper={paper}
        compared={compared}
        rows={rows}
        open={open}
        sources={sources}
      />
      <FleetPicture
        fleet={fleet}
        rows={rows}
        filter={filter}
        description={answer}
        page={page}
        onPage={setPage}
        wholeOnPaper
      />
      <UrgentUnits paper={paper} rows={rows} sources={sources} />
      <SignalsSection paper={paper} open={open} source={sources.drift} />
      <OrdersSection paper={paper} due={due} sparesQuery={sparesQuery} source={sources.spares} />
      <HeldSection paper={paper} source={sources.records} />
      {compared !== null && <ChangesSection compared={compared} fleet={fleet} />}
      <MethodSection paper={paper} />
      <h2>Cautions</h2>
      <Cautions />
    </>
  );
}

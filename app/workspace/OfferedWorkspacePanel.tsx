'use client';

import { useState } from 'react';
import type { OfferedWorkspace, WorkspaceChoice } from '../../lib/analysis/engine/workspace/WorkspaceOffer';
import type { Side } from '../../lib/records/workspace/mergeJournals';
import { mergeSentence, offerSentence } from '../words/workspaceWords';
import { ConflictTable } from './ConflictTable';

interface OfferedWorkspacePanelProps {
  readonly name: string;
  readonly offer: OfferedWorkspace;
  readonly busy: boolean;
  readonly onOpen: (choice: WorkspaceChoice) => void;
  readonly onLeave: () => void;
}

/** What a workspace file holds and the ways to open it; nothing has been changed yet. */
export function OfferedWorkspacePanel({ name, offer, busy, onOpen, onLeave }: OfferedWorkspacePanelProps) {
  const [chosen, setChosen] = useState<ReadonlyMap<string, Side>>(new Map());
  const { own, merge } = offer;
  const isEmptyHere = own.files + own.entries === 0;
  return (
    <section aria-label="The chosen workspace file">
      <p>
        {offerSentence(name, offer)} {!isEmptyHere && mergeSentence(offer)}
      </p>
      {!isEmptyHere && merge.conflicts.length > 0 && (
        <ConflictTable
          conflicts={merge.conflicts}
          sideOf={({ id, later }) => chosen.get(id) ?? later}
          onChoose={(id, side) => setChosen((before) => new Map(before).set(id, side))}
        />
      )}
      <p className="buttons">
        {!isEmptyHere && (
          <button
            type="button"
            disabled={busy}
            onClick={() => onOpen({ how: 'merge', choices: [...chosen] })}
          >
            Merge it with what is here
          </button>
        )}
        <button type="button" disabled={busy} onClick={() => onOpen({ how: 'replace' })}>
          {isEmptyHere ? 'Open it' : 'Open it in place of what is here'}
        </button>
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
      </p>
      {!isEmptyHere && (
        <p>
          In place of what is here, your files and decisions in this browser are removed from it: save them as
          a workspace file first if they are not saved elsewhere.
        </p>
      )}
    </section>
  );
}

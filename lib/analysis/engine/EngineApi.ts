import type {
  AcknowledgementDecision,
  Decision,
  JournalEntry,
  MeaningDecision,
} from '../../records/decisions/Decision';
import type { SheetPreview } from '../../store/intake/previewSheet';
import type { FleetResult, ImportedFile, Problem, Progress, Question, UnderstoodSheet } from '../types';
import type { Effect } from './EffectOfDecisions';
import type { FleetAnswer, FleetQuestion, QuestionWords } from './FleetQuestions';
import type { KeptState } from './kept/KeptState';
import type { PackedFleet } from './PackedFleet';
import type { WorkspaceChoice, WorkspaceOffer } from './workspace/WorkspaceOffer';

export type { PreviewLine, PreviewReading, SheetPreview } from '../../store/intake/previewSheet';
export type { Effect } from './EffectOfDecisions';

/** One dropped or chosen file, as bytes: nothing is decoded on the page's main thread. */
export interface DroppedFile {
  readonly name: string;
  readonly bytes: ArrayBuffer;
}

/** What an attempt to open data came to; a failed one leaves what was open untouched and says why. */
export type OpenOutcome =
  | { readonly ok: true; readonly fleet: FleetResult; readonly message: string | null }
  | {
      readonly ok: false;
      /** What happened and what to do, ready to show. */
      readonly message: string;
      readonly files: readonly ImportedFile[];
      readonly problems: readonly Problem[];
      readonly problemsFound: number;
      readonly questions: readonly Question[];
      readonly sheets: readonly UnderstoodSheet[];
    };

export type ReportProgress = (progress: Progress) => void;

/** What opens data: long work that reports its progress, last argument, and replaces what is open if it succeeds. */
export interface EngineOpenings {
  /** Opens what was open last in this browser: own files if kept, else the demo fleet. */
  open(onProgress: ReportProgress): Promise<OpenOutcome>;
  openDemo(onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Opens the own files kept in this browser again. */
  openOwn(onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Adds files to the own ones (in place of the demo fleet, if that is open); corrected held rows become rulings on them. */
  addFiles(files: readonly DroppedFile[], onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Takes some of the own files out again; the demo fleet is opened if none is left. */
  removeFiles(names: readonly string[], onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Reads the own files again with these decisions added to those in force; written to the journal in this browser. */
  decide(decisions: readonly Decision[], onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Takes decisions back: what they settled is open again. */
  takeBack(ids: readonly string[], onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Reads the own files again as before a step of the journal, if it is the next to be undone. */
  undo(step: number, onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Reads the own files again with an undone step done again, if it is the next to be so. */
  redo(step: number, onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Removes the own files from this browser and opens the demo fleet. */
  forgetOwn(onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Opens the workspace that was offered last, in place of the own files or merged with them; kept as one act. */
  openWorkspace(choice: WorkspaceChoice, onProgress: ReportProgress): Promise<OpenOutcome>;
  /** Makes this tab the one that writes what is kept in this browser, and opens what another tab has written meanwhile. */
  takeOver(onProgress: ReportProgress): Promise<OpenOutcome>;
}

/** What is asked besides: nothing is opened. */
export interface EngineRequests {
  /** The answer of last time, before anything is opened; null if there is none that still stands. */
  lastFleet(): Promise<PackedFleet | null>;
  /** Writes remarks about what is open to the journal; nothing is read again. */
  note(decisions: readonly AcknowledgementDecision[]): Promise<void>;
  /** Takes such remarks back; nothing is read again. */
  takeNotesBack(ids: readonly string[]): Promise<void>;
  /** Undoes a step of such remarks; nothing is read again. */
  undoNotes(step: number): Promise<void>;
  redoNotes(step: number): Promise<void>;
  /** What a sheet among the own files would be read as with these meanings; changes nothing that is open. */
  preview(file: string, meanings: readonly MeaningDecision[]): Promise<SheetPreview>;
  /** What verdicts these decisions would change; changes nothing that is open. Fails if it is stopped. */
  effect(decisions: readonly Decision[]): Promise<Effect>;
  stopEffect(): Promise<void>;
  /** Every decision ever made about the own files, in order. */
  journal(): Promise<readonly JournalEntry[]>;
  /** Every held row and cell as CSV to be corrected in a spreadsheet; those of the last attempt if it opened nothing. */
  heldRows(): Promise<string>;
  /** A line of an own file as it stands there; null if there is no such line. */
  fileLine(file: string, line: number): Promise<string | null>;
  /** Initials under which decisions are signed; empty until given. */
  initials(): Promise<string>;
  signAs(initials: string): Promise<void>;
  /** Names of the own files kept in this browser. */
  ownFileNames(): Promise<readonly string[]>;
  /** One file with all own files and decisions; sealed if the passphrase is not empty. */
  saveWorkspace(passphrase: string): Promise<Uint8Array>;
  /** Reads a workspace file and says what opening or merging it would mean; changes nothing that is open or kept. */
  offerWorkspace(bytes: ArrayBuffer, passphrase: string): Promise<WorkspaceOffer>;
  /** How it stands with what is kept in this browser, as soon as it is another state than the one of that number. */
  keptState(after: number): Promise<KeptState>;
  /** Answers a question about the fleet that is open; undefined if none is. */
  ask<Name extends FleetQuestion>(
    question: Name,
    words: QuestionWords<Name>,
  ): Promise<FleetAnswer<Name> | undefined>;
}

/** What the page asks of the worker; every call runs off the main thread. */
export interface EngineApi extends EngineOpenings, EngineRequests {
  /** Stops the work under way at its next step; what was open stays open. */
  cancel(): Promise<void>;
}

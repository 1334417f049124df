import type { FleetResult } from '../types';
import { answerKey } from './answerKey';
import type { LastAnswer } from './kept/LastAnswer';
import { type PackedFleet, packFleet } from './PackedFleet';

/** An answer computed beforehand from files that do not change; the parts are fetched when they are needed. */
export interface PreparedAnswer {
  fleet(): Promise<FleetResult>;
  /** Answers to the questions that pages ask first, by the key of the question, see answerKey. */
  answers(): Promise<Readonly<Record<string, unknown>>>;
}

/** What can be shown before anything is computed: the answer of last time of own files, or the one prepared of the demo fleet. */
export class AnswersBefore {
  private shown: PreparedAnswer | null = null;
  private answers: ReturnType<PreparedAnswer['answers']> | null = null;

  /** @param demo the prepared answer of the demo fleet; null if there is none */
  constructor(
    private readonly lastAnswer: LastAnswer,
    private readonly demo: PreparedAnswer | null,
  ) {}

  /** The fleet as it was open last; null if there is no answer of it, or not of these files and decisions. */
  async fleet(): Promise<PackedFleet | null> {
    try {
      const { source, fleet } = await this.lastAnswer.read();
      if (source === 'own' || this.demo === null) return fleet;
      const prepared = await this.demo.fleet();
      this.shown = this.demo;
      return packFleet(prepared);
    } catch {
      // Without it the page waits for the answer that is computed, and says why if that fails too.
      return null;
    }
  }

  /** A prepared answer to the fleet that is shown; undefined if the question is not among them. */
  async to(question: string, words: readonly unknown[]): Promise<unknown> {
    if (this.shown === null) return undefined;
    this.answers ??= this.shown.answers();
    const answers = await this.answers.catch(() => null);
    return answers?.[answerKey(question, words)];
  }
}

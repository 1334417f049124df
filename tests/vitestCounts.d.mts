export interface StageResult {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
  readonly message?: string;
}

export interface VitestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

export function countReport(report: VitestReport | null, code: number, timedOut?: boolean): StageResult;

/** What one bench measured: seconds of ours against a peer that does less. */
export interface BenchResult {
  readonly bench: string;
  readonly peer: string;
  readonly peer_s: number;
  readonly ours_s: number;
}

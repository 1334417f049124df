export const workerPolicy: string;
export function inlineScriptHashes(html: string): readonly string[];
export function withPolicy(html: string): string;
/** The page with its policy stated anew, for inline scripts that are others than when it was stated. */
export function withPolicyAnew(html: string): string;
export function policyOf(html: string): string | null;

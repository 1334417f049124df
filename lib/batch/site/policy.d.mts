export const workerPolicy: string;
export function inlineScriptHashes(html: string): readonly string[];
export function withPolicy(html: string): string;
export function policyOf(html: string): string | null;

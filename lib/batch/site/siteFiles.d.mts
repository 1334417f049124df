export const serviceWorkerName: string;
export function siteFiles(root: string): readonly string[];
export function fileHashes(root: string): Readonly<Record<string, string>>;
export function versionOf(hashes: Readonly<Record<string, string>>): string;

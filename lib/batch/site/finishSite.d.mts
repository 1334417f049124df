export function finishSite(root: string): void;

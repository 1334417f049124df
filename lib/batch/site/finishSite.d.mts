export function finishSite(root: string): void;
export function stateVersion(root: string): void;

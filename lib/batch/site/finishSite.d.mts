export function finishSite(root: string): void;
export function stateVersion(root: string): void;
export function nameSiteFleet(root: string, name: string): void;

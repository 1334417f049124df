export function publishEngine(root: string): void;
export function publishDatabase(from: string, to: string): void;
export function publishDemo(from: string, to: string): void;

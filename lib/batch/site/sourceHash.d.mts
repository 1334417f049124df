export function sourceHash(root: string): string;

export const root: string;
export function programHash(): string;

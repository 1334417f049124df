export function findChromium(env?: Readonly<Record<string, string | undefined>>): string | null;
export function bringChromium(): Promise<{ readonly path?: string; readonly message?: string }>;

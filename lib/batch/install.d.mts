export function install(root: string): Promise<string | null>;
export function isInstalled(root: string): boolean;
export function whyNotInstalled(
  output: string,
  error?: { readonly code?: string; readonly message: string },
): string;

export interface CommandOptions {
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly capture?: boolean;
  readonly timeoutMilliseconds?: number;
}

export interface CommandResult {
  readonly code: number;
  readonly output: string;
  readonly timedOut: boolean;
  readonly error?: Error & { readonly code?: string };
}

export function runCommand(
  command: string,
  args: readonly string[],
  options?: CommandOptions,
): Promise<CommandResult>;
export function runNpm(args: readonly string[], options?: CommandOptions): Promise<CommandResult>;
export function buildSite(root: string, options?: CommandOptions): Promise<CommandResult>;

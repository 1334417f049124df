/** Arguments that cannot be used; the usage is shown with the message. */
export class UnusableArguments extends Error {}

/** Runs a batch command and sets the exit status: 2 with the usage for unusable arguments, 1 for any other error. */
export async function runMain(
  main: (words: readonly string[]) => Promise<number>,
  usage: string,
): Promise<void> {
  try {
    process.exitCode = await main(process.argv.slice(2));
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    process.stderr.write(error instanceof UnusableArguments ? `${message}\n${usage}\n` : `${message}\n`);
    process.exitCode = error instanceof UnusableArguments ? 2 : 1;
  }
}

import { type ChildProcess, spawn } from 'node:child_process';
import { setTimeout as wait } from 'node:timers/promises';

/** How a server is started. */
export interface ServerCommand {
  readonly name: string;
  readonly path: string;
  readonly arguments: readonly string[];
  readonly folder: string;
  /** User that it runs as, if not the one that starts it. */
  readonly owner?: { readonly uid: number; readonly gid: number } | undefined;
  /** Throws until the server answers. */
  readonly answers: () => Promise<unknown>;
}

const longestStart_ms = 30_000;

/** A server that this process started. */
export class ServerProcess {
  private constructor(
    private readonly child: ChildProcess,
    private readonly ended: Promise<void>,
  ) {}

  /** Starts the server and waits until it answers; throws with what it printed if it does not within 30 s. */
  static async start({
    name,
    path,
    arguments: words,
    folder,
    owner,
    answers,
  }: ServerCommand): Promise<ServerProcess> {
    const child = spawn(path, words, { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'], ...owner });
    let printed = '';
    for (const output of [child.stdout, child.stderr])
      output.on('data', (piece) => {
        printed = (printed + piece).slice(-2000);
      });
    let isRunning = true;
    // Nothing that was started is left behind, however this process ends.
    const withUs = () => child.kill('SIGKILL');
    process.once('exit', withUs);
    const ended = new Promise<void>((resolve) => {
      const end = () => {
        isRunning = false;
        process.off('exit', withUs);
        resolve();
      };
      child.on('error', (error) => {
        printed += error.message;
        end();
      });
      child.on('exit', end);
    });
    const server = new ServerProcess(child, ended);
    for (const start = Date.now(); isRunning && Date.now() - start < longestStart_ms; await wait(100)) {
      const isUp = await answers().then(
        () => true,
        () => false,
      );
      if (isUp) return server;
    }
    await server.stop('SIGKILL');
    throw new Error(`${name} did not start in ${folder}: ${printed.trim()}`);
  }

  /** Lets the process hang as it is, without ending it. */
  pause(): void {
    this.child.kill('SIGSTOP');
  }

  /** Sends the signal and waits until the process has ended. */
  async stop(signal: NodeJS.Signals): Promise<void> {
    this.child.kill(signal);
    await this.ended;
  }
}

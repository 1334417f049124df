import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';

/** What a process used; null where the system does not tell. */
interface Usage {
  /** Seconds of processor time, those of its children that have ended included. */
  readonly cpu_s: number | null;
  /** Most memory that its own process held at a time, MiB. */
  readonly peak_MiB: number | null;
}

/** What a command took. */
export interface Measured extends Usage {
  readonly wall_s: number;
  readonly stdout: string;
}

const look_ms = 100;

/**
 * Runs a command and measures its time and, on Linux, its processor time and the most memory that its process held: on a machine
 * that others use as well, processor time tells more than time.
 *
 * @throws Error with what it wrote to standard error if it fails
 */
export function runMeasured(command: string, words: readonly string[]): Promise<Measured> {
  const begun = performance.now();
  const child = spawn(command, words);
  let [stdout, stderr] = ['', ''];
  let usage: Usage = { cpu_s: null, peak_MiB: null };
  child.stdout.on('data', (text) => {
    stdout += text;
  });
  child.stderr.on('data', (text) => {
    stderr += text;
  });
  const looking = setInterval(() => {
    usage = usageOf(child.pid) ?? usage;
  }, look_ms);
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (status) => {
      clearInterval(looking);
      if (status === 0) resolve({ wall_s: (performance.now() - begun) / 1000, ...usage, stdout });
      else reject(new Error(`${command} ${words.join(' ')} ended with status ${status}: ${stderr}`));
    });
  });
}

/** Clock ticks a second in which Linux counts processor time. */
const ticksPerSecond = 100;

/** The system adds up itself, so that looking now and then misses only the last moment; null for a process that has ended. */
function usageOf(pid: number | undefined): Usage | null {
  try {
    const peak_kiB = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    if (peak_kiB === undefined) return null;
    // After the name in brackets: state, then eleven numbers, then time in programs and system, own and of children.
    const numbers = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ')
      .map(Number);
    const ticks = numbers.slice(11, 15).reduce((sum, value) => sum + value, 0);
    return { cpu_s: ticks / ticksPerSecond, peak_MiB: Number(peak_kiB) / 1024 };
  } catch {
    return null;
  }
}

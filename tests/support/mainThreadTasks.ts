import type { Browser } from 'playwright-core';
import { z } from 'zod';

const event = z.object({
  name: z.string(),
  ph: z.string(),
  pid: z.number(),
  tid: z.number(),
  /** Time that the thread itself computed, microseconds. */
  tdur: z.number().optional(),
  args: z.object({ name: z.unknown().optional() }).optional(),
});

const trace = z.object({ traceEvents: z.array(z.unknown()) });

/**
 * Computing time of every task of the pages' main threads while something is done, ms, longest first. It is the thread's
 * own time and not the clock's: other work on the machine does not lengthen it.
 */
export async function mainThreadTasks(
  browser: Browser,
  work: () => Promise<void>,
): Promise<readonly number[]> {
  await browser.startTracing(undefined, { categories: ['toplevel'] });
  let recorded: Buffer;
  try {
    await work();
  } finally {
    recorded = await browser.stopTracing();
  }
  const events = trace
    .parse(JSON.parse(recorded.toString('utf8')))
    .traceEvents.flatMap((one) => event.safeParse(one).data ?? []);
  const threadOf = ({ pid, tid }: { pid: number; tid: number }) => `${pid} ${tid}`;
  const mainThreads = new Set(
    events
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(threadOf),
  );
  return events
    .filter((one) => one.name === 'ThreadControllerImpl::RunTask' && one.ph === 'X')
    .filter((one) => mainThreads.has(threadOf(one)))
    .map((one) => (one.tdur ?? 0) / 1000)
    .sort((a, b) => b - a);
}

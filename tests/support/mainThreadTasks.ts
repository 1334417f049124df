import { z } from 'zod';
import type { OpenSite } from './openSite';

const event = z.object({
  name: z.string(),
  ph: z.string(),
  pid: z.number(),
  tid: z.number(),
  /** Time that the thread itself computed, microseconds. */
  tdur: z.number().optional(),
  args: z
    .object({
      name: z.unknown().optional(),
      data: z.object({ url: z.string().optional() }).optional().catch(undefined),
    })
    .optional(),
});

const trace = z.object({ traceEvents: z.array(z.unknown()) });

/**
 * Computing time of every task of the main threads that ran scripts of an address while something is done, ms, longest
 * first. It is the thread's own time and not the clock's: other work on the machine does not lengthen it. Chromium draws
 * parts of its own window with such threads as well: they are no part of the site.
 */
export async function mainThreadTasks(
  { browser, url }: Pick<OpenSite, 'browser' | 'url'>,
  work: () => Promise<void>,
): Promise<readonly number[]> {
  await browser.startTracing(undefined, { categories: ['toplevel', 'devtools.timeline'] });
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
  const ofSite = new Set(
    events
      .filter(({ name, args }) => name === 'EvaluateScript' && args?.data?.url?.startsWith(url))
      .map(threadOf),
  );
  return events
    .filter((one) => one.name === 'ThreadControllerImpl::RunTask' && one.ph === 'X')
    .filter((one) => mainThreads.has(threadOf(one)) && ofSite.has(threadOf(one)))
    .map((one) => (one.tdur ?? 0) / 1000)
    .sort((a, b) => b - a);
}

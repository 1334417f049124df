import { expose } from 'comlink';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  cancelTimeout_ms,
  createEngineClient,
  EngineFailure,
  requestsBy,
  stallTimeout_ms,
  startTimeout_ms,
} from '../../app/engine/engineClient';
import type { EngineApi, OpenOutcome, ReportProgress } from '../../lib/analysis/engine/EngineApi';
import { forPage } from '../../lib/analysis/engine/forPage';
import { plainRows } from '../support/plainRows';
import { fleet } from './fixture';

const opened: OpenOutcome = { ok: true, fleet: fleet(), message: null };

/** A worker in the same thread: one end of a message channel, with the methods of a Worker. */
function fakeWorker(engine: Partial<EngineApi>): Worker {
  const { port1, port2 } = new MessageChannel();
  expose(forPage(engine as EngineApi), port2);
  port2.start();
  port1.start();
  ports.push(port1, port2);
  return Object.assign(port1, { terminate: vi.fn() }) as unknown as Worker;
}

/** The outcome with whole margins in place of views. */
function plain(outcome: OpenOutcome): OpenOutcome {
  if (!outcome.ok) return outcome;
  return { ...outcome, fleet: { ...outcome.fleet, margins: plainRows(outcome.fleet.margins) } };
}

const ports: MessagePort[] = [];
const silent = { onProgress: () => {}, onStalled: () => {} };
const never = new Promise<OpenOutcome>(() => {});

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
});

afterEach(() => {
  vi.useRealTimers();
  for (const port of ports.splice(0)) port.close();
});

describe('createEngineClient', () => {
  test('passes on progress and the outcome', async () => {
    const worker = fakeWorker({
      open: async (onProgress: ReportProgress) => {
        await onProgress({ step: 'Reading', share: 0.5 });
        return opened;
      },
    });
    const steps: string[] = [];
    const client = createEngineClient(() => worker);
    const outcome = await client.run('open', [], { ...silent, onProgress: ({ step }) => steps.push(step) });
    expect(plain(outcome)).toEqual(opened);
    expect(steps).toEqual(['Reading']);
  });

  test('hands files over as bytes', async () => {
    const addFiles = vi.fn(async () => opened);
    const client = createEngineClient(() => fakeWorker({ addFiles }));
    await client.run('addFiles', [[{ name: 'a.csv', bytes: new Uint8Array([1, 2]).buffer }]], silent);
    expect(addFiles.mock.calls[0]?.[0 as never]).toMatchObject([{ name: 'a.csv', bytes: { byteLength: 2 } }]);
  });

  test('sends decisions, takes them back and lists them', async () => {
    const given = {
      kind: 'answer',
      id: 'q1',
      file: 'a.csv',
      column: 'play',
      question: 'Which unit?',
      answer: 'mm',
    } as const;
    const entry = { number: 1, at: '', by: '', act: 'decided', decision: given, before: null } as const;
    const decide = vi.fn(async (_: unknown, onProgress: ReportProgress) => {
      await onProgress({ step: 'Reading again', share: 0.5 });
      return opened;
    });
    const takeBack = vi.fn(async () => opened);
    const client = createEngineClient(() => fakeWorker({ decide, takeBack, journal: async () => [entry] }));
    const steps: string[] = [];
    const listener = { ...silent, onProgress: ({ step }: { step: string }) => steps.push(step) };
    expect(plain(await client.run('decide', [[given]], listener))).toEqual(opened);
    expect(decide.mock.calls[0]?.[0]).toEqual([given]);
    expect(steps).toEqual(['Reading again']);
    expect(plain(await client.run('takeBack', [['q1']], silent))).toEqual(opened);
    expect(takeBack.mock.calls[0]?.[0 as never]).toEqual(['q1']);
    expect(await requestsBy(client.call).journal()).toEqual([entry]);
  });

  test('a worker that never answers ends in a failure', async () => {
    const worker = fakeWorker({ open: () => never });
    const run = createEngineClient(() => worker).run('open', [], silent);
    const caught = expect(run).rejects.toThrow(EngineFailure);
    await vi.advanceTimersByTimeAsync(startTimeout_ms);
    await caught;
    expect(worker.terminate).toHaveBeenCalled();
  });

  test('a worker that fails to load ends in a failure, and so does every later call', async () => {
    const worker = fakeWorker({ open: () => never, ask: async () => undefined });
    const client = createEngineClient(() => worker);
    const run = client.run('open', [], silent);
    worker.dispatchEvent(new Event('error', { cancelable: true }));
    await expect(run).rejects.toThrow('did not start');
    await expect(requestsBy(client.call).ask('unit', ['A'])).rejects.toThrow(EngineFailure);
  });

  test('a silent worker is reported again and again, and not ended', async () => {
    const worker = fakeWorker({
      open: async (onProgress: ReportProgress) => {
        await onProgress({ step: 'Fitting', share: 0.1 });
        return never;
      },
    });
    const onStalled = vi.fn();
    const onProgress = vi.fn();
    void createEngineClient(() => worker).run('open', [], { onProgress, onStalled });
    await vi.waitFor(() => expect(onProgress).toHaveBeenCalledOnce());
    await vi.advanceTimersByTimeAsync(2 * stallTimeout_ms + 100);
    expect(onStalled).toHaveBeenCalledTimes(2);
    expect(worker.terminate).not.toHaveBeenCalled();
  });

  test('a worker that does not stop when asked is ended', async () => {
    const worker = fakeWorker({ open: () => never, cancel: async () => {} });
    const client = createEngineClient(() => worker);
    const run = client.run('open', [], silent);
    const caught = expect(run).rejects.toThrow('Nothing in your files was changed');
    client.cancel();
    await vi.advanceTimersByTimeAsync(cancelTimeout_ms);
    await caught;
  });

  test('nothing is ended where no work is under way', async () => {
    const worker = fakeWorker({ open: async () => opened, cancel: async () => {} });
    const client = createEngineClient(() => worker);
    await client.run('open', [], silent);
    client.cancel();
    await vi.advanceTimersByTimeAsync(startTimeout_ms + cancelTimeout_ms);
    expect(worker.terminate).not.toHaveBeenCalled();
  });
});

import { expect, test, vi } from 'vitest';
import { type KeptSite, keepSite } from '../../app/offline/keepSite';

type Said = { readonly act: string; readonly version?: string };

/** A service worker of a version that answers as ours does. */
class Worker extends EventTarget {
  readonly said: Said[] = [];

  constructor(private readonly version: string) {
    super();
  }

  postMessage(word: Said, [port]: readonly MessagePort[] = []): void {
    this.said.push(word);
    port?.postMessage(this.version);
  }
}

class Registration extends EventTarget {
  installing: Worker | null = null;
  waiting: Worker | null = null;
  active: Worker | null = null;
}

async function page(version: string, registration: Registration) {
  const seen: KeptSite[] = [];
  const reload = vi.fn();
  const container = Object.assign(new EventTarget(), { register: async () => registration });
  const take = await keepSite('/serviceWorker.js', {
    version,
    container: container as unknown as ServiceWorkerContainer,
    onChange: (kept) => seen.push(kept),
    reload,
  });
  return { seen, reload, take, container };
}

const wait = () => new Promise((resolve) => setTimeout(resolve, 30));

test('the first visit says nothing until the version is there as a whole and answers for the page', async () => {
  const registration = new Registration();
  const first = new Worker('v1');
  registration.installing = first;
  const { seen, reload } = await page('v1', registration);
  registration.waiting = first;
  first.dispatchEvent(new Event('statechange'));
  await wait();
  expect(seen).toEqual([]);
  Object.assign(registration, { waiting: null, installing: null, active: first });
  first.dispatchEvent(new Event('statechange'));
  await vi.waitFor(() => expect(seen).toEqual(['kept']));
  expect(first.said).toEqual([{ act: 'take over', version: 'v1' }]);
  expect(reload).not.toHaveBeenCalled();
});

test('a newer version is offered once it waits, takes over when told, and every page of the old one is loaded anew', async () => {
  const registration = new Registration();
  registration.active = new Worker('v1');
  const { seen, reload, take, container } = await page('v1', registration);
  const newer = new Worker('v2');
  registration.installing = newer;
  registration.dispatchEvent(new Event('updatefound'));
  registration.waiting = newer;
  newer.dispatchEvent(new Event('statechange'));
  await vi.waitFor(() => expect(seen.at(-1)).toBe('newer'));
  expect(reload).not.toHaveBeenCalled();
  take();
  expect(newer.said).toEqual([{ act: 'replace' }]);
  Object.assign(registration, { waiting: null, active: newer });
  container.dispatchEvent(new Event('controllerchange'));
  await vi.waitFor(() => expect(reload).toHaveBeenCalledTimes(1));
});

test('a page of another version than the one that answers is offered that one, and never loaded anew by itself', async () => {
  const registration = new Registration();
  registration.active = new Worker('v2');
  const { seen, reload, take } = await page('v1', registration);
  await vi.waitFor(() => expect(seen).toEqual(['newer']));
  expect(reload).not.toHaveBeenCalled();
  take();
  expect(reload).toHaveBeenCalledTimes(1);
});

test('the page goes on when a service worker of its own version takes it over', async () => {
  const registration = new Registration();
  registration.active = new Worker('v1');
  const { seen, reload, container } = await page('v1', registration);
  container.dispatchEvent(new Event('controllerchange'));
  await vi.waitFor(() => expect(seen).toEqual(['kept', 'kept']));
  expect(reload).not.toHaveBeenCalled();
});

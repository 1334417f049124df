/** What is known of the copy of the site that this browser keeps: nothing yet, this page's version, or a newer one. */
export type KeptSite = 'not known' | 'kept' | 'newer';

/** What the page needs of the browser. */
export interface KeepingPage {
  /** Version of the page in the window. */
  readonly version: string;
  readonly container: ServiceWorkerContainer;
  readonly onChange: (kept: KeptSite) => void;
  /** Loads the page anew. */
  readonly reload: () => void;
}

/** Longest wait for the word of a service worker, ms. */
const patience_ms = 10_000;

/** Asks a service worker to answer for this page if it is of its version, and for its own version. */
function takeOver(worker: ServiceWorker, version: string): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const { port1, port2 } = new MessageChannel();
    setTimeout(() => reject(new Error('the service worker did not answer')), patience_ms);
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage({ act: 'take over', version }, [port2]);
  });
}

/**
 * Has the site kept for use without the network and reports what is kept; a page that comes under a service worker of
 * another version is loaded anew, so that it is never made of two versions.
 *
 * @returns takes the newer version: pages of the old one are loaded anew
 * @throws Error if the browser keeps nothing, such as in a private window
 */
export async function keepSite(address: string, page: KeepingPage): Promise<() => void> {
  const { version, container, onChange, reload } = page;
  const registration = await container.register(address, { updateViaCache: 'none' });
  const look = async (otherVersion: () => void) => {
    const { waiting, active } = registration;
    if (active === null) return;
    if (waiting !== null) return onChange('newer');
    const running = await takeOver(active, version);
    if (running === version) onChange('kept');
    else otherVersion();
  };
  const lookAgain = () => void look(() => onChange('newer')).catch(() => {});
  const watch = (worker: ServiceWorker | null) => worker?.addEventListener('statechange', lookAgain);
  for (const worker of [registration.installing, registration.waiting]) watch(worker);
  registration.addEventListener('updatefound', () => watch(registration.installing));
  container.addEventListener('controllerchange', () => void look(reload).catch(() => {}));
  lookAgain();
  return () => {
    if (registration.waiting === null) reload();
    else registration.waiting.postMessage({ act: 'replace' });
  };
}

import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import { describe, expect, test } from 'vitest';

const source = readFileSync('lib/batch/site/serviceWorker.js', 'utf8');
const root = 'https://site.example/fleet/';
const site = {
  version: 'v2',
  workerPolicy: "default-src 'none'",
  files: { '': 'sha256-index', 'unit/': 'sha256-unit', 'a.js': 'sha256-a', '404/': 'sha256-none' },
};

interface Asked {
  readonly url: string;
  readonly method?: string;
  readonly mode?: string;
  readonly clientId?: string;
}

type Handler = (event: object) => void;

/** The service worker in a browser of a few lines: caches, clients and a network whose files are told. */
function started(files: Readonly<Record<string, string>>, clients: Readonly<Record<string, string>> = {}) {
  const stores = new Map<string, Map<string, Response>>();
  const handlers = new Map<string, Handler>();
  const did: string[] = [];
  const caches = {
    open: async (name: string) => {
      const store = stores.get(name) ?? new Map<string, Response>();
      stores.set(name, store);
      return {
        match: async (url: string) => store.get(url)?.clone(),
        put: async (url: string, response: Response) => void store.set(url, response),
      };
    },
    keys: async () => [...stores.keys()],
    delete: async (name: string) => stores.delete(name),
  };
  const fetch = async (asked: string | Asked, options?: { integrity?: string }) => {
    const url = typeof asked === 'string' ? asked : asked.url;
    did.push(`fetch ${url}`);
    const found = files[url];
    if (found === undefined) throw new TypeError('Failed to fetch');
    if (options?.integrity !== undefined && options.integrity !== `sha256-${found}`)
      throw new TypeError('Failed integrity');
    return new Response(found, { headers: { 'Content-Type': 'text/x', 'X-Other': 'y' } });
  };
  const self = {
    registration: { scope: root, unregister: async () => void did.push('unregister') },
    clients: {
      claim: async () => void did.push('claim'),
      get: async (id: string) => (id in clients ? { url: clients[id] } : undefined),
    },
    skipWaiting: async () => void did.push('skipWaiting'),
    addEventListener: (name: string, handler: Handler) => handlers.set(name, handler),
  };
  runInContext(source, createContext({ self, caches, fetch, site, Response, URL, Promise, Object }));
  const send = async (name: string, event: object) => {
    let work: Promise<unknown> = Promise.resolve();
    const take = (promise: Promise<unknown>) => {
      work = promise;
    };
    handlers.get(name)?.({ ...event, waitUntil: take, respondWith: take });
    return work;
  };
  const ask = ({ clientId = '', method = 'GET', mode = 'cors', url }: Asked) =>
    send('fetch', { request: { url, method, mode }, clientId }) as Promise<Response>;
  return { stores, did, send, ask };
}

const whole = { [root]: 'index', [`${root}unit/`]: 'unit', [`${root}a.js`]: 'a', [`${root}404/`]: 'none' };
const text = async (response: Response) => `${response.type} ${response.status} ${await response.text()}`;

describe('the service worker', () => {
  test('keeps every file before it is offered, scripts with the policy of a worker', async () => {
    const { send, ask, did } = started(whole);
    await send('install', {});
    expect(did).toHaveLength(4);
    const script = await ask({ url: `${root}a.js?v=1` });
    expect([...script.headers.entries()].sort()).toEqual([
      ['content-security-policy', "default-src 'none'"],
      ['content-type', 'text/x'],
    ]);
    expect(await script.text()).toBe('a');
    expect(did).toHaveLength(4);
  });

  test.each([
    ['another content', { ...whole, [`${root}a.js`]: 'b' }],
    ['none', Object.fromEntries(Object.entries(whole).filter(([url]) => !url.endsWith('a.js')))],
  ])('is not offered where a file has %s', async (_, files) => {
    await expect(started(files).send('install', {})).rejects.toThrow(/Failed/);
  });

  test('answers a page by its folder, whatever the query, with index.html or without the slash', async () => {
    const { send, ask } = started(whole);
    await send('install', {});
    const page = { mode: 'navigate' };
    expect(await text(await ask({ ...page, url: `${root}?frame=Lark#x` }))).toBe('default 200 index');
    expect(await text(await ask({ ...page, url: `${root}unit/index.html` }))).toBe('default 200 unit');
    const bare = await ask({ ...page, url: `${root}unit?id=1` });
    expect([bare.status, bare.headers.get('location')]).toEqual([302, `${root}unit/?id=1`]);
  });

  test('refuses what leaves the site, from pages and from workers, and what would send something to it', async () => {
    const { send, ask, did } = started(whole, { page: `${root}unit/?id=1`, worker: `${root}a.js#params` });
    await send('install', {});
    for (const clientId of ['page', 'worker', '', 'unknown']) {
      expect((await ask({ clientId, url: 'https://other.example/?q=1', mode: 'no-cors' })).type).toBe(
        'error',
      );
      expect((await ask({ clientId, url: `${root}collect?q=1` })).type).toBe('error');
      expect((await ask({ clientId, url: `${root}a.js`, method: 'POST' })).type).toBe('error');
    }
    expect(did).toHaveLength(4);
  });

  test('lets another site in a folder below it be', async () => {
    const outside = 'https://other.example/font';
    const { ask } = started({ [`${root}wiki/`]: 'wiki', [outside]: 'font' }, { wiki: `${root}wiki/` });
    expect(await text(await ask({ url: `${root}wiki/`, mode: 'navigate' }))).toBe('default 200 wiki');
    expect(await text(await ask({ clientId: 'wiki', url: outside }))).toBe('default 200 font');
  });

  test('an unknown address without the network is answered by the page that says so', async () => {
    const { send, ask } = started(whole);
    await send('install', {});
    expect(await text(await ask({ url: `${root}nowhere/`, mode: 'navigate' }))).toBe('default 200 none');
  });

  test('drops the versions before it, and nobody else’s caches', async () => {
    const { send, stores } = started(whole);
    for (const name of [`endfloat ${root} v1`, 'endfloat https://site.example/ v1', 'other'])
      stores.set(name, new Map());
    await send('install', {});
    await send('activate', {});
    expect([...stores.keys()].sort()).toEqual([
      'endfloat https://site.example/ v1',
      `endfloat ${root} v2`,
      'other',
    ]);
  });

  test('takes a page over only if it is of the same version, and takes the place of another when told', async () => {
    const { send, did } = started(whole);
    const said: unknown[] = [];
    const ports = [{ postMessage: (word: unknown) => said.push(word) }];
    await send('message', { data: { act: 'take over', version: 'v1' }, ports });
    expect([said, did]).toEqual([['v2'], []]);
    await send('message', { data: { act: 'take over', version: 'v2' }, ports });
    await send('message', { data: { act: 'replace' }, ports: [] });
    expect([said, did]).toEqual([
      ['v2', 'v2'],
      ['claim', 'skipWaiting'],
    ]);
  });

  test('a cache that was cleared is filled again, or the version ends where the site has another one', async () => {
    const same = started(whole);
    expect(await text(await same.ask({ url: `${root}a.js` }))).toBe('default 200 a');
    const other = started({ ...whole, [root]: 'new index', [`${root}a.js`]: 'new' });
    expect((await other.ask({ url: `${root}a.js` })).type).toBe('error');
    expect(await text(await other.ask({ url: root, mode: 'navigate' }))).toBe('default 200 new index');
    expect(other.did).toContain('unregister');
  });
});

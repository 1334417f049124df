/* global site */
// The build writes `site` above these lines: { version, workerPolicy, files: { address below the root: its hash } }.
// Once this runs, a page gets every file from the cache of one version and nothing from anywhere else.

const root = self.registration.scope;
const cachePrefix = `endfloat ${root} `;
const cacheName = `${cachePrefix}${site.version}`;
const lanes = 4;

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(dropOtherVersions()));
self.addEventListener('message', (event) => event.waitUntil(obey(event)));
self.addEventListener('fetch', (event) => event.respondWith(answer(event)));

/** Keeps every file of the version; one that cannot be had, or is another than the list says, fails the whole. */
async function keepAll() {
  const cache = await caches.open(cacheName);
  const addresses = Object.keys(site.files)[Symbol.iterator]();
  const lane = async () => {
    for (const address of addresses) if (!(await cache.match(root + address))) await keepFile(cache, address);
  };
  await Promise.all(Array.from({ length: lanes }, lane));
}

/** Fetches a file, keeps it if it is that of this version, and answers with it; rejects if it is not. */
async function keepFile(cache, address) {
  const response = await fetch(root + address, {
    cache: 'no-cache',
    redirect: 'error',
    integrity: site.files[address],
  });
  if (!response.ok) throw new Error(`${address} could not be kept: the site answered ${response.status}`);
  const headers = { 'Content-Type': response.headers.get('Content-Type') ?? 'application/octet-stream' };
  // A worker is governed by what its own script came with; a host that sends no policy is made up for.
  if (address.endsWith('.js')) headers['Content-Security-Policy'] = site.workerPolicy;
  const kept = new Response(await response.arrayBuffer(), { headers });
  await cache.put(root + address, kept.clone());
  return kept;
}

/** Runs when no page of another version is open, or the user agreed to have them loaded anew. */
async function dropOtherVersions() {
  for (const name of await caches.keys())
    if (name.startsWith(cachePrefix) && name !== cacheName) await caches.delete(name);
}

async function obey({ data, ports: [port] }) {
  if (data.act === 'replace') return self.skipWaiting();
  // A page of another version is left alone: half of it would be of this one.
  if (data.version === site.version) await self.clients.claim();
  port.postMessage(site.version);
}

/** Address below the root of a file of the site, whatever the query; null for anything else. */
function listed(url) {
  const [place] = url.split(/[?#]/);
  if (!place.startsWith(root)) return null;
  const address = place.slice(root.length).replace(/(^|\/)index\.html$/, '$1');
  return Object.hasOwn(site.files, address) ? address : null;
}

async function answer({ request, clientId }) {
  const address = ['GET', 'HEAD'].includes(request.method) ? listed(request.url) : null;
  if (address !== null) return file(address, request);
  const { origin, pathname, search } = new URL(request.url);
  if (request.mode === 'navigate') {
    if (listed(`${origin}${pathname}/`) !== null) return Response.redirect(`${origin}${pathname}/${search}`);
    return fetch(request).catch(() => file('404/', request));
  }
  return (await isOwn(clientId)) ? Response.error() : fetch(request);
}

/** Whether a page or worker is of this site: another one may lie in a folder below it. */
async function isOwn(clientId) {
  const client = clientId === '' ? undefined : await self.clients.get(clientId);
  return client === undefined || listed(client.url) !== null;
}

async function file(address, request) {
  const cache = await caches.open(cacheName);
  const kept = await cache.match(root + address);
  if (kept !== undefined) return kept;
  try {
    return await keepFile(cache, address);
  } catch {
    if (request.mode !== 'navigate') return Response.error();
    // The cache was cleared and the site has another version by now: this one is at its end.
    await self.registration.unregister();
    return fetch(request);
  }
}

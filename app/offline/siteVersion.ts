/** Version that the page in the window was built as; null on a development server, where no version is kept. */
export function siteVersion(): string | null {
  return document.querySelector<HTMLMetaElement>('meta[name="site-version"]')?.content ?? null;
}

/** Address of the service worker: it lies beside the manifest, at the root of the site, under whatever path that is. */
export function serviceWorkerAddress(): string | null {
  const manifest = document.querySelector<HTMLLinkElement>('link[rel="manifest"]');
  return manifest === null ? null : new URL('serviceWorker.js', manifest.href).href;
}

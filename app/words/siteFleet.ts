const demo = 'demo fleet';

/** What the fleet that came with the site is called: the batch command writes it into sites that it makes of other data. */
export function siteFleetName(): string {
  if (typeof document === 'undefined') return demo;
  return document.querySelector<HTMLMetaElement>('meta[name="site-fleet"]')?.content ?? demo;
}

/** False where the fleet that came with the site is a real one. */
export function isDemoSite(): boolean {
  return siteFleetName() === demo;
}

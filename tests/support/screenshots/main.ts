import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { openSite } from '../openSite';
import { openFleet, visitPage } from '../sitePages';

/** The pictures of README.md: `npm run -s screenshots`, from the built site with the demo fleet. */
const views = [
  { name: 'fleet', address: '/' },
  { name: 'unit', address: '/unit/?id=O-3005' },
  { name: 'drift', address: '/drift/?unit=O-3005' },
  { name: 'spares', address: '/spares/' },
] as const;

const folder = join(process.cwd(), 'data', 'screenshots');
const size = { width: 1366, height: 1024 };

async function takeScreenshots(): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const site = await openSite();
  try {
    const { page } = await site.visit(size);
    await openFleet(page, site.url);
    for (const { name, address } of views) {
      await visitPage(page, address);
      await page.evaluate(() => scrollTo(0, 0));
      await page.mouse.move(0, 0);
      await page.screenshot({ path: join(folder, `${name}.png`) });
    }
  } finally {
    await site.close();
  }
}

takeScreenshots().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.stack : error}\n`);
  process.exitCode = 1;
});

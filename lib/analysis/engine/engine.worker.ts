import { expose } from 'comlink';
import type { InputFile } from '../../records/importReport';
import { openBrowserDatabase } from '../../store/browserDatabase';
import { fetchedFile } from '../../store/fetchedFile';
import type { PreparedAnswer } from './AnswersBefore';
import { Engine } from './Engine';
import { forPage } from './forPage';
import { BrowserTabs } from './kept/BrowserTabs';
import { guardWrites } from './kept/guardWrites';
import { secondThread } from './secondThread';
import { workOnTwo } from './workOnTwo';

/** Root of the site, from where this worker's own file lies, so that the site may sit under any path. */
const site = new URL(self.location.href.replace(/_next\/.*$/, ''));

/** Fetches a file by its address below the root of the site. */
function fetched<Content>(path: string, read: (response: Response) => Promise<Content>): Promise<Content> {
  return fetchedFile(path, new URL(path, site), read);
}

async function demoFiles(): Promise<readonly InputFile[]> {
  const names: readonly string[] = await fetched('demo/index.json', (response) => response.json());
  return Promise.all(
    names.map(async (name) => ({
      name,
      bytes: new Uint8Array(await fetched(`demo/${name}`, (response) => response.arrayBuffer())),
    })),
  );
}

/** Packed here and not by the host: many do not pack. */
function unpacked(path: string) {
  return fetched(path, ({ body }) => new Response(body?.pipeThrough(new DecompressionStream('gzip'))).json());
}

/** What was computed when the site was built; it stands for these very files and this very program. */
const demoAnswer: PreparedAnswer = {
  fleet: () => unpacked('demo/fleet.json.gz'),
  answers: () => unpacked('demo/answers.json.gz'),
};

const engine = new Engine({
  openDatabase: () =>
    openBrowserDatabase({
      worker: new URL('engine/duckdb-browser-eh.worker.js', site).href,
      wasmGzip: new URL('engine/duckdb-eh.wasm.gz', site).href,
    }),
  demoFiles,
  demoAnswer,
  work: workOnTwo(secondThread),
  version: process.env.SITE_SOURCES ?? null,
  now: () => new Date().toISOString(),
  tabs: new BrowserTabs(),
});

expose(forPage(guardWrites(engine, () => engine.mayWrite())));

import { existsSync, readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';

/** A server on this machine that notes what reaches it. */
export interface NotingHost {
  readonly url: string;
  /** Paths of what was asked for, in order. */
  readonly reached: string[];
  close(): Promise<void>;
}

async function listening(server: Server, reached: string[]): Promise<NotingHost> {
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    reached,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/** Another site, to which nothing may go. It would answer anybody, a web socket with an error after the request. */
export async function elsewhere(): Promise<NotingHost> {
  const reached: string[] = [];
  const server = createServer((request, response) => {
    reached.push(request.url ?? '');
    response.setHeader('Access-Control-Allow-Origin', '*');
    response.end('taken');
  });
  return listening(server, reached);
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
};

/** A host that serves a folder of our own and knows nothing of policies. */
export async function plainHost(root: string): Promise<NotingHost> {
  const reached: string[] = [];
  const server = createServer((request, response) => {
    const address = new URL(request.url ?? '', 'http://host');
    reached.push(address.pathname);
    const path = join(root, decodeURI(address.pathname).replace(/\/$/, '/index.html'));
    if (!existsSync(path)) {
      response.writeHead(404).end('not found');
      return;
    }
    response.setHeader('Content-Type', types[extname(path)] ?? 'application/octet-stream');
    response.end(readFileSync(path));
  });
  return listening(server, reached);
}

import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import compression from 'compression';
import serveStatic from 'serve-static';
import { policyOf, workerPolicy } from './site/policy.mjs';

/**
 * Serves the files below root on http://host:port/ and resolves to { url, port, close } once it listens.
 * Text is packed where the browser takes it packed, as most hosts do. A folder is answered by its index.html, anything unknown by 404.html; only GET and HEAD are answered.
 * A .gz file is sent as plain bytes: the page unpacks it itself. A page comes with the policy that it states, a script with
 * that of a worker. Rejects with EADDRINUSE if the port is taken.
 */
export function serveSite({ root, port = 0, host = '127.0.0.1' }) {
  const files = serveStatic(root, {
    cacheControl: false,
    setHeaders: (response, path) => {
      if (path.endsWith('.gz')) response.setHeader('Content-Type', 'application/octet-stream');
      if (path.endsWith('.js')) response.setHeader('Content-Security-Policy', workerPolicy);
      if (path.endsWith('.html')) setPagePolicy(response, readFileSync(path, 'utf8'));
    },
  });
  const pack = compression();
  const server = createServer((request, response) => {
    response.setHeader('Cache-Control', 'no-cache');
    response.setHeader('X-Content-Type-Options', 'nosniff');
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    pack(request, response, () =>
      files(request, response, (error) => sendNotFound(root, request, response, error)),
    );
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      const { port: listening } = server.address();
      resolve({ url: `http://${host}:${listening}/`, port: listening, close: () => closeServer(server) });
    });
  });
}

function sendNotFound(root, request, response, error) {
  const page = join(root, '404.html');
  const status = error?.statusCode ?? 404;
  const body = existsSync(page) ? readFileSync(page, 'utf8') : 'Not found';
  setPagePolicy(response, body);
  response.writeHead(status, {
    'Content-Type': 'text/html; charset=utf-8',
    'Content-Length': Buffer.byteLength(body),
  });
  response.end(request.method === 'HEAD' ? undefined : body);
}

function setPagePolicy(response, html) {
  const policy = policyOf(html);
  if (policy !== null) response.setHeader('Content-Security-Policy', policy);
}

function closeServer(server) {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

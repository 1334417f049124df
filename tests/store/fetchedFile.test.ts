import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fetchedFile } from '../../lib/store/fetchedFile';

let server: Server;
let root: string;
/** How often a file is still to break off. */
let breaks = 0;

/** Address of a server that listens on a free port. */
async function listening(one: Server): Promise<string> {
  await new Promise<void>((resolve) => one.listen(0, '127.0.0.1', resolve));
  return `http://127.0.0.1:${(one.address() as AddressInfo).port}`;
}
const closed = (one: Server) => new Promise((resolve) => one.close(resolve));

beforeAll(async () => {
  server = createServer((request, response) => {
    if (request.url === '/demo/units.csv') return response.end('unit,frame\n');
    if (request.url === '/demo/broken.csv' || (request.url === '/demo/once.csv' && breaks-- > 0)) {
      // Half of what was promised, and then the line is cut.
      response.writeHead(200, { 'content-length': '1000' }).write('unit,');
      return setTimeout(() => response.destroy(), 20);
    }
    if (request.url === '/demo/once.csv') return response.end('unit,frame\n');
    return response.writeHead(404).end('No such page');
  });
  root = await listening(server);
});
afterAll(() => closed(server));

const text = (name: string, at = root) => fetchedFile(name, `${at}/${name}`, (response) => response.text());

describe('a file of the site', () => {
  test('is read as asked', async () => {
    expect(await text('demo/units.csv')).toBe('unit,frame\n');
    const bytes = await fetchedFile('demo/units.csv', new URL('/demo/units.csv', root), (response) =>
      response.arrayBuffer(),
    );
    expect(bytes.byteLength).toBe(11);
  });

  test('that breaks off is asked for once more, and no more than once', async () => {
    breaks = 1;
    expect(await text('demo/once.csv')).toBe('unit,frame\n');
    breaks = 2;
    await expect(text('demo/once.csv')).rejects.toThrow(/was not loaded as a whole/);
    expect(breaks).toBe(0);
  });

  test('that is not there is named with the answer of the server', async () => {
    await expect(text('demo/parts.csv')).rejects.toThrow(
      /^demo\/parts\.csv could not be loaded, since the site answered with status 404: try again, or ask/,
    );
  });

  test('that breaks off, or holds something else, is named', async () => {
    await expect(text('demo/broken.csv')).rejects.toThrow(
      /^demo\/broken\.csv was not loaded as a whole, .*: check the connection, then try again$/,
    );
    const json = fetchedFile('demo/index.json', `${root}/demo/units.csv`, (response) => response.json());
    await expect(json).rejects.toThrow(
      /^demo\/index\.json was not loaded as a whole, or is not what it should be/,
    );
  });

  test('is named where nothing answers, with the cause kept', async () => {
    const stopped = createServer();
    const address = await listening(stopped);
    await closed(stopped);
    const gone = text('demo/units.csv', address);
    await expect(gone).rejects.toThrow(
      /^demo\/units\.csv could not be loaded, since the site did not answer \(.+\): check the connection, then try again$/,
    );
    await expect(gone).rejects.toHaveProperty('cause', expect.any(TypeError));
  });
});

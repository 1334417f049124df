import { createServer, type Server } from 'node:net';

function listening(): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => resolve(server));
  });
}

/** Ports of loopback that nothing listens on; all are held until the last is found, so that none comes twice. */
export async function freePorts(count: number): Promise<readonly number[]> {
  const servers = await Promise.all(Array.from({ length: count }, listening));
  const ports = servers.map((server) => {
    const address = server.address();
    return typeof address === 'object' && address !== null ? address.port : 0;
  });
  await Promise.all(servers.map((server) => new Promise((resolve) => server.close(resolve))));
  return ports;
}

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { root } from './paths.mjs';

const script = 'worker.js';

/**
 * Writes the program's service worker into the folder of a finished build: a list of every file in it, and
 * a version made from their names and contents.
 */
export function writeWorker(folder) {
  const hash = createHash('sha256');
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== script && !entry.name.startsWith('.'))
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .split(sep)
        .join('/'),
    )
    .sort();
  const source = readFileSync(join(root, 'src/app/offline/worker.js'), 'utf8');
  hash.update(source);
  for (const file of files)
    hash
      .update('\0')
      .update(file)
      .update('\0')
      .update(readFileSync(join(folder, file)));
  const addresses = files.map((file) => (file === 'index.html' ? '' : file));
  const filled = source
    .replace('__VERSION__', hash.digest('hex').slice(0, 16))
    .replace("['__FILES__']", () => JSON.stringify(addresses));
  writeFileSync(join(folder, script), filled);
}

/**
 * Takes a worker of an earlier build away: one that stands at the address of the development server would
 * go on showing that build.
 */
const farewell = `
self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', async () => {
  await self.registration.unregister();
  for (const name of await caches.keys()) await caches.delete(name);
  for (const client of await self.clients.matchAll({ type: 'window' })) client.navigate(client.url);
});
`;

/** Makes every build work without a network, and development always show the newest files. */
export function offline() {
  return {
    name: 'offline',
    configureServer(server) {
      server.middlewares.use(`/${script}`, (_request, response) => {
        response.setHeader('Content-Type', 'text/javascript; charset=utf-8');
        response.end(farewell);
      });
    },
    writeBundle(options) {
      writeWorker(options.dir);
    },
  };
}

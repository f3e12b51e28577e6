import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

const types = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

/**
 * Nothing may come from or go to another origin. Inline styles are let through because React sets
 * them; pictures and workers may be held in the page itself.
 */
const policy = [
  "default-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "worker-src 'self' blob:",
  "connect-src 'self' data: blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/**
 * Serves a folder on the loopback address. A port that is taken makes room for the next one, unless
 * `strict`. Resolves to the address and a function that ends it.
 */
export async function serve(folder, { port = 4180, strict = false } = {}) {
  const server = createServer((request, response) => answer(folder, request, response));
  const ports = strict ? [port] : [...Array.from({ length: 20 }, (_, i) => port + i), 0];
  for (const candidate of ports) {
    if (await listens(server, candidate)) break;
  }
  if (!server.listening) throw new Error(`Port ${port} is taken by another program.`);
  return {
    url: `http://127.0.0.1:${server.address().port}/`,
    close() {
      server.close();
      server.closeAllConnections();
    },
  };
}

function listens(server, port) {
  return new Promise((resolve, reject) => {
    const failed = (error) => {
      server.off('listening', listening);
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    };
    const listening = () => {
      server.off('error', failed);
      resolve(true);
    };
    server.once('error', failed).once('listening', listening).listen(port, '127.0.0.1');
  });
}

function answer(folder, request, response) {
  const headers = {
    'Content-Security-Policy': policy,
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
  };
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { ...headers, Allow: 'GET, HEAD' }).end();
    return;
  }
  const path = fileFor(folder, request.url ?? '/');
  if (path === null) {
    response.writeHead(404, { ...headers, 'Content-Type': types['.txt'] }).end('There is nothing here.\n');
    return;
  }
  response.writeHead(200, {
    ...headers,
    'Content-Type': types[extname(path).toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': statSync(path).size,
    'Cache-Control': 'no-cache',
  });
  if (request.method === 'HEAD') response.end();
  else createReadStream(path).pipe(response);
}

/** The file that an address means, never outside `folder` and never a hidden one. */
function fileFor(folder, url) {
  let name;
  try {
    name = decodeURIComponent(new URL(url, 'http://127.0.0.1').pathname);
  } catch {
    return null;
  }
  if (name.includes('\0') || name.split('/').some((part) => part.startsWith('.'))) return null;
  const path = normalize(join(folder, name.endsWith('/') ? `${name}index.html` : name));
  if (!path.startsWith(folder + sep) || !existsSync(path) || !statSync(path).isFile()) return null;
  return path;
}

import { spawn } from 'node:child_process';
import { parseArgs } from 'node:util';
import { buildApp } from './build.mjs';
import { serve } from './serve.mjs';

const { values } = parseArgs({
  options: { port: { type: 'string' }, 'strict-port': { type: 'boolean' }, 'no-open': { type: 'boolean' } },
});

try {
  const folder = await buildApp();
  const port = values.port === undefined ? undefined : Number(values.port);
  const { url, close } = await serve(folder, { port, strict: values['strict-port'] ?? false });
  console.log(`Gentlebend is at ${url}  (Ctrl-C ends it)`);
  if (!values['no-open'] && !process.env.CI) openBrowser(url);
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, close);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}

/** Opens the person's browser; where there is none or no screen, the printed address has to do. */
function openBrowser(url) {
  const hasScreen = process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  if (process.platform === 'linux' && !hasScreen) return;
  const [program, ...args] = {
    darwin: ['open', url],
    win32: ['cmd', '/c', 'start', '""', url],
  }[process.platform] ?? ['xdg-open', url];
  const child = spawn(program, args, { stdio: 'ignore', detached: true });
  child.on('error', () => {});
  child.unref();
}

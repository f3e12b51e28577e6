// The command line: builds src/command when its sources have changed, silently, and runs it.
import { pathToFileURL } from 'node:url';
import { buildCommand } from './build.mjs';

// A reader that has seen enough, like `head`, closes the pipe; that is no error.
process.stdout.on('error', (error) => {
  if (error.code !== 'EPIPE') throw error;
});

try {
  const { main } = await import(pathToFileURL(await buildCommand()).href);
  process.exitCode = await main(process.argv.slice(2), process);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}

// The command line: builds src/command when its sources have changed, silently, and runs it.
import { pathToFileURL } from 'node:url';
import { buildCommand } from './build.mjs';

/** As `src/command/main.ts` has it for what fails. */
const failed = 3;

// A reader that has seen enough, like `head`, closes the pipe; that is no error.
process.stdout.on('error', (error) => {
  if (error.code !== 'EPIPE') throw error;
});

// The first Ctrl+C calls the work off where it can be left; a second one ends the process.
const calledOff = new AbortController();
process.once('SIGINT', () => calledOff.abort());

try {
  const { main } = await import(pathToFileURL(await buildCommand()).href);
  process.exitCode = await main(process.argv.slice(2), process, calledOff.signal);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = failed;
}

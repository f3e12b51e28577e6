import { main } from '../../src/command/main.ts';

/** Runs the command line as from a folder; resolves to its exit code and to what it wrote. */
export async function runCommand(args: readonly string[], folder?: string) {
  const written = { stdout: '', stderr: '' };
  const into = (key: keyof typeof written) => ({
    write: (text: string) => {
      written[key] += text;
    },
  });
  const env = folder === undefined ? {} : { INIT_CWD: folder };
  const code = await main(args, { stdout: into('stdout'), stderr: into('stderr'), env });
  return { code, ...written };
}

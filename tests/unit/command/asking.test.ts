import { expect, test } from 'vitest';
import { commands } from '../../../src/command/commands.ts';
import { main } from '../../../src/command/main.ts';
import { runCommand } from '../../support/command.ts';

const example = 'fixtures/example.gentlebend.json';

const run = (...args: string[]) => runCommand(args);

test.each([
  [['slove', example], /No command "slove"\. Did you mean "solve"\?/],
  [['parse', example], /^No command "parse"\.(?! Did)/],
  [['solve', example, '--jsno'], /No option "--jsno"\. Did you mean "--json"\?/],
  [['solve', example, '--goal', 'air'], /"solve" has no option "--goal"/],
  [['propose', example, '--goal', 'wind'], /--goal is one of air, quiet, cheap, opening, not "wind"/],
  [['propose', example, '--goal'], /--goal needs air\|quiet\|cheap\|opening after it/],
  [['parts', example, '--csv', 'parts', '--json'], /Either --csv or --json/],
  [['parts', example, '--out', 'x.csv'], /--out goes with --csv/],
  [['solve', example, '--json=yes'], /--json takes nothing/],
])('%j is refused with a hint', async (args, message) => {
  const { code, stdout, stderr } = await run(...args);
  expect([code, stdout]).toEqual([2, '']);
  expect(stderr).toMatch(message);
});

test('a value may follow its option or an equals sign, and files may follow a double dash', async () => {
  const spaced = await run('propose', example, '--scheme', 'wall', '--json');
  const joined = await run('propose', '--json', '--scheme=wall', '--', example);
  expect(joined).toEqual(spaced);
});

test.each(commands.map(({ name }) => name))(
  'help %s tells its options, examples, JSON and exit codes',
  async (name) => {
    const { code, stdout } = await run('help', name);
    expect([code, await run(name, '--help')]).toEqual([0, { code, stdout, stderr: '' }]);
    const command = commands.find((one) => one.name === name);
    for (const option of Object.keys(command?.options ?? {})) {
      expect(stdout).toContain(`--${option}`);
      expect(command?.words.options[option], option).toMatch(/\w/);
    }
    expect(stdout).toMatch(/Examples:\n {2}gentlebend /);
    expect(stdout).toMatch(/With --json/);
    expect(stdout).toMatch(/Exit codes:\n {2}0 /);
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  },
);

test('what is being done is told on a terminal alone, is taken away again, and not when quiet', async () => {
  const said = async (isTTY: boolean, ...args: string[]) => {
    let text = '';
    const stderr = {
      isTTY,
      write: (more: string) => {
        text += more;
      },
    };
    await main(['solve', example, example, ...args], { stdout: { write: () => {} }, stderr, env: {} });
    return text;
  };
  expect(await said(true)).toMatch(/1 of 2, .*solving Out the north wall/);
  expect((await said(true)).endsWith('\r\x1b[2K')).toBe(true);
  expect(await said(true, '--quiet')).toBe('');
  expect(await said(false)).toBe('');
});

test('work that is called off before it begins writes nothing', async () => {
  let written = '';
  const stdout = {
    write: (text: string) => {
      written += text;
    },
  };
  const around = { stdout, stderr: { write: () => {} }, env: {} };
  expect(await main(['solve', example, '--json'], around, AbortSignal.abort())).toBe(130);
  expect(written).toBe('');
});

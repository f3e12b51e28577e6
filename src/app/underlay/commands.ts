import { words } from '../../words/index.ts';
import { type Command, command, keysOf } from '../command.ts';

const says = words.commands.underlay;

const hasUnderlays: Command['enabled'] = ({ job }) => job.underlays.length > 0;

/** What can be asked for about the pictures under the sheets. */
export const underlayCommands: readonly Command[] = [
  command('file.underlay', 'file', says.place.title, ({ underlays }) => void underlays.choose(), {
    also: says.place.also,
  }),
  command('view.underlays', 'view', says.list.title, ({ underlays }) => underlays.list(true), {
    also: says.list.also,
  }),
  command(
    'tool.scale',
    'tool',
    says.scale.title,
    ({ board }) => board.set({ tool: 'scale', underlay: null }),
    {
      shortcuts: keysOf('tool.scale'),
      also: says.scale.also,
      enabled: hasUnderlays,
      checked: ({ tool }) => tool === 'scale',
    },
  ),
  command(
    'tool.underlay',
    'tool',
    says.move.title,
    ({ board }) => board.set({ tool: 'underlay', underlay: null }),
    {
      shortcuts: keysOf('tool.underlay'),
      also: says.move.also,
      enabled: hasUnderlays,
      checked: ({ tool }) => tool === 'underlay',
    },
  ),
];

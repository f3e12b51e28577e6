import { type Command, command, keysOf } from '../command.ts';

const hasUnderlays: Command['enabled'] = ({ job }) => job.underlays.length > 0;

/** What can be asked for about the pictures under the sheets. */
export const underlayCommands: readonly Command[] = [
  command('file.underlay', 'file', 'Place an underlay…', ({ underlays }) => void underlays.choose(), {
    also: 'import image picture scan photo PDF PNG JPEG SVG DXF plan background trace',
  }),
  command('view.underlays', 'view', 'Underlays', ({ underlays }) => underlays.list(true), {
    also: 'image picture background opacity lock invert remove',
  }),
  command(
    'tool.scale',
    'tool',
    'Set the scale of an underlay',
    ({ board }) => board.set({ tool: 'scale', underlay: null }),
    {
      shortcuts: keysOf('tool.scale'),
      also: 'two points calibrate picture',
      enabled: hasUnderlays,
      checked: ({ tool }) => tool === 'scale',
    },
  ),
  command(
    'tool.underlay',
    'tool',
    'Move an underlay',
    ({ board }) => board.set({ tool: 'underlay', underlay: null }),
    {
      shortcuts: keysOf('tool.underlay'),
      also: 'drag picture',
      enabled: hasUnderlays,
      checked: ({ tool }) => tool === 'underlay',
    },
  ),
];

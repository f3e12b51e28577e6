import { words } from '../words/index.ts';
import { type Command, command } from './command.ts';

const says = words.commands.check;

/** Holding what is drawn against codes, and what stands against what is drawn. */
export const checkCommands: readonly Command[] = [
  command(
    'check.codes',
    'view',
    says.codes.title,
    ({ ui }) => ui.setState({ panel: 'findings', findingsView: 'codes', faults: false, routeSearch: false }),
    { also: says.codes.also },
  ),
  command('check.rules', 'edit', says.rules.title, ({ ui }) => ui.setState({ rules: true }), {
    also: says.rules.also,
  }),
  command(
    'check.fault',
    'scheme',
    says.fault.title,
    ({ ui }) => ui.setState({ faults: true, routeSearch: false }),
    { also: says.fault.also },
  ),
];

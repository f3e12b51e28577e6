import { type Command, command } from './command.ts';

/** Holding what is drawn against codes, and what stands against what is drawn. */
export const checkCommands: readonly Command[] = [
  command(
    'check.codes',
    'view',
    'Check codes and practice',
    ({ ui }) => ui.setState({ panel: 'findings', findingsView: 'codes', faults: false, routeSearch: false }),
    { also: 'rules limits clearance make-up air material length turns authority' },
  ),
  command('check.rules', 'edit', 'Rules and limits…', ({ ui }) => ui.setState({ rules: true }), {
    also: 'code profile local authority override switch off',
  }),
  command(
    'check.fault',
    'scheme',
    'Find a fault',
    ({ ui }) => ui.setState({ faults: true, routeSearch: false }),
    { also: 'weak loud measured diagnose blocked stuck flap leak service trouble' },
  ),
];

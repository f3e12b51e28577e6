import { words } from '../../words/index.ts';
import { type Command, command } from '../command.ts';
import { startGuide } from '../guide/guide.ts';

const says = words.help.commands;

/** What helps a person to find their way. */
export const helpCommands: readonly Command[] = [
  command('view.help', 'view', says.help, ({ ui }) => ui.setState({ help: { section: null } }), {
    shortcuts: ['F1'],
    also: says.helpAlso,
  }),
  command(
    'view.glossary',
    'view',
    says.glossary,
    ({ ui }) => ui.setState({ help: { section: 'glossary' } }),
    {
      also: says.glossaryAlso,
    },
  ),
  command('view.guide', 'view', says.guide, startGuide, { also: says.guideAlso }),
];

import { words } from '../../words/index.ts';
import { type Command, command } from '../command.ts';

const says = words.share.commands;

/** A job handed on as a link, and taken from one. */
export const shareCommands: readonly Command[] = [
  command('file.share', 'file', says.copy, ({ ui }) => ui.setState({ sharing: 'copy' }), {
    also: says.copyAlso,
  }),
  command('file.openShared', 'file', says.open, ({ ui }) => ui.setState({ sharing: 'open' }), {
    also: says.openAlso,
  }),
];

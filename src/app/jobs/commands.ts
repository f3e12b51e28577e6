import { words } from '../../words/index.ts';
import { type Command, command } from '../command.ts';

const says = words.jobs.commands;

/** What can be asked for about the jobs, templates and versions of this browser. */
export const jobCommands: readonly Command[] = [
  command('file.template', 'file', says.template, ({ ui }) => ui.setState({ jobs: 'templates' }), {
    also: says.templateAlso,
  }),
  command('file.jobs', 'file', says.jobs, ({ ui }) => ui.setState({ jobs: 'jobs' }), {
    shortcuts: ['Mod+Shift+o'],
    also: says.jobsAlso,
  }),
  command('file.versions', 'file', says.versions, ({ ui }) => ui.setState({ versions: true }), {
    also: says.versionsAlso,
  }),
  command('file.saveTemplate', 'file', says.saveTemplate, ({ ui }) => ui.setState({ savingTemplate: true }), {
    also: says.saveTemplateAlso,
  }),
  command('file.export', 'file', words.jobs.archive.export, ({ jobs }) => void jobs.exportAll(), {
    also: says.exportAlso,
  }),
  command('file.import', 'file', words.jobs.archive.import, ({ jobs }) => void jobs.importAll(), {
    also: says.importAlso,
  }),
];

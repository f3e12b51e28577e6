import { plural } from './plural.ts';

/** The link that holds a whole job. */

const characters = (count: string) => `${count} characters`;

export const link = {
  /** Stands where a file's name would: "The shared link was not opened". */
  name: 'The shared link',
  damaged:
    'a part of the link is missing or was changed on the way; ask for it again, or for the job as a file',
  newer: 'it was made by a newer Gentlebend than this one; open it there, or ask for the job as a file',
  tooLarge: (limit: string) =>
    `what it holds is larger than ${limit}, which no link of this program is; ask for the job as a file`,
  empty: 'there is no job in the link',
};

export const dialog = {
  title: 'Share link',
  explains:
    'The whole job is in the link itself, after the # sign. Nothing is sent to a server: whoever opens the link opens a copy, and your work stays as it is.',
  field: 'Link',
  copy: 'Copy link',
  copied: 'The link is copied.',
  notCopied:
    'This browser did not let the link be copied. It is marked in the field: copy it with the keyboard.',
  length: characters,
  long: (count: string) =>
    `${characters(count)}: longer than the 8,000 that mail and chat programs usually carry whole. Try it first, or send the job as a file.`,
  tooLong: (count: string) =>
    `${characters(count)}: longer than the 2,000,000 that browsers open. Send the job as a file instead.`,
  leftOut: (count: number) =>
    `${plural(count, { one: 'The underlay is', other: `The ${count} underlays are` })} left out: pictures make a link too long for most programs. The route, the room and every number go with it.`,
  include: (count: number) =>
    `Include the ${plural(count, { one: 'underlay', other: `${count} underlays` })}`,
  local: (address: string) =>
    `This Gentlebend is served at ${address}, an address that means this machine alone. On another machine, open Gentlebend there and choose “Open a share link…”.`,
};

export const open = {
  title: 'Open a share link',
  explains: 'Paste a link that holds a job. It opens as a new job beside your own work.',
  field: 'Link',
  open: 'Open',
};

export const commands = {
  copy: 'Copy share link…',
  copyAlso: 'send url address mail fragment',
  open: 'Open a share link…',
  openAlso: 'paste url address received',
};

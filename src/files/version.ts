import about from '../../package.json' with { type: 'json' };

/** The program's version, as its package has it. */
export const programVersion: string = about.version;

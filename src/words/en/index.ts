export * as command from './command.ts';
export * as derivation from './derivation.ts';
export * as share from './share.ts';
export * as shell from './shell.ts';

export * as shell from './shell.ts';

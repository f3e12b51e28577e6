import fc from 'fast-check';

/**
 * Every test run draws the same random cases, so that a failure is the change's and not the day's;
 * `npm run soak` draws new ones each time, to find what nobody has thought of.
 */
if (import.meta.env.MODE !== 'soak') fc.configureGlobal({ seed: 20261125 });

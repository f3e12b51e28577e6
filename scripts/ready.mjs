// Makes a fresh clone ready: checks Node, installs packages that are missing. Runs before node_modules
// exists, and on a Node too old for this project, so it imports nothing until it knows better.
const needed = [20, 19];
const found = process.versions.node.split('.').map(Number);
const oldNode = found[0] < needed[0] || (found[0] === needed[0] && found[1] < needed[1]);

if (oldNode) {
  console.error(
    `Gentlebend needs Node ${needed.join('.')} or newer, and this is Node ${process.versions.node}. ` +
      'Install a newer one from https://nodejs.org and run the command again.',
  );
  process.exitCode = 1;
} else {
  import('./install.mjs')
    .then(({ installMissing }) => installMissing({ quiet: process.argv.includes('--quiet') }))
    .catch((error) => {
      console.error(error.message);
      process.exitCode = 1;
    });
}

// Writes the documents in docs/ that come from the sources. A test fails when one of them is stale.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { runnerImport } from 'vite';
import { root } from './paths.mjs';

/** What is written where: the text that a function of a module gives. */
const documents = [
  { path: 'docs/job.schema.json', module: 'src/files/schema.ts', text: (module) => module.jobSchemaText() },
];

for (const { path, module, text } of documents) {
  const loaded = await runnerImport(join(root, module), { root, configFile: false, logLevel: 'error' });
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text(loaded.module));
  console.log(path);
}

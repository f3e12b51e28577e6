import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

/** Where a text that people read would stand as it is in a room without a screen. */
const literals =
  /\b(?:title|label|message|hint|remedy|name|reason|because|source): (?:'[A-Z][^']*[a-z] [^']*'|`(?!\$\{)[A-Z][^`]* [^`]*`)|\bmessage: `|\brefused\(\s*['`]|\bRefused\(\s*['`]/g;

/** A network that is put together wrongly is the program's mistake: what is said of it is for its developers. */
const forDevelopers = ['hydraulics/network-index.ts', 'hydraulics/network.ts', 'hydraulics/prepare.ts'];
/** Published in the schema of the file, which has one language. */
const published = ['files/schema.ts'];

const rooms = ['units', 'hydraulics', 'graph', 'advice', 'drawing', 'files'];
const sources = rooms
  .flatMap((room) =>
    readdirSync(`src/${room}`, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.ts'))
      .map((path) => `${room}/${path.replaceAll('\\', '/')}`),
  )
  .filter((path) => ![...forDevelopers, ...published].includes(path));

it('looks through the sources of the rooms without a screen', () => {
  expect(sources.length).toBeGreaterThan(200);
});

it('finds a text of a finding, of a derivation and of a refusal', () => {
  const found = `{ message: \`The duct \${name} ends.\`, name: 'Air density at rest' }; new Refused('No page.')`;
  expect(found.match(literals)).toHaveLength(3);
});

it('leaves the texts of those rooms to the words', () => {
  const left = sources.flatMap((path) =>
    (readFileSync(`src/${path}`, 'utf8').match(literals) ?? []).map((text) => `${path}: ${text}`),
  );
  expect(left).toEqual([]);
});

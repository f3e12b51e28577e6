import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

/** Where a text of the interface would stand as it is, beside what lint finds between tags. */
const literals =
  /\b(?:aria-label|aria-description|aria-roledescription|label|title|placeholder|description|heading|caption|note)="[^"#]*[A-Za-z][^"#]*"|\b(?:dispatch|say|announce|edit)\(\s*(?:'[^']*[A-Za-z][^']*'|`(?!\$\{)[^`]*[A-Za-z][^`]*`)|\b(?:title|label|message|hint): '[A-Z][^']*'/g;

const sources = ['src/app', 'src/canvas'].flatMap((room) =>
  readdirSync(room, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => `${room}/${path}`),
);

it('looks through the sources of the interface', () => expect(sources.length).toBeGreaterThan(200));

it('finds a text in an attribute, in what is announced and in a table', () => {
  const found = `<Field label="Width" />; say('Deleted.'); { title: 'Pan' }; <p className="lead" />`.match(
    literals,
  );
  expect(found).toEqual([`label="Width"`, `say('Deleted.'`, `title: 'Pan'`]);
});

it.each(sources)('%s holds no text of the interface', (path) => {
  expect(readFileSync(path, 'utf8').match(literals)).toBeNull();
});

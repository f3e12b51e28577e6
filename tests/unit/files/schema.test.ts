import { expect, test } from 'vitest';
import { jobSchemaText } from '../../../src/files/schema.ts';

test('the published schema is the one that reads job files (npm run docs writes it)', async () => {
  await expect(jobSchemaText()).toMatchFileSnapshot('../../../docs/job.schema.json');
});

test('the published schema asks for a scheme, a hood list and a known version', () => {
  const schema = JSON.parse(jobSchemaText());
  expect(schema.required).toEqual(['format', 'version', 'title', 'units', 'hoods', 'schemes']);
  expect(schema.properties.version.const).toBe(1);
});

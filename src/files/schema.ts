import * as z from 'zod';
import { job } from '../graph/document.ts';

/**
 * The JSON Schema of a job file as text, from the same schema that reads it. `npm run docs` publishes
 * it as `docs/job.schema.json`.
 */
export function jobSchemaText(): string {
  const schema = z.toJSONSchema(job, { io: 'input' });
  return `${JSON.stringify({ title: 'Gentlebend job, version 1', ...schema }, null, 2)}\n`;
}

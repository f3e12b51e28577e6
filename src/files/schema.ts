import * as z from 'zod';
import { job } from '../graph/document.ts';

/** The JSON Schema of a job file, from the same schema that reads it; published as `docs/job.schema.json`. */
export function jobJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(job, { io: 'input' });
  return { title: 'Gentlebend job, version 1', ...schema };
}

import { type Job, job as jobSchema } from '../graph/document.ts';

/**
 * A job as the text of its file: two-space JSON in the order of the schema whatever order the edits
 * left, a list of plain numbers on one line, a final newline. `readJob` gives the same job back.
 */
export function writeJob(job: Job): string {
  const ordered = jobSchema.safeParse(job);
  return `${print(ordered.success ? ordered.data : job, '')}\n`;
}

function print(value: unknown, indent: string): string {
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return '[]';
    if (value.every((item) => typeof item === 'number')) return `[${value.map(plain).join(', ')}]`;
    if (value.every(isNumberPair)) return `[${value.map((pair) => print(pair, inner)).join(', ')}]`;
    return `[\n${value.map((item) => inner + print(item, inner)).join(',\n')}\n${indent}]`;
  }
  if (typeof value !== 'object' || value === null) return plain(value);
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  if (entries.length === 0) return '{}';
  const lines = entries.map(([key, item]) => `${inner}${JSON.stringify(key)}: ${print(item, inner)}`);
  return `{\n${lines.join(',\n')}\n${indent}}`;
}

function plain(value: unknown): string {
  return JSON.stringify(value) ?? 'null';
}

function isNumberPair(value: unknown): boolean {
  return Array.isArray(value) && value.length === 2 && value.every((item) => typeof item === 'number');
}

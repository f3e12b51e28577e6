import type * as z from 'zod';
import { words } from '../words/index.ts';
import { type Problem, pathOf } from './problem.ts';

const says = words.fileProblems.value;

type Issue = z.core.$ZodIssue;

/**
 * A schema issue in words, with the path in the document: `is missing`, `must be a number, not text`.
 * Of an alternative that fits no form, the closest form's issues are told.
 */
export function explain(issue: Issue, raw: unknown): Problem[] {
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const depth = (issues: readonly Issue[]) => issues.reduce((sum, inner) => sum + inner.path.length, 0);
    const closest = [...issue.errors].sort((a, b) => a.length - b.length || depth(b) - depth(a))[0] ?? [];
    return closest.flatMap((inner) =>
      explain({ ...inner, path: [...issue.path, ...inner.path] } as Issue, raw),
    );
  }
  return [{ path: pathOf(issue.path), message: messageOf(issue, valueAt(raw, issue.path)) }];
}

/** The value at a path of a raw document; `undefined` where there is none. */
export function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  let value = raw;
  for (const key of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

function messageOf(issue: Issue, value: unknown): string {
  if (value === undefined) return says.missing;
  switch (issue.code) {
    case 'invalid_type':
      return says.wrongKind(articled(issue.expected), kindOf(value));
    case 'invalid_value':
      return says.notOneOf(issue.values.map((v) => JSON.stringify(v)).join(', '), shown(value));
    case 'invalid_union':
      return says.unknownKind(shown(value));
    case 'too_big':
      return bound(says.atMost, issue.origin, String(issue.maximum), value);
    case 'too_small':
      if (issue.inclusive === false)
        return issue.origin === 'number'
          ? says.moreThan.number(String(issue.minimum), String(value))
          : says.moreThan.plain(String(issue.minimum));
      return bound(says.atLeast, issue.origin, String(issue.minimum), value);
    default:
      return typeof value === 'number' ? says.notBut(issue.message, String(value)) : issue.message;
  }
}

function articled(expected: string): string {
  if (expected === 'int') return says.wholeNumber;
  if (expected === 'string') return says.text;
  if (expected === 'tuple' || expected === 'array') return says.list;
  return says.withArticle(expected);
}

function kindOf(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return says.list;
  if (typeof value === 'string') return says.text;
  return articled(typeof value);
}

function bound(said: typeof says.atMost, origin: string, limit: string, value: unknown): string {
  if (origin === 'number') return said.number(limit, String(value));
  if (origin === 'string') return said.characters(limit);
  return origin === 'array' || origin === 'tuple' ? said.entries(limit) : said.plain(limit);
}

function shown(value: unknown): string {
  if (typeof value === 'object' && value !== null) return kindOf(value);
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

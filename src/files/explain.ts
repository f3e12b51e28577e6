import type * as z from 'zod';
import { type Problem, pathOf } from './problem.ts';

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
  if (value === undefined) return 'is missing';
  switch (issue.code) {
    case 'invalid_type':
      return `must be ${articled(issue.expected)}, not ${kindOf(value)}`;
    case 'invalid_value':
      return `must be one of ${issue.values.map((v) => JSON.stringify(v)).join(', ')}, not ${shown(value)}`;
    case 'invalid_union':
      return `must be of a known kind, not ${shown(value)}`;
    case 'too_big':
      return `must be at most ${issue.maximum}${unitOf(issue.origin)}${given(issue.origin, value)}`;
    case 'too_small':
      if (issue.inclusive === false) return `must be more than ${issue.minimum}${given(issue.origin, value)}`;
      return `must be at least ${issue.minimum}${unitOf(issue.origin)}${given(issue.origin, value)}`;
    default:
      return typeof value === 'number' ? `${issue.message}, not ${value}` : issue.message;
  }
}

function articled(expected: string): string {
  if (expected === 'int') return 'a whole number';
  if (expected === 'string') return 'text';
  if (expected === 'tuple' || expected === 'array') return 'a list';
  return /^[aeiou]/.test(expected) ? `an ${expected}` : `a ${expected}`;
}

function kindOf(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'string') return 'text';
  return articled(typeof value);
}

function unitOf(origin: string): string {
  if (origin === 'string') return ' characters long';
  if (origin === 'array' || origin === 'tuple') return ' entries long';
  return '';
}

function given(origin: string, value: unknown): string {
  return origin === 'number' ? `, not ${String(value)}` : '';
}

function shown(value: unknown): string {
  if (typeof value === 'object' && value !== null) return kindOf(value);
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

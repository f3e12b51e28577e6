import { words } from '../words/index.ts';

const says = words.fileProblems.json;

export type JsonResult =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly line: number; readonly column: number; readonly message: string };

/**
 * Reads JSON text; where it is not JSON, says at which line and column (both from 1) and what stood
 * there. Browsers word `JSON.parse` errors differently and often leave the place out, so the place is
 * found here. A leading byte order mark is skipped.
 */
export function parseJson(text: string): JsonResult {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  try {
    return { ok: true, value: JSON.parse(body) as unknown };
  } catch (error) {
    const fault = findFault(body);
    if (fault === null) return { ok: false, line: 1, column: 1, message: String(error) };
    const before = body.slice(0, fault.offset);
    const lineStart = before.lastIndexOf('\n') + 1;
    return {
      ok: false,
      line: before.split('\n').length,
      column: fault.offset - lineStart + 1,
      message: says.expected(fault.expected, nameOf(body, fault)),
    };
  }
}

interface Fault {
  readonly offset: number;
  readonly expected: string;
}

const aName = says.name;
const aValue = says.value;

const space = /[ \t\n\r]*/y;
const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const scalar = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/**
 * The first offset at which `text` stops being JSON; `null` where it is JSON. A loop over a stack of
 * open brackets, so that no depth of nesting overflows.
 */
export function findFault(text: string): Fault | null {
  const open: ('{' | '[')[] = [];
  let at = 0;
  let expecting: 'value' | 'first value' | 'key' | 'first key' | 'next' = 'value';

  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    if (!pattern.test(text)) return false;
    at = pattern.lastIndex;
    return true;
  };
  const takeChar = (char: string): boolean => {
    if (text[at] !== char) return false;
    at += 1;
    return true;
  };
  /** A plain loop, because a picture held as text is too long for a regular expression to step back through. */
  const takeString = (): boolean => {
    const start = at;
    if (!takeChar('"')) return false;
    for (;;) {
      const char = text[at];
      if (char === '"') break;
      if (char === '\\') {
        if (take(escaped)) continue;
      } else if (char !== undefined && char >= ' ') {
        at += 1;
        continue;
      }
      at = start;
      return false;
    }
    at += 1;
    return true;
  };

  for (;;) {
    take(space);
    const inside = open.at(-1);
    if (expecting === 'next') {
      if (inside === undefined) return at === text.length ? null : { offset: at, expected: says.end };
      const close = inside === '{' ? '}' : ']';
      if (takeChar(',')) expecting = inside === '{' ? 'key' : 'value';
      else if (takeChar(close)) open.pop();
      else return { offset: at, expected: says.commaOr(close) };
    } else if (expecting === 'key' || expecting === 'first key') {
      if (expecting === 'first key' && takeChar('}')) {
        open.pop();
        expecting = 'next';
        continue;
      }
      if (!takeString()) return { offset: at, expected: aName };
      take(space);
      if (!takeChar(':')) return { offset: at, expected: '":"' };
      expecting = 'value';
    } else if (expecting === 'first value' && takeChar(']')) {
      open.pop();
      expecting = 'next';
    } else if (takeChar('{')) {
      open.push('{');
      expecting = 'first key';
    } else if (takeChar('[')) {
      open.push('[');
      expecting = 'first value';
    } else if (takeString() || take(scalar)) {
      expecting = 'next';
    } else {
      return { offset: at, expected: aValue };
    }
  }
}

function nameOf(text: string, { offset, expected }: Fault): string {
  const char = text[offset];
  if (char === undefined) return says.end;
  if (char !== '"') return JSON.stringify(char);
  const stringIsWelcome = expected === aValue || expected === aName;
  return stringIsWelcome ? says.openString : says.text;
}

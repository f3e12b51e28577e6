import { words } from '../../words/index.ts';
import { Refused } from './picture.ts';

const says = words.underlayFiles.markup;

export interface Tag {
  readonly name: string;
  /** Names and values, references resolved. */
  readonly attributes: readonly (readonly [string, string])[];
  readonly children: Markup[];
}

export type Markup = Tag | string;

/** Elements inside elements that are followed. */
const DEEPEST = 500;

const predefined: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

const piece =
  /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<!\[CDATA\[([\s\S]*?)\]\]>|<!DOCTYPE\s(?:[^[>]*\[([\s\S]*?)\]\s*>|[^>]*>)|<\/([^\s<>/]+)\s*>|<([^\s<>/!?]+)((?:\s+[^\s=<>"'/]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>|[^<]+/y;
const attribute = /([^\s=<>"'/]+)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/g;

/**
 * A well-formed XML text as a tree, without its comments and instructions. Names declared in the text
 * itself are resolved where they stand for plain words. Refuses anything else, and says where.
 */
export function parseMarkup(source: string): Markup[] {
  const text = source.replace(/^\uFEFF/, '');
  const entities = new Map(Object.entries(predefined));
  const top: Markup[] = [];
  const open: Tag[] = [];
  piece.lastIndex = 0;
  while (piece.lastIndex < text.length) {
    const at = piece.lastIndex;
    const match = piece.exec(text);
    if (!match) throw broken(text, at);
    const [whole, data, declared, closing, name, inside, empty] = match;
    const into = open.at(-1)?.children ?? top;
    if (closing !== undefined) {
      if (open.pop()?.name !== closing) throw broken(text, at);
    } else if (name !== undefined) {
      const tag: Tag = { name, attributes: attributesOf(inside ?? '', entities), children: [] };
      into.push(tag);
      if (empty === '') open.push(tag);
      if (open.length > DEEPEST) throw new Refused(says.tooDeep);
    } else if (data !== undefined) into.push(data);
    else if (declared !== undefined) declare(declared, entities);
    else if (!whole.startsWith('<')) into.push(resolved(whole, entities));
  }
  if (open.length > 0) throw broken(text, text.length);
  return top;
}

function attributesOf(text: string, entities: ReadonlyMap<string, string>): [string, string][] {
  return [...text.matchAll(attribute)].map(([, name = '', double, single]) => [
    name,
    resolved(double ?? single ?? '', entities),
  ]);
}

/** Takes only names for words: one that leads to another name could grow without end. */
function declare(subset: string, entities: Map<string, string>): void {
  for (const [, name = '', double, single] of subset.matchAll(
    /<!ENTITY\s+([\w.:-]+)\s+(?:"([^"]*)"|'([^']*)')\s*>/g,
  )) {
    const value = double ?? single ?? '';
    if (!/[&<%]/.test(value)) entities.set(name, value);
  }
}

function resolved(text: string, entities: ReadonlyMap<string, string>): string {
  return text.replace(/&(#x[\da-f]+|#\d+|[\w.:-]+);/gi, (_, name: string) => {
    if (!name.startsWith('#')) return entities.get(name) ?? '';
    const code = /^#x/i.test(name) ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1));
    return code > 8 && code < 0x110000 ? String.fromCodePoint(code) : '';
  });
}

function broken(text: string, at: number): Refused {
  const line = text.slice(0, at).split('\n').length;
  return new Refused(says.malformed(line));
}

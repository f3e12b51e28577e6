import { words } from '../../words/index.ts';
import { type Markup, parseMarkup, type Tag } from './markup.ts';
import { Refused, VECTOR_SIDE } from './picture.ts';

const says = words.underlayFiles.svg;

export interface CleanSvg {
  /** Well-formed, with nothing in it that acts or that lies elsewhere. */
  readonly text: string;
  /** Pixels across and down that it states. */
  readonly size: readonly [number, number];
  /** Metres of paper a pixel, where its size is stated in units of paper. */
  readonly paper: number | null;
  /** Places that were left out: scripts, links, pictures and styles from elsewhere. */
  readonly removed: number;
}

const drawn = new Set(
  `svg g defs symbol use path rect circle ellipse line polyline polygon text tspan textPath image style
   linearGradient radialGradient stop clipPath mask pattern marker title desc`.split(/\s+/),
);

/** Elements that only hold others: the others stay. */
const wrappers = new Set(['a', 'switch']);

/** Elements that programs keep their own notes in: leaving them out changes no picture. */
const silent = new Set(['metadata']);

/**
 * A drawing in SVG with only what draws: elements and attributes are taken from a list, and addresses
 * stay only within the file. Refuses what is not well-formed, has no size or holds nothing.
 */
export function cleanSvg(source: string): CleanSvg {
  let removed = 0;
  const root = rootOf(parseMarkup(source));
  const fromElsewhere = () => {
    removed += 1;
  };
  const { size, paper } = sizeOf(root);
  const attributes = root.attributes
    .filter(([name]) => !['width', 'height', 'viewBox', 'xmlns', 'xmlns:xlink'].includes(name))
    .flatMap((attribute) => attributeText(attribute, fromElsewhere));
  const body = root.children.map((child) => print(child, fromElsewhere)).join('');
  if (!/<(path|rect|circle|ellipse|line|polyline|polygon|text|image|use)[\s/>]/.test(body))
    throw new Refused(says.nothing);
  const head = [
    'xmlns="http://www.w3.org/2000/svg"',
    'xmlns:xlink="http://www.w3.org/1999/xlink"',
    `width="${size[0]}"`,
    `height="${size[1]}"`,
    `viewBox="${viewBoxOf(root)?.join(' ') ?? `0 0 ${plainSizeOf(root).join(' ')}`}"`,
    ...attributes,
  ];
  return { text: `<svg ${head.join(' ')}>${body}</svg>`, size, paper, removed };
}

function rootOf(nodes: readonly Markup[]): Tag {
  const root = nodes.find((node): node is Tag => typeof node !== 'string');
  if (root?.name !== 'svg') throw new Refused(says.notSvg);
  return root;
}

function print(node: Markup, fromElsewhere: () => void): string {
  if (typeof node === 'string') return escaped(node);
  const children = () => node.children.map((child) => print(child, fromElsewhere)).join('');
  if (wrappers.has(node.name)) return children();
  if (!drawn.has(node.name)) {
    if (!node.name.includes(':') && !silent.has(node.name)) fromElsewhere();
    return '';
  }
  const attributes = node.attributes.flatMap((attribute) => attributeText(attribute, fromElsewhere));
  const open = [node.name, ...attributes].join(' ');
  const inner = node.name === 'style' ? escaped(cleanStyle(node, fromElsewhere)) : children();
  return inner === '' ? `<${open}/>` : `<${open}>${inner}</${node.name}>`;
}

function attributeText([name, value]: readonly [string, string], fromElsewhere: () => void): string[] {
  const text = `${name}="${escaped(value)}"`;
  if (name === 'href' || name === 'xlink:href') {
    if (value.startsWith('#') || /^data:image\/(png|jpeg|gif|webp);base64,[\w+/=\s]*$/.test(value))
      return [text];
    fromElsewhere();
    return [];
  }
  if (name === 'xml:space') return [text];
  if (name.includes(':') || name === 'xmlns') return [];
  if (/^on/i.test(name) || reachesOut(value)) {
    fromElsewhere();
    return [];
  }
  return [text];
}

/** True for a value of a style that names an address outside the file, or hides what it names. */
function reachesOut(value: string): boolean {
  if (/@import|expression\s*\(|javascript:|image(-set)?\s*\(|\bsrc\s*\(/i.test(value)) return true;
  if (value.includes('\\') && /[(@:]/.test(value)) return true;
  return [...value.matchAll(/url\s*\(\s*(["']?)\s*(.?)/gi)].some(([, , first]) => first !== '#');
}

/** A style sheet rule by rule: one that reaches out is left out, and so is every `@` rule. */
function cleanStyle(node: Tag, fromElsewhere: () => void): string {
  const text = node.children.map((child) => (typeof child === 'string' ? child : '')).join('');
  const plain = text.replace(/\/\*[\s\S]*?(\*\/|$)/g, '').replace(/<!--|-->/g, '');
  const rules = plain.match(/[^{};]*(;|\{[^{}]*\}|$)/g) ?? [];
  return rules
    .filter((rule) => {
      const kept = !rule.includes('@') && !reachesOut(rule);
      if (!kept) fromElsewhere();
      return kept;
    })
    .join('');
}

/** Metres of paper in the units of a length; a pixel is none. */
const paperUnits: Readonly<Record<string, number>> = {
  mm: 0.001,
  cm: 0.01,
  in: 0.0254,
  pt: 0.0254 / 72,
  pc: 0.0254 / 6,
};

function lengthOf(text: string | undefined): { readonly value: number; readonly unit: string } | null {
  const match = /^\s*([\d.]+(?:e[-+]?\d+)?)\s*(px|mm|cm|in|pt|pc)?\s*$/i.exec(text ?? '');
  const value = Number(match?.[1]);
  return match && value > 0 && Number.isFinite(value)
    ? { value, unit: (match[2] ?? 'px').toLowerCase() }
    : null;
}

function attributeOf(root: Tag, name: string): string | undefined {
  return root.attributes.find(([each]) => each === name)?.[1];
}

function viewBoxOf(root: Tag): readonly number[] | null {
  const box = attributeOf(root, 'viewBox')
    ?.trim()
    .split(/[\s,]+/)
    .map(Number);
  const sound = box?.length === 4 && box.every(Number.isFinite) && (box[2] ?? 0) > 0 && (box[3] ?? 0) > 0;
  return box && sound ? box : null;
}

/** Width and height in the drawing's own units. */
function plainSizeOf(root: Tag): readonly [number, number] {
  const [, , boxWidth, boxHeight] = viewBoxOf(root) ?? [];
  const width = lengthOf(attributeOf(root, 'width'))?.value ?? boxWidth;
  const height = lengthOf(attributeOf(root, 'height'))?.value ?? boxHeight;
  if (width === undefined || height === undefined) throw new Refused(says.noSize);
  return [width, height];
}

/** Pixels to keep lines sharp, in the proportions of the drawing. */
function sizeOf(root: Tag): Pick<CleanSvg, 'size' | 'paper'> {
  const [width, height] = plainSizeOf(root);
  const factor = VECTOR_SIDE / Math.max(width, height);
  const size = [Math.max(1, Math.round(width * factor)), Math.max(1, Math.round(height * factor))] as const;
  const stated = lengthOf(attributeOf(root, 'width'));
  const unit = stated && paperUnits[stated.unit];
  return { size, paper: stated && unit ? (stated.value * unit) / size[0] : null };
}

/** Text that stands for itself in markup. */
export function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

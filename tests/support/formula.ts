/**
 * Works a printed formula as a reader with a pocket calculator would: `V = Q / A`, with what follows after
 * commas as further definitions. Knows numbers, symbols, + − · /, a space for a product, powers by `^` and `²`,
 * roots, brackets and the common functions; shares no code with the program.
 */
export function work(formula: string, given: ReadonlyMap<string, number>): number {
  const statements = splitOutside(formula).map((text) => {
    const [name = '', ...rest] = text.split(' = ');
    if (rest.length !== 1) throw new Error(`"${text}" is no "symbol = expression"`);
    return { name: name.trim(), expression: rest[0] as string };
  });
  const [result, ...definitions] = statements;
  if (!result) throw new Error('an empty formula');
  const known = new Set([...given.keys(), ...definitions.map(({ name }) => name)]);
  const found = new Map<string, number>();
  const meaning = (name: string): number => {
    const before = found.get(name);
    if (before !== undefined) return before;
    const definition = definitions.find((one) => one.name === name);
    const value = definition ? evaluate(definition.expression, known, meaning) : given.get(name);
    if (value === undefined) throw new Error(`nothing says what ${name} is in "${formula}"`);
    found.set(name, value);
    return value;
  };
  if (given.has(result.name)) throw new Error(`${result.name} is given`);
  const answer = evaluate(result.expression, known, (name) => meaning(name));
  found.set(result.name, answer);
  return answer;
}

/** Statements between commas that stand outside brackets and are followed by a space. */
function splitOutside(text: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let from = 0;
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '(') depth += 1;
    if (text[i] === ')') depth -= 1;
    if (depth === 0 && text.startsWith(', ', i)) {
      parts.push(text.slice(from, i));
      from = i + 2;
    }
  }
  return [...parts, text.slice(from)];
}

const functions: Readonly<Record<string, (x: number) => number>> = {
  log10: Math.log10,
  ln: Math.log,
  exp: Math.exp,
  cos: (degrees) => Math.cos((degrees * Math.PI) / 180),
  '√': Math.sqrt,
};

function evaluate(text: string, known: ReadonlySet<string>, meaning: (name: string) => number): number {
  const words = [...known, ...Object.keys(functions), 'π'].sort((a, b) => b.length - a.length);
  const tokens: string[] = [];
  for (let i = 0; i < text.length; ) {
    const rest = text.slice(i);
    const number = /^\d+(?:\.\d+)?(?:e-?\d+)?/.exec(rest)?.[0];
    const token = words.find((word) => rest.startsWith(word)) ?? number ?? rest.charAt(0);
    if (token !== ' ') tokens.push(token);
    i += token.length;
  }
  let at = 0;
  const peek = () => tokens[at];
  const take = () => tokens[at++] as string;

  const sum = (): number => {
    let value = product();
    while (peek() === '+' || peek() === '−') value += take() === '+' ? product() : -product();
    return value;
  };
  const product = (): number => {
    if (peek() === '−') {
      take();
      return -product();
    }
    let value = power();
    for (;;) {
      const next = peek();
      if (next === '/') {
        take();
        value /= power();
      } else if (next === '·') {
        take();
        value *= power();
      } else if (next !== undefined && !'+−)²^'.includes(next)) value *= power();
      else return value;
    }
  };
  const power = (): number => {
    let value = atom();
    while (peek() === '²' || peek() === '^') {
      if (take() === '²') value **= 2;
      else value **= atom();
    }
    return value;
  };
  const atom = (): number => {
    const token = take();
    if (token === '(') {
      const value = sum();
      if (take() !== ')') throw new Error(`brackets do not close in "${text}"`);
      return value;
    }
    const apply = known.has(token) ? undefined : functions[token];
    if (apply) return apply(power());
    if (token === 'π') return Math.PI;
    const value = /^\d/.test(token) ? Number(token) : known.has(token) ? meaning(token) : Number.NaN;
    if (Number.isNaN(value)) throw new Error(`"${token}" means nothing in "${text}"`);
    return value;
  };

  const value = sum();
  if (at < tokens.length) throw new Error(`"${tokens[at]}" is left over in "${text}"`);
  return value;
}

/** A printed number read back: `1.82296 × 10⁻⁵`, `−0.0479`, `94363.6`. */
export function readPrinted(text: string): number {
  const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';
  const [mantissa = '', exponent] = text.split(' × 10');
  const digits = [...(exponent ?? '')]
    .map((sign) => (sign === '⁻' ? '-' : String(raised.indexOf(sign))))
    .join('');
  const value = Number(mantissa.replace('−', '-'));
  return exponent === undefined ? value : value * 10 ** Number(digits);
}

/** Half a unit of the last of so many significant figures. */
export function roundingOf(value: number, digits: number): number {
  if (value === 0) return 0;
  return 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - digits + 1);
}

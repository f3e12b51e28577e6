import { emitPart, fillUnit, type ReynoldsTable, UNIT } from './element.ts';
import { type FanTable, fanTable, fillFan } from './fan.ts';
import { colebrookFall, colebrookX, TURBULENT_LIMIT } from './friction.ts';
import type { Air, NetworkEdge } from './types.ts';

/** Unit code of a fan in a chain; the rest are {@link UNIT}'s. a: +1 along the chain, -1 against it. */
const FAN = 4;
/** Unit code of a pressure that does not change with the flow. a: +1 along the chain, -1 against it. */
const GAIN = 5;
/** How far back a chain's terms are searched for one to share. */
const LOOK_BACK = 16;
/** Friction factor behind the first guess of a flow. */
const TYPICAL_FRICTION = 0.02;
/** Share of the network's pressure behind the first guess of a flow without a fan. */
const TYPICAL_SHARE = 0.1;

/**
 * The edges of every chain (edges in series, one flow through all), turned into flat arrays of
 * `weight × unit function` terms. `value` holds each unit's value at the flow last evaluated, from
 * which the drop of each single edge follows without evaluating anything again.
 */
export interface Chains {
  readonly count: number;
  readonly density: number;
  readonly termStart: Int32Array;
  readonly unit: Uint8Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly weight: Float64Array;
  readonly value: Float64Array;
  readonly warm: Float64Array;
  readonly table: readonly (ReynoldsTable | null)[];
  readonly fan: readonly (FanTable | null)[];
  /** By position in the chains' edge list: the parts of that edge. */
  readonly partStart: Int32Array;
  readonly partTerm: Int32Array;
  readonly partWeight: Float64Array;
  /** 1 where the chain's drop can only rise with its flow. */
  readonly rises: Uint8Array;
  /** 1 where the chain has a fan or a gain, so that its drop is not in proportion to its flow. */
  readonly fanned: Uint8Array;
  /** Flow that the chain's largest fan gives without pressure, m3/s; 0 where it has none. */
  readonly driven: Float64Array;
  /** Coefficient of a square law near the chain's drop, Pa per (m3/s)2; NaN where more than that is in it. */
  readonly square: Float64Array;
  /** A flow of the right size, m3/s, on the high side of a fan's operating point. */
  readonly guess: Float64Array;
}

/** Series edges: position -> edge index times 2, plus 1 where the edge points against its chain. */
export interface ChainEdges {
  readonly start: Int32Array;
  readonly edges: Int32Array;
}

/** Builds the terms of all chains; `pressureScale` (Pa) sets the size of first guesses. */
export function buildChains(
  edges: readonly NetworkEdge[],
  layout: ChainEdges,
  air: Air,
  pressureScale: number,
): Chains {
  const count = layout.start.length - 1;
  const termStart = new Int32Array(count + 1);
  const unit: number[] = [];
  const a: number[] = [];
  const b: number[] = [];
  const weight: number[] = [];
  const table: (ReynoldsTable | null)[] = [];
  const fan: (FanTable | null)[] = [];
  const partStart = new Int32Array(layout.edges.length + 1);
  const partTerm: number[] = [];
  const partWeight: number[] = [];
  const rises = new Uint8Array(count).fill(1);
  const fanned = new Uint8Array(count);
  const driven = new Float64Array(count);
  const square = new Float64Array(count);
  const guess = new Float64Array(count);
  let first = 0;

  const emit = (u: number, ta: number, tb: number, tt: ReynoldsTable | null, w: number): void => {
    let t = unit.length - 1;
    const stop = Math.max(first, unit.length - LOOK_BACK);
    while (t >= stop && !(unit[t] === u && a[t] === ta && b[t] === tb && table[t] === tt)) t--;
    if (t < stop) {
      t = unit.length;
      unit.push(u);
      a.push(ta);
      b.push(tb);
      weight.push(0);
      table.push(tt);
      fan.push(null);
    }
    weight[t] = (weight[t] as number) + w;
    partTerm.push(t);
    partWeight.push(w);
  };

  for (let c = 0; c < count; c++) {
    first = unit.length;
    termStart[c] = first;
    const end = layout.start[c + 1] as number;
    for (let at = layout.start[c] as number; at < end; at++) {
      const code = layout.edges[at] as number;
      const edge = edges[code >> 1] as NetworkEdge;
      for (const part of edge.parts) emitPart(part, air, emit);
      if (edge.fan !== undefined) {
        partTerm.push(unit.length);
        partWeight.push(-1);
        unit.push(FAN);
        a.push(code & 1 ? -1 : 1);
        b.push(0);
        weight.push(-1);
        table.push(null);
        fan.push(fanTable(edge.fan));
      }
      if (edge.gain) {
        partTerm.push(unit.length);
        partWeight.push(-edge.gain);
        unit.push(GAIN);
        a.push(code & 1 ? -1 : 1);
        b.push(0);
        weight.push(-edge.gain);
        table.push(null);
        fan.push(null);
      }
      partStart[at + 1] = partTerm.length;
    }
    sizeUp(c);
  }
  termStart[count] = unit.length;

  /** First guess of the chain's flow, and whether its drop is sure to rise. */
  function sizeUp(c: number): void {
    let quadratic = 0;
    let nearly = 0;
    let other = false;
    let velocity = 0;
    let fanFlow = 0;
    let fanPeak = 0;
    let limit = Number.POSITIVE_INFINITY;
    for (let t = first; t < unit.length; t++) {
      const w = weight[t] as number;
      const kind = unit[t];
      if (kind === FAN) {
        const f = fan[t] as FanTable;
        velocity += f.velocity * air.density;
        fanPeak += (f.peak * air.density) / f.ratedDensity;
        if (f.tailFlow > Math.abs(fanFlow)) fanFlow = f.tailFlow * (a[t] as number);
        fanned[c] = 1;
        if (!f.falling) rises[c] = 0;
      } else if (kind === GAIN) fanned[c] = 1;
      else if (kind === UNIT.friction) nearly += w * TYPICAL_FRICTION * (a[t] as number) ** 2;
      else if (kind === UNIT.reynolds) nearly += w;
      else if (kind === UNIT.power && b[t] === 0.5) quadratic += w;
      else other = true;
      if (kind === UNIT.power && b[t] !== 0.5 && w > 0)
        limit = Math.min(limit, ((TYPICAL_SHARE * pressureScale) / w) ** (1 / (2 * (b[t] as number) + 1)));
    }
    if (velocity > quadratic * (1 + 1e-12)) rises[c] = 0;
    const pressure = fanPeak > 0 ? fanPeak : TYPICAL_SHARE * pressureScale;
    const lost = Math.max(0, quadratic - velocity) + nearly;
    const flow = Math.min(limit, lost > 0 ? Math.sqrt(pressure / lost) : Number.POSITIVE_INFINITY);
    driven[c] = Math.abs(fanFlow);
    square[c] = other || fanned[c] === 1 || lost === 0 ? Number.NaN : lost;
    guess[c] = fanFlow !== 0 ? Math.sign(fanFlow) * Math.min(Math.abs(fanFlow), flow) : flow;
  }

  return {
    count,
    density: air.density,
    termStart,
    unit: new Uint8Array(unit),
    a: new Float64Array(a),
    b: new Float64Array(b),
    weight: new Float64Array(weight),
    value: new Float64Array(unit.length),
    warm: new Float64Array(unit.length),
    table,
    fan,
    partStart,
    partTerm: new Int32Array(partTerm),
    partWeight: new Float64Array(partWeight),
    rises,
    fanned,
    driven,
    square,
    guess,
  };
}

const slots = new Float64Array(3);

/**
 * Pressure drop along chain c at flow q less what its fans give, and its slope, to out[0] and
 * out[1]. Turbulent friction and square laws, nearly all there is, are written out here instead of
 * going through {@link fillUnit}: this is where a solve spends its time.
 */
export function evaluateChain(chains: Chains, c: number, q: number, out: Float64Array): void {
  const { unit, a, b, weight, value, warm } = chains;
  const end = chains.termStart[c + 1] as number;
  const size = Math.abs(q);
  const sign = q < 0 ? -1 : 1;
  let drop = 0;
  let slope = 0;
  for (let t = chains.termStart[c] as number; t < end; t++) {
    const u = unit[t] as number;
    const w = weight[t] as number;
    const p = a[t] as number;
    if (u === UNIT.friction && size * p >= TURBULENT_LIMIT) {
      const re = size * p;
      const x = colebrookX(re, b[t] as number, warm[t] as number);
      const fRe = re / (x * x);
      const unitValue = sign * fRe * re;
      warm[t] = x;
      value[t] = unitValue;
      drop += w * unitValue;
      slope += w * p * fRe * (2 - colebrookFall(re, b[t] as number, x));
    } else if (u === UNIT.power && b[t] === 0.5) {
      const root = Math.sqrt(q * q + p * p);
      const unitValue = q * root;
      value[t] = unitValue;
      drop += w * unitValue;
      slope += w * (root + (q * q) / root);
    } else {
      fillTerm(chains, t, q);
      const unitValue = slots[0] as number;
      value[t] = unitValue;
      drop += w * unitValue;
      slope += w * (slots[1] as number);
    }
  }
  out[0] = drop;
  out[1] = slope;
}

/** Unit value and slope of one term of any kind, to `slots`. */
function fillTerm({ unit, a, b, warm, table, fan, density }: Chains, t: number, q: number): void {
  const p = a[t] as number;
  if (unit[t] === FAN) {
    fillFan(slots, fan[t] as FanTable, q * p, density);
    slots[0] = (slots[0] as number) * p;
  } else if (unit[t] === GAIN) {
    slots[0] = p;
    slots[1] = 0;
  } else {
    slots[2] = warm[t] as number;
    fillUnit(slots, unit[t] as number, p, b[t] as number, table[t] as ReynoldsTable | null, q);
    warm[t] = slots[2] as number;
  }
}

/** Drop along one edge of a chain, in the chain's direction, at the flow the chain was last evaluated at. */
export function edgeDrop(chains: Chains, position: number): number {
  const end = chains.partStart[position + 1] as number;
  let drop = 0;
  for (let p = chains.partStart[position] as number; p < end; p++)
    drop += (chains.partWeight[p] as number) * (chains.value[chains.partTerm[p] as number] as number);
  return drop;
}

/** The flows in chain c's direction where one of its fans' curves changes shape, rising. */
export function fanKnots(chains: Chains, c: number): number[] {
  const knots: number[] = [];
  const end = chains.termStart[c + 1] as number;
  for (let t = chains.termStart[c] as number; t < end; t++) {
    const table = chains.fan[t];
    if (!table) continue;
    for (const q of table.flows) knots.push(q * (chains.a[t] as number));
    knots.push(table.tailFlow * (chains.a[t] as number));
  }
  return knots.sort((p, q) => p - q);
}

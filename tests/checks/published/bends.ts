import { airOf } from '../../../src/hydraulics/air.ts';
import { partDrop } from '../../../src/hydraulics/element.ts';
import { bendLoss } from '../../../src/hydraulics/losses/bends.ts';
import { area } from '../../../src/hydraulics/section.ts';
import { type Check, type Figure, input, register } from './figure.ts';
import { bendC, ductDrop, round, roundInches } from './model.ts';

/** A bend of the sized tables, at the r/D that its table is for. */
const sized = (kind: string, angle: number): Check => ({
  by: `bend ${kind}, ${angle}°`,
  ours: (x) => bendC({ kind, angle, section: round(input(x, 'D_mm') / 1000) }),
});
const byRadius = (kind: string, name = 'r_over_D'): Check => ({
  by: `bend ${kind}, 90°`,
  ours: (x) => bendC({ kind, angle: 90, radiusRatio: input(x, name) }),
});
const angleFactor: Check = {
  by: 'smooth bend over the same at 90°',
  ours: (x) => bendC({ kind: 'smooth', angle: input(x, 'angle_deg') }) / bendC({ kind: 'smooth', angle: 90 }),
};
const mitred: Check = {
  by: 'bend mitred',
  ours: (x) => bendC({ kind: 'mitred', angle: input(x, 'angle_deg') }),
};
const rectangular = (kind: string): Check => ({
  by: `bend ${kind}`,
  ours: (x) => {
    const across = 0.2 * input(x, 'H_over_W');
    return bendC({
      kind,
      angle: typeof x.inputs.angle_deg === 'number' ? x.inputs.angle_deg : 90,
      ...(typeof x.inputs.r_over_W === 'number' ? { radiusRatio: x.inputs.r_over_W } : {}),
      section: { shape: 'rectangular', width: 0.2, height: across },
      inPlane: 0.2,
      acrossPlane: across,
    });
  },
});

/** The Reynolds factor as the solve sees it: drop of the mitre over its C at that Reynolds number. */
function reynoldsFactor(x: Figure): number {
  const section = roundInches(6);
  const loss = bendLoss({ kind: 'mitred', angle: 90, section });
  const air = airOf(1.2, 1.2 * 1.5e-5);
  const speed = (input(x, 'Re') * 1.5e-5) / 0.1524;
  const drop = loss.parts.reduce((sum, part) => sum + partDrop(part, speed * area(section), air), 0);
  return drop / (loss.c * 0.6 * speed ** 2);
}

/** Miller's example: the bend and the friction of its arc, on the velocity in the pipe. */
function millerBend(x: Figure): number {
  const [d, speed] = [input(x, 'D_m'), input(x, 'V_m_s')];
  const water = airOf(1000, 1.14e-3);
  const section = round(d);
  const arc = ductDrop(section, Math.PI * d, 2e-5, speed * area(section), water);
  return bendC({ kind: 'smooth', angle: 90, radiusRatio: 2, section }) + arc / (500 * speed ** 2);
}

const worksheetKinds: Readonly<Record<string, string>> = {
  stamped: 'smooth',
  '5-piece': 'five-piece',
  '4-piece': 'four-piece',
  '3-piece': 'three-piece',
};

export const bendChecks = register([
  ['B-001', 'B-008', sized('stamped', 90)],
  ['B-009', 'B-016', sized('stamped', 45)],
  ['B-017', 'B-023', sized('pleated', 90)],
  ['B-024', 'B-030', sized('pleated', 45)],
  ['B-031', 'B-041', sized('five-piece-sized', 90)],
  ['B-042', 'B-049', sized('seven-piece', 90)],
  ['B-050', 'B-060', sized('three-piece-shallow', 60)],
  ['B-061', 'B-071', sized('three-piece-shallow', 45)],
  ['B-072', 'B-075', byRadius('three-piece')],
  ['B-076', 'B-081', byRadius('smooth')],
  ['B-082', 'B-092', angleFactor],
  ['B-093', 'B-096', byRadius('five-piece')],
  ['B-097', 'B-100', byRadius('four-piece')],
  ['B-101', 'B-105', byRadius('three-piece')],
  ['B-106', 'B-111', mitred],
  ['B-112', 'B-119', { by: 'bend mitred, drop at that Reynolds number', ours: reynoldsFactor }],
  ['B-120', 'B-174', rectangular('rectangular-smooth')],
  ['B-175', 'B-240', rectangular('rectangular-mitred')],
  [
    'B-302',
    'B-311',
    {
      by: 'bend of that kind, 90°',
      ours: (x) =>
        bendC({
          kind: worksheetKinds[String(x.inputs.type)] ?? '',
          angle: 90,
          radiusRatio: input(x, 'R_over_D'),
        }),
    },
  ],
  ['B-312', 'B-314', angleFactor],
  ['B-341', 'B-343', { by: 'bend smooth, r/D 2, with the friction of its arc', ours: millerBend }],
  [
    'B-349',
    'B-349',
    {
      ...rectangular('rectangular-smooth'),
      ours: (x) =>
        rectangular('rectangular-smooth').ours({
          ...x,
          inputs: { r_over_W: input(x, 'R_over_W'), H_over_W: input(x, 'H_over_W') },
        }),
      within: { tolerance: { abs: 0.005 }, because: 'printed to two decimals, read between two rows' },
    },
  ],
  ['B-350', 'B-350', { by: 'bend mitred, 90°', ours: () => bendC({ kind: 'mitred', angle: 90 }) }],
]);

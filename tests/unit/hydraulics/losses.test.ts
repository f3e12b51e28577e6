import { describe, expect, test } from 'vitest';
import { airOf } from '../../../src/hydraulics/air.ts';
import { bends, caps, inlineParts } from '../../../src/hydraulics/catalogue.ts';
import { partDrop } from '../../../src/hydraulics/element.ts';
import { bendLoss, defaultRadiusRatio } from '../../../src/hydraulics/losses/bends.ts';
import { capLoss, openEnd } from '../../../src/hydraulics/losses/caps.ts';
import { inlineLoss } from '../../../src/hydraulics/losses/inline.ts';
import { branchEntryFactor, junctionLoss } from '../../../src/hydraulics/losses/junctions.ts';
import { roughnessOf } from '../../../src/hydraulics/losses/materials.ts';
import { transitionLoss } from '../../../src/hydraulics/losses/transitions.ts';
import { area } from '../../../src/hydraulics/section.ts';
import type { LocalLoss, Section } from '../../../src/hydraulics/types.ts';

const INCH = 0.0254;
const round = (inches: number): Section => ({ shape: 'round', diameter: inches * INCH });
const six = round(6);
const stack: Section = { shape: 'rectangular', width: 10 * INCH, height: 3.25 * INCH };
const air = airOf(1.2, 1.8e-5);
const drop = (loss: LocalLoss, flow: number) =>
  loss.parts.reduce((sum, part) => sum + partDrop(part, flow, air), 0);
const curved = bends.filter((row) => row.defaultRadiusRatio > 0);
const sectionsFor = (kind: string): Section[] =>
  kind === 'rectangular'
    ? [stack, { shape: 'rectangular', width: 0.1, height: 0.3 }]
    : [3, 4, 6, 8, 10, 12].map(round);

describe('bends', () => {
  test('a bend at r/D 0.5 costs more than one at 1.5, whatever its kind, size and angle', () => {
    for (const row of curved)
      for (const section of sectionsFor(row.section))
        for (const angle of [10, 30, 45, 60, 90, 120, 180]) {
          const at = (radiusRatio: number) => bendLoss({ kind: row.id, angle, radiusRatio, section }).c;
          expect(at(0.5), `${row.id} ${angle}`).toBeGreaterThan(at(1.5));
        }
  });

  test('a larger radius never costs more, and a larger angle never less', () => {
    for (const row of bends)
      for (const section of sectionsFor(row.section)) {
        let gentlest = Number.POSITIVE_INFINITY;
        for (let radiusRatio = 0.4; radiusRatio < 3; radiusRatio += 0.05) {
          const { c } = bendLoss({ kind: row.id, angle: 90, radiusRatio, section });
          expect(c, `${row.id} r/D ${radiusRatio}`).toBeLessThanOrEqual(gentlest + 1e-12);
          gentlest = c;
        }
        let sharpest = 0;
        for (let angle = 0; angle <= 180; angle += 3) {
          const { c } = bendLoss({ kind: row.id, angle, section });
          expect(c, `${row.id} ${angle}°`).toBeGreaterThanOrEqual(sharpest - 1e-12);
          sharpest = c;
        }
      }
  });

  test('a turn of nothing costs nothing', () => {
    for (const row of bends)
      expect(
        bendLoss({ kind: row.id, angle: 0, section: row.section === 'rectangular' ? stack : six }).c,
      ).toBe(0);
  });

  test('more pieces turn more gently at every radius', () => {
    const order = ['three-piece', 'four-piece', 'five-piece', 'smooth'];
    for (const radiusRatio of [0.5, 0.6, 0.75, 1, 1.5, 2]) {
      const costs = order.map((kind) => bendLoss({ kind, angle: 90, radiusRatio, section: six }).c);
      for (const [i, c] of costs.entries())
        expect(c, `${order[i]} r/D ${radiusRatio}`).toBeLessThan(costs[i - 1] ?? Number.POSITIVE_INFINITY);
    }
  });

  test('a sharp mitre costs more than the tightest round bend', () => {
    const mitre = bendLoss({ kind: 'mitred', angle: 90, section: six }).c;
    for (const kind of [
      'smooth',
      'stamped',
      'three-piece',
      'four-piece',
      'five-piece',
      'adjustable',
      'flexible',
    ])
      expect(bendLoss({ kind, angle: 90, radiusRatio: 0.5, section: six }).c, kind).toBeLessThan(mitre);
  });

  test('the angle factor is the curve of the handbook and not a straight line', () => {
    const half = bendLoss({ kind: 'smooth', angle: 45, radiusRatio: 1, section: six }).c;
    const whole = bendLoss({ kind: 'smooth', angle: 90, radiusRatio: 1, section: six }).c;
    expect(half / whole).toBeCloseTo(0.6, 12);
  });

  test('a stack turned the hard way costs more than the easy way', () => {
    for (const kind of ['rectangular-smooth', 'rectangular-mitred']) {
      const turn = (inPlane: number, acrossPlane: number) =>
        bendLoss({ kind, angle: 90, section: stack, inPlane, acrossPlane });
      const hard = turn(0.254, 0.08255);
      const easy = turn(0.08255, 0.254);
      expect(hard.c, kind).toBeGreaterThan(easy.c);
    }
    expect(
      bendLoss({
        kind: 'rectangular-smooth',
        angle: 90,
        section: stack,
        inPlane: 0.254,
        acrossPlane: 0.08255,
      }).label,
    ).toMatch(/the hard way$/);
  });

  test('a mitre carries its Reynolds correction into the solve: dearer in proportion at low flow', () => {
    const mitre = bendLoss({ kind: 'mitred', angle: 90, section: six });
    expect(mitre.parts[0]?.kind).toBe('reynolds-local');
    const slow = drop(mitre, 0.02) / 0.02 ** 2;
    const fast = drop(mitre, 0.4) / 0.4 ** 2;
    expect(slow / fast).toBeCloseTo(1.4 - (0.14 * (slowRe(0.02) - 10_000)) / 10_000, 2);
  });

  test('a stamped bend of another radius says that its table is for r/D 1.5', () => {
    const asked = bendLoss({ kind: 'stamped', angle: 90, radiusRatio: 1, section: six });
    expect(asked.provenance.notes.join(' ')).toMatch(/table is for r\/D 1\.5 \(asked 1\)/);
    expect(asked.provenance.sourceKind).toBe('assumption');
    const own = bendLoss({ kind: 'stamped', angle: 90, section: six });
    expect(own.provenance.sourceKind).toBe('found');
  });

  test('a round bend asked for on rectangular duct is replaced, and the replacement is named', () => {
    const loss = bendLoss({ kind: 'three-piece', angle: 90, section: stack });
    expect(loss.provenance.row).toBe('bends/rectangular-smooth');
    expect(loss.provenance.notes[0]).toMatch(/stands in/);
    expect(bendLoss({ kind: 'rectangular-mitred', angle: 90, section: six }).provenance.row).toBe(
      'bends/mitred',
    );
  });

  test('an unknown kind of bend is refused by name', () => {
    expect(() => bendLoss({ kind: 'wobbly', angle: 90, section: six })).toThrow(/wobbly/);
    expect(() => defaultRadiusRatio('wobbly')).toThrow(/wobbly/);
  });
});

const slowRe = (flow: number) => (1.2 * (flow / area(six)) * 0.1524) / 1.8e-5;

describe('transitions', () => {
  const change = (from: number, to: number, angle?: number) =>
    transitionLoss({
      from: round(from),
      to: round(to),
      ...(angle === undefined ? { kind: 'abrupt' } : { kind: 'conical', angle }),
    });

  test('no change costs nothing', () => {
    expect(change(6, 6).c).toBe(0);
    expect(change(6, 6, 40).c).toBe(0);
  });

  test('a reducer and an enlarger are both charged on the smaller duct', () => {
    expect(change(8, 6, 40).section).toEqual(six);
    expect(change(6, 8, 40).section).toEqual(six);
    const [part] = change(6, 8, 40).parts;
    expect(part).toMatchObject({ kind: 'local', area: area(six) });
  });

  test('an abrupt expansion is Borda-Carnot', () => {
    expect(change(6, 12).c).toBeCloseTo((1 - 1 / 4) ** 2, 12);
  });

  test('a cone grows into the abrupt expansion without a step', () => {
    const abrupt = change(6, 8).c;
    let before = 0;
    for (let angle = 1; angle <= 180; angle++) {
      const { c } = change(6, 8, angle);
      expect(c).toBeGreaterThanOrEqual(before);
      expect(c - before).toBeLessThan(0.025 * abrupt);
      before = c;
    }
    expect(before).toBe(abrupt);
  });

  test('a contraction fades to nothing as the two ducts become alike', () => {
    let before = 0;
    for (let from = 6; from <= 8.5; from += 0.05) {
      const { c } = change(from, 6);
      expect(c).toBeGreaterThanOrEqual(before);
      expect(c - before).toBeLessThan(0.01);
      before = c;
    }
  });

  test('shrinking costs less than growing between the same two ducts', () => {
    expect(change(8, 6, 60).c).toBeLessThan(change(6, 8, 60).c);
  });

  test('round to rectangular costs something even where the areas are close', () => {
    const loss = transitionLoss({ from: round(6.43), to: stack, kind: 'conical', angle: 20 });
    expect(loss.c).toBe(0.05);
    expect(loss.provenance.sourceKind).toBe('assumption');
    expect(loss.label).toMatch(/^round to rectangular/);
  });
});

describe('caps', () => {
  test('an open end is C = 1 exactly, on any duct', () => {
    for (const section of [six, stack, round(10)]) {
      expect(openEnd(section).c).toBe(1);
      expect(openEnd(section).provenance.notes).toEqual([]);
    }
  });

  test('every cap costs at least the velocity pressure that leaves', () => {
    for (const row of caps)
      expect(capLoss({ cap: row.id, section: six }).c, row.id).toBeGreaterThanOrEqual(1);
  });

  test('the build-up has a label for every part and adds up to the C of the cap', () => {
    for (const row of caps)
      for (const opening of [undefined, 0.01, 0.03]) {
        const loss = capLoss({ cap: row.id, section: six, ...(opening ? { opening } : {}) });
        expect(loss.buildUp?.length, row.id).toBe(loss.parts.length);
        const total = loss.parts.reduce((sum, part) => {
          if (part.kind !== 'local' && part.kind !== 'flap') throw new Error(part.kind);
          return sum + part.c * (area(six) / part.area) ** 2;
        }, 0);
        expect(loss.c, row.id).toBeCloseTo(total, 12);
      }
  });

  test('the drop of a cap at high flow is its C on the duct, plus what holds the flap', () => {
    for (const row of caps) {
      const loss = capLoss({ cap: row.id, section: six });
      const flow = 0.3;
      const vp = (1.2 / 2) * (flow / area(six)) ** 2;
      expect(drop(loss, flow), row.id).toBeCloseTo(loss.c * vp + (row.flap?.openingPressure ?? 0), 1);
    }
  });

  test('a smaller opening costs more', () => {
    for (const row of caps) {
      let before = Number.POSITIVE_INFINITY;
      for (let share = 0.3; share <= 1; share += 0.05) {
        const { c } = capLoss({ cap: row.id, section: six, opening: share * area(six) });
        expect(c, row.id).toBeLessThan(before);
        before = c;
      }
    }
  });

  test('the small wall cap opens about 20 square inches on a 6 in run and costs twice the full one', () => {
    const small = capLoss({ cap: 'wall-flap-small', section: six });
    const opening = small.parts.find((part) => part.kind === 'flap');
    expect(opening?.kind === 'flap' && opening.area / INCH ** 2).toBeCloseTo(20, 1);
    const full = capLoss({ cap: 'wall-flap', section: six });
    expect(small.c / full.c).toBeGreaterThan(1.9);
    expect(small.buildUp?.[0]).toBe('contraction into the opening');
  });

  test('a given opening overrides the row, and the result says so', () => {
    const loss = capLoss({ cap: 'wall-flap', section: six, opening: 0.01 });
    expect(loss.provenance.notes[0]).toMatch(/free opening 54\.82 % of the duct, as given/);
  });

  test('an opening that is nothing and a cap that is unknown are refused', () => {
    expect(() => capLoss({ cap: 'open', section: six, opening: 0 })).toThrow(RangeError);
    expect(() => capLoss({ cap: 'top-hat', section: six })).toThrow(/top-hat/);
  });
});

describe('parts in the run', () => {
  test('a damper turned further costs more', () => {
    const at = (angle: number) => inlineLoss({ kind: 'balancing-damper', angle, section: six }).c;
    for (let angle = 0; angle < 60; angle += 5) expect(at(angle + 5)).toBeGreaterThan(at(angle));
  });

  test('a screen or plate with less free area costs more, and a clear one nothing', () => {
    for (const kind of ['screen', 'perforated-plate']) {
      const at = (freeArea: number) => inlineLoss({ kind, freeArea, section: six }).c;
      for (let n = 0.3; n < 0.98; n += 0.05) expect(at(n), kind).toBeGreaterThan(at(n + 0.02));
      expect(at(1), kind).toBe(0);
    }
  });

  test('a backdraught damper shows a coefficient that falls as the flow rises', () => {
    const loss = inlineLoss({ kind: 'backdraught-damper', section: six });
    const shown = (flow: number) => drop(loss, flow) / ((1.2 / 2) * (flow / area(six)) ** 2);
    expect(shown(0.05)).toBeGreaterThan(shown(0.1));
    expect(shown(0.1)).toBeGreaterThan(shown(0.3));
    expect(shown(0.3)).toBeGreaterThan(loss.c);
  });

  test('a user part by C, by loss at a flow and by equivalent length give the drop that was entered', () => {
    const vp = (1.2 / 2) * (0.1 / area(six)) ** 2;
    const part = (user: Parameters<typeof inlineLoss>[0]['user']) =>
      drop(inlineLoss({ kind: 'user', section: six, user }), 0.1);
    expect(part({ c: 2 })).toBeCloseTo(2 * vp, 6);
    expect(part({ loss: 37, atFlow: 0.1 })).toBeCloseTo(37, 6);
    const duct = partDrop(
      {
        kind: 'duct',
        length: 4,
        hydraulicDiameter: 0.1524,
        area: area(six),
        roughness: roughnessOf('galvanized', six).roughness,
        multiplier: 1,
      },
      0.1,
      air,
    );
    expect(part({ equivalentLength: 4 })).toBeCloseTo(duct, 9);
  });

  test('a figure from a data sheet replaces the row of the catalogue', () => {
    const loss = inlineLoss({ kind: 'silencer', section: six, user: { c: 0.9 } });
    expect(loss.c).toBe(0.9);
    expect(loss.provenance.source).toBe('Entered by the user');
    expect(loss.label).toBe('Silencer');
  });

  test('every row of the catalogue gives a part that can be solved', () => {
    for (const row of inlineParts)
      for (const section of [six, stack]) {
        const loss = inlineLoss({ kind: row.id, section });
        expect(drop(loss, 0.2), row.id).toBeGreaterThan(drop(loss, 0.1));
      }
  });

  test('a user part without a figure and an unknown part are refused', () => {
    expect(() => inlineLoss({ kind: 'user', section: six })).toThrow(RangeError);
    expect(() => inlineLoss({ kind: 'whistle', section: six })).toThrow(/whistle/);
  });
});

describe('materials', () => {
  test('flexible duct left slack costs more, and stretched out only its roughness', () => {
    expect(roughnessOf('flexible', six, 1).multiplier).toBe(1);
    expect(roughnessOf('flexible', six, 0.85).multiplier).toBeGreaterThan(
      roughnessOf('flexible', six, 0.96).multiplier,
    );
  });

  test('rigid duct has no slack to count', () => {
    expect(roughnessOf('galvanized', six, 0.8).multiplier).toBe(1);
  });

  test('more slack than was tested is said', () => {
    expect(roughnessOf('flexible', six, 0.6).provenance.notes.join(' ')).toMatch(/beyond the 30 % of slack/);
  });

  test('a stretch outside above 0 to 1 and an unknown material are refused', () => {
    expect(() => roughnessOf('flexible', six, 0)).toThrow(RangeError);
    expect(() => roughnessOf('flexible', six, 1.1)).toThrow(RangeError);
    expect(() => roughnessOf('cardboard', six)).toThrow(/cardboard/);
  });
});

describe('junctions', () => {
  const at = (flowRatio: number, more: Partial<Parameters<typeof junctionLoss>[0]> = {}) =>
    junctionLoss({ angle: 45, flowRatio, areaRatio: 0.5, converging: true, ...more });

  test('a branch that carries next to nothing is pulled along: its C is negative', () => {
    expect(at(0.05).branchC).toBeLessThan(0);
  });

  test('a fast branch at a shallow angle pulls the straight stream along', () => {
    expect(at(0.9, { angle: 30, areaRatio: 0.35 }).straightC).toBeLessThan(0);
  });

  test('a branch that carries more costs more when joining', () => {
    for (let q = 0; q < 0.95; q += 0.05) expect(at(q + 0.05).branchC).toBeGreaterThan(at(q).branchC);
  });

  test('a shallower branch joins more cheaply', () => {
    for (const q of [0.3, 0.5, 0.8])
      expect(at(q, { angle: 30 }).branchC).toBeLessThan(at(q, { angle: 90 }).branchC);
  });

  test('nothing steps as the flow ratio or the angle moves', () => {
    for (const converging of [true, false])
      for (const areaRatio of [0.2, 0.5, 1])
        for (let q = 0; q < 1; q += 0.0005) {
          const here = at(q, { converging, areaRatio });
          const there = at(q + 0.0005, { converging, areaRatio });
          expect(Math.abs(there.branchC - here.branchC)).toBeLessThan(0.03);
          expect(Math.abs(there.straightC - here.straightC)).toBeLessThan(0.01);
        }
    expect(at(0.5, { angle: 89.999 }).straightC).toBeCloseTo(at(0.5, { angle: 90 }).straightC, 3);
  });

  test('the straight way past a branch that takes nothing costs nothing', () => {
    expect(at(0, { converging: false }).straightC).toBe(0);
    expect(at(0).straightC).toBe(0);
  });

  test('what lies outside the range is clamped with a note, and the second opinion is quoted', () => {
    const { provenance } = at(1.2, { angle: 120 });
    expect(provenance.notes).toContain('clamped to branch angle 90 (asked 120)');
    expect(provenance.notes).toContain('clamped to flow ratio 1 (asked 1.2)');
    expect(provenance.notes.at(-1)).toMatch(/branch entry 1 /);
    expect(provenance.sourceKind).toBe('memory');
  });

  test('a steeper industrial branch entry costs more', () => {
    expect(branchEntryFactor(60)).toBeGreaterThan(branchEntryFactor(45));
    expect(() => at(Number.NaN)).toThrow(RangeError);
  });
});

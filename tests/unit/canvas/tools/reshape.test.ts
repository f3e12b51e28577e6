import { describe, expect, it } from 'vitest';
import { bendGrip } from '../../../../src/canvas/bend-grip.ts';
import { only } from '../../../../src/canvas/selection.ts';
import { parseRadius } from '../../../../src/canvas/tools/select/bending.ts';
import { largestRadius } from '../../../../src/graph/reshape.ts';
import { bentJob, type Driver, drive } from '../driver.ts';

/** The turn n3 of the bent job, selected, with where its grip is on the floor sheet. */
function atTurn(radiusRatio = 1.5): { driver: Driver; grip: readonly [number, number] } {
  const job = bentJob();
  const node = job.schemes[0]?.nodes.find(({ id }) => id === 'n3');
  if (node) node.bend = { kind: 'smooth', radiusRatio };
  const driver = drive(job, { selection: only({ kind: 'node', id: 'n3' }) });
  return { driver, grip: gripOf(driver) };
}

function gripOf(driver: Driver): readonly [number, number] {
  const { solution, selection } = driver.board.getState();
  const grip = bendGrip(solution.route, selection, 'floor', 100);
  if (!grip) throw new Error('the turn has a grip');
  return [grip.at.u, grip.at.v];
}

function bend(driver: Driver) {
  const found = driver.board.getState().solution.route.nodes.get('n3')?.bend;
  if (!found) throw new Error('n3 is a bend');
  return found;
}

const note = (driver: Driver) => driver.shapes('floor').find(({ kind }) => kind === 'note');

describe('the arc of a bend', () => {
  it('dragged towards its centre gets a larger radius, in one undo step', () => {
    const { driver, grip } = atTurn();
    const before = bend(driver).radius;
    driver.drag('floor', grip, [grip[0] - 0.06, grip[1] + 0.06]);
    expect(bend(driver).radius).toBeGreaterThan(before);
    expect(driver.undoSteps()).toEqual(['reshape bend']);
  });

  it('follows the pointer: its middle comes to lie where the grip is let go of', () => {
    const { driver, grip } = atTurn(3);
    const to = [grip[0] - 0.05, grip[1] + 0.05] as const;
    driver.drag('floor', grip, to, { alt: true });
    const [u, v] = gripOf(driver);
    expect(u).toBeCloseTo(to[0], 6);
    expect(v).toBeCloseTo(to[1], 6);
  });

  it('comes in steps of 0.05 diameters, but for Alt', () => {
    const { driver, grip } = atTurn();
    driver.drag('floor', grip, [grip[0] - 0.053, grip[1] + 0.061]);
    const steps = bend(driver).radiusRatio / 0.05;
    expect(steps).toBeCloseTo(Math.round(steps), 9);
  });

  it('costs less and delivers more while it is dragged', () => {
    const { driver, grip } = atTurn(1);
    const flow = () => {
      const { solution, speed } = driver.board.getState();
      const outcome = solution.speeds[speed]?.outcome;
      return outcome?.solved ? outcome.flow : Number.NaN;
    };
    const before = flow();
    driver.press('floor', ...grip);
    driver.move('floor', grip[0] - 0.06, grip[1] + 0.06);
    expect(flow()).toBeGreaterThan(before);
    const { text } = note(driver) as { text: string };
    expect(text).toContain('loses');
    expect(text).toContain('m³/h');
  });

  it('stops at the largest radius that its legs have room for, and says which leg is used up', () => {
    const { driver, grip } = atTurn();
    const { route } = driver.board.getState().solution;
    driver.press('floor', ...grip);
    driver.move('floor', grip[0] - 1.4, grip[1] + 1.4);
    expect(bend(driver).radius).toBeCloseTo(largestRadius(route, 'n3') ?? Number.NaN, 9);
    const why = driver.shapes('floor').find(({ kind }) => kind === 'snap');
    expect(why).toMatchObject({ reason: expect.stringMatching(/^(largest that fits|ten diameters)/) });
  });

  it('is no tighter than half a diameter, and says why', () => {
    const { driver, grip } = atTurn();
    driver.press('floor', ...grip);
    driver.move('floor', grip[0] + 0.5, grip[1] - 0.5);
    expect(bend(driver).radiusRatio).toBeCloseTo(0.5, 9);
    expect(driver.shapes('floor')).toContainEqual(
      expect.objectContaining({ reason: expect.stringContaining('half a diameter') }),
    );
  });

  it('takes a typed radius', () => {
    const { driver } = atTurn();
    expect(driver.key('r')).toBe(true);
    driver.type('300');
    driver.key('Enter');
    expect(bend(driver).radius).toBeCloseTo(0.3, 9);
    expect(driver.undoSteps()).toEqual(['reshape bend']);
  });

  it('takes a typed ratio to the diameter', () => {
    const { driver } = atTurn();
    driver.type('r2.5d');
    driver.key('Enter');
    expect(bend(driver).radiusRatio).toBeCloseTo(2.5, 9);
  });

  it('says what is wrong with what is typed, and waits', () => {
    const { driver } = atTurn();
    driver.type('r3x');
    driver.key('Enter');
    expect(driver.controller.phase).toBe('select/bending');
    expect(driver.said.at(-1)).toContain('3x');
    expect(driver.undoSteps()).toEqual([]);
  });

  it('has no grip on a mitre, nor where the turn is seen from its side', () => {
    const { driver } = atTurn();
    const { solution, selection } = driver.board.getState();
    expect(bendGrip(solution.route, selection, 'floor', 100)).not.toBeNull();
    const mitred = drive(bentJob(), { selection });
    mitred.board.dispatch('mitre', (job) => {
      const node = job.schemes[0]?.nodes.find(({ id }) => id === 'n3');
      if (node) node.bend = { kind: 'mitred' };
    });
    expect(bendGrip(mitred.board.getState().solution.route, selection, 'floor', 100)).toBeNull();
  });
});

describe('a typed radius', () => {
  it('is a length or a number of diameters', () => {
    expect(parseRadius('12"', 0.2, 'imperial')).toEqual({ ok: true, value: expect.closeTo(0.3048, 12) });
    expect(parseRadius('1.5D', 0.2, 'imperial')).toEqual({ ok: true, value: expect.closeTo(0.3, 12) });
    expect(parseRadius('1,5 D', 0.2, 'imperial')).toEqual({ ok: true, value: expect.closeTo(0.3, 12) });
    expect(parseRadius('1 1/2 × D', 0.2, 'imperial')).toEqual({ ok: true, value: expect.closeTo(0.3, 12) });
    expect(parseRadius('2 r/D', 0.2, 'metric')).toEqual({ ok: true, value: expect.closeTo(0.4, 12) });
    expect(parseRadius('0', 0.2, 'metric').ok).toBe(false);
    expect(parseRadius('0D', 0.2, 'metric').ok).toBe(false);
  });
});

import { describe, expect, it } from 'vitest';
import { idsOf } from '../../../../src/canvas/selection.ts';
import { bentJob, type Driver, drive, furnishedJob } from '../driver.ts';

const parts = (driver: Driver, id = 'd2') => driver.scheme.segments.find((s) => s.id === id)?.fittings ?? [];

describe('the part tool', () => {
  it('puts a part in line where a leg is clicked, and selects it', () => {
    const driver = drive(bentJob(), { tool: 'part' });
    driver.click('floor', 2.2, 1);
    expect(parts(driver)).toEqual([{ kind: 'backdraught-damper', at: expect.closeTo(1.2, 9) }]);
    expect(driver.board.getState()).toMatchObject({ tool: 'select', selection: { parts: ['d2/0'] } });
    expect(driver.undoSteps()).toEqual(['place backdraught damper']);
  });

  it('takes the next kind by Tab, keeps it, and the one before by Shift and Tab', () => {
    const driver = drive(bentJob(), { tool: 'part' });
    driver.key('Tab');
    driver.click('floor', 2, 1);
    expect(parts(driver)[0]?.kind).toBe('balancing-damper');
    driver.board.set({ tool: 'part' });
    driver.click('floor', 2.4, 1);
    expect(parts(driver)[1]?.kind).toBe('balancing-damper');
    driver.board.set({ tool: 'part' });
    for (const _ of [1, 2]) driver.key('Tab', { shift: true });
    driver.click('floor', 2.8, 1);
    expect(parts(driver)[2]?.kind).toBe('filter');
  });

  it('says where a part goes when it is clicked elsewhere', () => {
    const driver = drive(bentJob(), { tool: 'part' });
    driver.click('floor', 5, 5);
    expect(driver.said.at(-1)).toBe('A part goes on a leg.');
    expect(driver.undoSteps()).toEqual([]);
  });
});

describe('a part in line', () => {
  it('is dragged along its leg and no farther, in one undo step', () => {
    const driver = drive(furnishedJob());
    driver.drag('floor', [2, 1], [2.5, 1.4]);
    expect(parts(driver)[0]?.at).toBeCloseTo(1.5, 9);
    driver.drag('floor', [2.5, 1], [9, 1]);
    expect(parts(driver)[0]?.at).toBeCloseTo(2, 9);
    expect(driver.undoSteps()).toEqual(['move backdraught damper', 'move backdraught damper']);
  });

  it('stays selected when it passes another', () => {
    const job = furnishedJob();
    const leg = job.schemes[0]?.segments.find(({ id }) => id === 'd2');
    leg?.fittings?.push({ kind: 'screen', at: 1.4 });
    const driver = drive(job);
    driver.drag('floor', [2, 1], [2.7, 1]);
    expect(parts(driver).map(({ kind }) => kind)).toEqual(['screen', 'backdraught-damper']);
    expect(idsOf(driver.board.getState().selection, 'part')).toEqual(['d2/1']);
  });

  it('is deleted and leaves the leg', () => {
    const driver = drive(furnishedJob());
    driver.click('floor', 2, 1);
    driver.key('Delete');
    expect(parts(driver)).toEqual([]);
    expect(driver.scheme.segments).toHaveLength(3);
  });
});

describe('the split tool', () => {
  it('parts the legs at a turn', () => {
    const driver = drive(bentJob(), { tool: 'split' });
    driver.click('floor', 3, 1);
    expect(driver.scheme.nodes).toHaveLength(5);
    expect(driver.undoSteps()).toEqual(['split run']);
    expect(driver.board.getState().tool).toBe('select');
  });

  it('cuts a leg in two ends', () => {
    const driver = drive(bentJob(), { tool: 'split' });
    driver.click('floor', 2, 1);
    expect(driver.scheme.nodes).toHaveLength(6);
    expect(driver.scheme.segments).toHaveLength(4);
    expect(driver.undoSteps()).toEqual(['split run']);
  });

  it('does nothing at the end of a run', () => {
    const driver = drive(bentJob(), { tool: 'split' });
    driver.click('floor', 3, 3);
    expect(driver.undoSteps()).toEqual([]);
  });
});

describe('the join tool', () => {
  it('draws a leg between two ends that are apart', () => {
    const job = bentJob();
    const [scheme] = job.schemes;
    if (scheme) scheme.segments = scheme.segments.filter(({ id }) => id !== 'd2');
    const driver = drive(job, { tool: 'join' });
    driver.click('floor', 3, 1);
    driver.click('floor', 1, 1);
    expect(driver.scheme.segments).toHaveLength(3);
    expect(driver.undoSteps()).toEqual(['join ends']);
  });

  it('makes one node of two ends at one place', () => {
    const driver = drive(bentJob(), { tool: 'split' });
    driver.click('floor', 3, 1);
    driver.board.set({ tool: 'join' });
    driver.click('floor', 3, 1);
    driver.click('floor', 3, 1);
    expect(driver.scheme.nodes).toHaveLength(4);
    expect(driver.undoSteps()).toEqual(['split run', 'join ends']);
  });

  it('shows the leg before it is made', () => {
    const driver = drive(bentJob(), { tool: 'join' });
    driver.click('floor', 3, 3);
    driver.move('floor', 1, 1);
    expect(driver.board.getState().live.schemes[0]?.segments).toHaveLength(4);
    expect(driver.board.getState().job.schemes[0]?.segments).toHaveLength(3);
  });

  it('asks for an end where none is clicked', () => {
    const driver = drive(bentJob(), { tool: 'join' });
    driver.click('floor', 5, 5);
    expect(driver.said.at(-1)).toContain('open end');
  });
});

describe('a branch', () => {
  it('is drawn by a drag from the middle of a leg, in one undo step', () => {
    const driver = drive(bentJob(), { tool: 'draw' });
    driver.drag('floor', [2, 1], [2, 2.5]);
    driver.key('Escape');
    expect(driver.scheme.segments).toHaveLength(5);
    expect(driver.undoSteps()).toEqual(['draw leg']);
    const kinds = [...driver.board.getState().solution.route.nodes.values()].map(({ kind }) => kind);
    expect(kinds).toContain('junction');
  });
});

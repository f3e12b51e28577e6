import { describe, expect, it } from 'vitest';
import { emptyJob } from '../../../../src/graph/templates.ts';
import { parseLength } from '../../../../src/units/index.ts';
import { bentJob, type Driver, drive } from '../driver.ts';

const drawingTool = { tool: 'draw' } as const;

function places(driver: Driver) {
  return driver.scheme.nodes.map(({ at }) => at);
}

function text(driver: Driver, sheet: 'floor' | 'section-x' = 'floor'): string {
  return driver
    .shapes(sheet)
    .flatMap((shape) => (shape.kind === 'note' ? [shape.text] : []))
    .join();
}

describe('the draw tool', () => {
  it('draws a leg from click to click, at the working height', () => {
    const driver = drive(emptyJob('metric'), { ...drawingTool, workingHeight: 2.25 });
    driver.click('floor', 1, 1);
    driver.click('floor', 3, 1);
    expect(places(driver)).toEqual([
      [1, 1, 2.25],
      [3, 1, 2.25],
    ]);
  });

  it('draws a leg by pressing, dragging and letting go', () => {
    const driver = drive(emptyJob('metric'), drawingTool);
    driver.drag('floor', [1, 1], [3, 1]);
    expect(places(driver)).toEqual([
      [1, 1, 2.3],
      [3, 1, 2.3],
    ]);
    expect(driver.controller.phase).toBe('draw/leg');
  });

  it('makes one undo step of each leg', () => {
    const driver = drive(emptyJob('metric'), drawingTool);
    for (const [u, v] of [
      [1, 1],
      [3, 1],
      [3, 4],
    ] as const)
      driver.click('floor', u, v);
    expect(driver.undoSteps()).toEqual(['draw leg', 'draw leg']);
  });

  it('goes on from the end just made on the other sheet, with exact places', () => {
    const driver = drive(emptyJob('metric'), { ...drawingTool, workingHeight: 2 });
    driver.click('floor', 1, 1.5);
    driver.click('floor', 3, 1.5);
    driver.click('section-x', 3, 4);
    driver.click('floor', 3, 5.5);
    driver.click('section-y', 5.5, 6);
    expect(places(driver)).toEqual([
      [1, 1.5, 2],
      [3, 1.5, 2],
      [3, 1.5, 4],
      [3, 5.5, 4],
      [3, 5.5, 6],
    ]);
    expect(driver.scheme.segments.map(({ from, to }) => [from, to])).toEqual([
      ['n1', 'n2'],
      ['n2', 'n3'],
      ['n3', 'n4'],
      ['n4', 'n5'],
    ]);
  });

  it('previews the leg in the document without committing it', () => {
    const driver = drive(bentJob(), drawingTool);
    const { job } = driver.board.getState();
    driver.click('floor', 3, 3);
    driver.move('floor', 5, 3);
    const { live } = driver.board.getState();
    expect(live.schemes[0]?.segments).toHaveLength(4);
    expect(driver.board.getState().job).toBe(job);
  });

  it('shows the length and the angle of the leg in hand, and why it snapped', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.move('floor', 4.5, 3.02);
    expect(text(driver)).toContain('1500 mm');
    expect(text(driver)).toContain('turn 90°');
    expect(driver.shapes('floor')).toContainEqual(
      expect.objectContaining({ kind: 'snap', reason: expect.stringContaining('90° from last turn') }),
    );
  });

  it('says nothing while the pointer rests where the leg starts', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.click('floor', 5, 3);
    expect(driver.shapes('floor')).toEqual([{ kind: 'node', at: { u: 5, v: 3 } }]);
  });

  it('takes no notice of snapping while Alt is down', () => {
    const driver = drive(emptyJob('metric'), drawingTool);
    driver.click('floor', 1.013, 1.027, { alt: true });
    driver.click('floor', 3.031, 1.043, { alt: true });
    expect(places(driver)).toEqual([
      [1.013, 1.027, 2.3],
      [3.031, 1.043, 2.3],
    ]);
  });

  it('lets go of a snap when Alt goes down under a pointer that stands still', () => {
    const driver = drive(emptyJob('metric'), drawingTool);
    driver.click('floor', 1, 1);
    driver.move('floor', 3.02, 1.03);
    expect(driver.shapes('floor').some(({ kind }) => kind === 'snap')).toBe(true);
    driver.key('Alt', { alt: true });
    expect(driver.shapes('floor').some(({ kind }) => kind === 'snap')).toBe(false);
  });

  it('joins an existing node that is really there, and ends the run', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.click('floor', 1, 3);
    driver.click('floor', 1, 1);
    expect(driver.scheme.nodes).toHaveLength(5);
    expect(driver.scheme.segments.at(-1)).toMatchObject({ from: 'n5', to: 'n2' });
    expect(driver.controller.phase).toBe('draw/ready');
  });

  it('does not join a node that only looks as if it were there', () => {
    const driver = drive(bentJob(), { ...drawingTool, workingHeight: 1 });
    driver.click('floor', 5, 3);
    driver.click('floor', 3, 3);
    expect(driver.node('n6').at).toEqual([3, 3, 1]);
    expect(driver.scheme.segments.at(-1)).toMatchObject({ from: 'n5', to: 'n6' });
  });

  it('splits the leg that it ends on and branches there', () => {
    const driver = drive(bentJob(), { ...drawingTool, workingHeight: 2.4 });
    driver.click('floor', 2, 3);
    driver.click('floor', 2, 1);
    const junction = driver.scheme.nodes.find(({ at }) => at[0] === 2 && at[1] === 1);
    expect(
      driver.scheme.segments.filter(({ from, to }) => [from, to].includes(junction?.id ?? '')),
    ).toHaveLength(3);
    expect(driver.undoSteps()).toEqual(['draw leg']);
  });

  it('splits the leg that it starts on', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 2, 1);
    driver.click('floor', 2, 3);
    expect(driver.scheme.segments).toHaveLength(5);
    expect(driver.scheme.nodes.map(({ at }) => at)).toContainEqual([2, 1, 2.4]);
    driver.board.undo();
    expect(driver.scheme.segments).toHaveLength(3);
  });

  it('starts at the open end of a riser seen from above, not at the hood below it', () => {
    const job = bentJob();
    job.schemes[0]?.nodes.splice(2);
    job.schemes[0]?.segments.splice(1);
    const driver = drive(job, drawingTool);
    driver.click('floor', 1, 1);
    driver.click('floor', 3, 1);
    expect(driver.node('n3').at).toEqual([3, 1, 2.4]);
  });

  it('ends the run by a double click and leaves an open end', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.doubleClick('floor', 5, 3);
    expect(driver.controller.phase).toBe('draw/ready');
    expect(driver.board.getState().solution.route.nodes.get('n5')?.kind).toBe('open end');
    expect(driver.undoSteps()).toEqual(['draw leg']);
  });

  it('ends the run by Enter without the leg in hand', () => {
    const driver = drive(bentJob(), drawingTool);
    const { job } = driver.board.getState();
    driver.click('floor', 3, 3);
    driver.move('floor', 5, 3);
    driver.key('Enter');
    expect(driver.board.getState().live).toBe(job);
    expect(driver.controller.phase).toBe('draw/ready');
  });

  it('ends with a cap on a click on an exit face', () => {
    const job = bentJob();
    job.exits.push({ id: 'x1', name: 'north wall', kind: 'wall', min: [0, 5, 0], max: [6, 5.1, 2.6] });
    const driver = drive(job, drawingTool);
    driver.click('floor', 3, 3);
    driver.move('floor', 3, 5.1);
    expect(text(driver)).toContain('ends with a cap');
    driver.click('floor', 3, 5.1);
    expect(driver.node('n5')).toMatchObject({ role: 'cap', cap: 'wall-flap', at: [3, 5.1, 2.4] });
    expect(driver.controller.phase).toBe('draw/ready');
    expect(driver.undoSteps()).toEqual(['draw leg']);
  });

  it('ends the leg in hand with a cap by C, a roof cap where it goes up', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.move('section-x', 3, 4.4);
    driver.key('c');
    expect(driver.node('n5')).toMatchObject({ role: 'cap', cap: 'roof-cap', at: [3, 3, 4.4] });
  });

  it('moves a cap on to the new end of the run, and keeps its kind on an exit face', () => {
    const job = bentJob();
    job.exits.push({ id: 'x1', name: 'north wall', kind: 'wall', min: [0, 5, 0], max: [6, 5.1, 2.6] });
    Object.assign(job.schemes[0]?.nodes[3] ?? {}, { role: 'cap', cap: 'wall-hooded' });
    const driver = drive(job, drawingTool);
    driver.click('floor', 3, 3);
    driver.click('floor', 3, 5.1);
    expect(driver.node('n4').role).toBe('turn');
    expect(driver.node('n5')).toMatchObject({ role: 'cap', cap: 'wall-hooded' });
  });

  it('refuses a leg without length and says why', () => {
    const driver = drive(bentJob(), drawingTool);
    const { job } = driver.board.getState();
    driver.click('floor', 3, 3);
    driver.key('Tab');
    driver.type('0');
    driver.key('Enter');
    expect(driver.board.getState().job).toBe(job);
    expect(driver.said.at(-1)).toMatch(/length/);
  });
});

describe('typing while drawing', () => {
  it('draws exactly the typed length along the direction of the pointer', () => {
    const driver = drive(emptyJob('imperial'), drawingTool);
    driver.click('floor', 0, 0);
    driver.move('floor', 2, 0.01);
    driver.type('3\' 4 1/2"');
    driver.key('Enter');
    const typed = parseLength('3\' 4 1/2"', 'imperial');
    expect(driver.node('n2').at).toEqual([typed.ok && typed.value, 0, 2.3]);
  });

  it('draws exactly the typed angle', () => {
    const driver = drive(emptyJob('metric'), drawingTool);
    driver.click('floor', 0, 0);
    driver.type('1000');
    driver.key('Tab');
    driver.type('90');
    driver.key('Enter');
    expect(driver.node('n2').at).toEqual([0, 1, 2.3]);
  });

  it('shows what is typed, and what is wrong with it', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.move('floor', 5, 3);
    driver.type('12 zz');
    expect(text(driver)).toBe('12 zz  ?');
    expect(driver.said.at(-1)).toContain('12 zz');
    driver.key('Enter');
    expect(driver.scheme.segments).toHaveLength(3);
    for (let i = 0; i < 3; i += 1) driver.key('Backspace');
    expect(text(driver)).toContain('12  0°');
    expect(driver.said.at(-1)).toBe('');
  });

  it('erases a letter by Backspace, and takes back the last leg where nothing is typed', () => {
    const driver = drive(bentJob(), drawingTool);
    const { job } = driver.board.getState();
    driver.click('floor', 3, 3);
    driver.click('floor', 5, 3);
    driver.type('1');
    driver.key('Backspace');
    expect(driver.scheme.segments).toHaveLength(4);
    driver.key('Backspace');
    expect(driver.board.getState().job).toStrictEqual(job);
    driver.click('floor', 3, 5);
    expect(driver.scheme.segments.at(-1)).toMatchObject({ from: 'n4', to: 'n5' });
  });

  it('takes back every leg of the run by Backspace, one after the other, and not what was there before', () => {
    const driver = drive(bentJob(), drawingTool);
    const { job } = driver.board.getState();
    for (const [u, v] of [
      [3, 3],
      [5, 3],
      [5, 5],
      [7, 5],
    ] as const)
      driver.click('floor', u, v);
    for (let i = 0; i < 3; i += 1) driver.key('Backspace');
    expect(driver.board.getState().job).toStrictEqual(job);
    driver.key('Backspace');
    expect(driver.controller.phase).toBe('draw/ready');
    expect(driver.board.getState().job).toStrictEqual(job);
  });

  it('does not take back by Backspace what was changed elsewhere since', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.click('floor', 5, 3);
    driver.board.dispatch('rename job', (job) => {
      job.title = 'Another';
    });
    driver.key('Backspace');
    expect(driver.board.getState().job.title).toBe('Another');
    expect(driver.scheme.segments).toHaveLength(4);
  });

  it('goes up by a typed height on the floor sheet', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.key('u');
    expect(text(driver)).toBe('up __');
    driver.type('0.75 m');
    driver.key('Enter');
    expect(driver.node('n5').at).toEqual([3, 3, 2.4 + 0.75]);
    expect(driver.board.getState().solution.route.segments.get('d4')?.vertical).toBe(true);
  });

  it('goes down by a height that was typed first', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.type('400');
    driver.key('d');
    driver.key('Enter');
    expect(driver.node('n5').at).toEqual([3, 3, 2.4 - 0.4]);
  });

  it('draws a whole run by keys alone', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.board.set({ selection: { nodes: ['n4'], segments: [] } });
    driver.key('Enter');
    driver.key('ArrowRight');
    driver.type('1500');
    driver.key('Enter');
    driver.key('ArrowUp');
    driver.type('500');
    driver.key('c');
    driver.key('Backspace');
    driver.key('Enter');
    driver.key('Enter');
    expect(places(driver).slice(4)).toEqual([
      [4.5, 3, 2.4],
      [4.5, 3.5, 2.4],
    ]);
    expect(driver.controller.phase).toBe('draw/ready');
  });

  it('leaves keys with Control to the program', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    expect(driver.key('z', { mod: true })).toBe(false);
    expect(driver.key('1', { mod: true })).toBe(false);
  });
});

describe('leaving the draw tool half way', () => {
  it('drops only the leg in hand on the first Escape, the tool on the second', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.click('floor', 5, 3);
    const { job } = driver.board.getState();
    driver.move('floor', 5, 5);
    driver.key('Escape');
    expect(driver.board.getState().live).toBe(job);
    expect(driver.board.getState().tool).toBe('draw');
    driver.key('Escape');
    expect(driver.board.getState().tool).toBe('select');
    expect(driver.board.getState().job).toBe(job);
  });

  it('restores the very same document when the pointer is lost in the first drag', () => {
    const driver = drive(bentJob(), drawingTool);
    const { job, solution } = driver.board.getState();
    driver.press('floor', 3, 3);
    driver.move('floor', 5, 3);
    driver.controller.cancel();
    expect(driver.board.getState().live).toBe(job);
    expect(driver.board.getState().solution).toBe(solution);
    expect(driver.controller.phase).toBe('draw/ready');
  });

  it('keeps the run when the pointer is lost in a later press', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.press('floor', 5, 3);
    driver.move('floor', 5, 4);
    driver.controller.cancel();
    expect(driver.board.getState().live).toBe(driver.board.getState().job);
    driver.click('floor', 5, 3);
    expect(driver.scheme.segments.at(-1)).toMatchObject({ from: 'n4', to: 'n5' });
  });

  it('goes back along the run when undo takes a leg away under it', () => {
    const driver = drive(bentJob(), drawingTool);
    driver.click('floor', 3, 3);
    driver.click('floor', 5, 3);
    driver.click('floor', 5, 5);
    driver.board.undo();
    driver.click('floor', 7, 3);
    expect(driver.scheme.segments.at(-1)).toMatchObject({ from: 'n5', to: 'n6' });
    driver.board.undo();
    driver.board.undo();
    expect(driver.controller.phase).toBe('draw/leg');
    expect(driver.scheme.segments).toHaveLength(3);
  });

  it('clears what it showed when another tool is taken', () => {
    const driver = drive(bentJob(), drawingTool);
    const { job } = driver.board.getState();
    driver.click('floor', 3, 3);
    driver.move('floor', 5, 3);
    driver.board.set({ tool: 'select' });
    expect(driver.shapes('floor')).toEqual([]);
    expect(driver.board.getState().live).toBe(job);
  });

  it('hides the leg in hand while the pointer is off the sheets', () => {
    const driver = drive(bentJob(), drawingTool);
    const { job } = driver.board.getState();
    driver.click('floor', 3, 3);
    driver.move('floor', 5, 3);
    driver.controller.out();
    expect(driver.board.getState().live.schemes[0]?.segments).toHaveLength(3);
    expect(driver.board.getState().job).toBe(job);
  });
});

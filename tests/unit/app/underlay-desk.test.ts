import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createBoard } from '../../../src/app/store.ts';
import { createUi } from '../../../src/app/ui.ts';
import { createUnderlayDesk, type Placement } from '../../../src/app/underlay/desk.ts';
import { drawingScales } from '../../../src/app/underlay/scales.ts';
import { type Picture, Refused } from '../../../src/files/underlay/picture.ts';
import type { openSource, Source, SourceTools } from '../../../src/files/underlay/source.ts';
import { emptyJob } from '../../../src/graph/templates.ts';

const scan: Picture = {
  name: 'plan.png',
  image: 'data:image/png;base64,scan',
  size: [400, 200],
  measure: { kind: 'unknown' },
  bare: false,
  notes: [],
};

const wish: Placement = { sheet: 'floor', page: 1, ratio: null, opacity: 0.5, locked: true };

function setUp(open: typeof openSource) {
  const board = createBoard(emptyJob('metric'));
  const ui = createUi();
  const desk = createUnderlayDesk({
    board,
    ui,
    sheets: { centre: () => ({ u: 10, v: 20 }), show: vi.fn() },
    choose: async () => null,
    reader: async () => ({ open, tools: {} as SourceTools }),
  });
  return { board, ui, desk };
}

const source = (more: Partial<Source> = {}): Source => ({
  name: 'plan.png',
  kind: 'png',
  pages: 1,
  preview: async () => null,
  picture: async () => scan,
  close: vi.fn(),
  ...more,
});

const plan = new File(['x'], 'plan.png');

beforeEach(() => {
  vi.stubGlobal('requestAnimationFrame', (call: () => void) => call());
});
afterEach(() => {
  vi.unstubAllGlobals();
});

describe('placing a picture', () => {
  it('is one step, in the middle of what the sheet shows, and asks for two points where its scale is unknown', async () => {
    const { board, desk } = setUp(async () => source());
    await desk.read(plan, 'floor');
    expect(desk.getState().stage.stage).toBe('choosing');
    await desk.place(wish);
    const { job, undoLabel, tool, underlay } = board.getState();
    expect(job.underlays).toEqual([
      expect.objectContaining({ at: [6, 18], scale: 8 / 400, size: [400, 200], locked: true, opacity: 0.5 }),
    ]);
    expect([undoLabel, tool, underlay]).toEqual(['place underlay', 'scale', job.underlays[0]?.id]);
    expect(desk.getState().stage.stage).toBe('idle');
    board.undo();
    expect(board.getState().job.underlays).toEqual([]);
  });

  it('under a section stands on the floor, and that section is shown', async () => {
    const { board, desk } = setUp(async () => source());
    await desk.read(plan, 'section-y');
    await desk.place({ ...wish, sheet: 'section-y' });
    const { job, section } = board.getState();
    expect([job.underlays[0]?.at[1], section]).toEqual([0, 'section-y']);
  });

  it('with a known scale leaves the tool in hand', async () => {
    const paper: Picture = { ...scan, measure: { kind: 'paper', scale: 0.0001 } };
    const { board, desk } = setUp(async () => source({ picture: async () => paper }));
    await desk.read(plan, 'floor');
    await desk.place({ ...wish, ratio: 50 });
    expect(board.getState().job.underlays[0]?.scale).toBeCloseTo(0.005, 12);
    expect(board.getState().tool).toBe('select');
  });

  it('draws only the page of a PDF that was chosen', async () => {
    const picture = vi.fn(async () => scan);
    const close = vi.fn();
    const { board, desk } = setUp(async () => source({ kind: 'pdf', pages: 3, picture, close }));
    await desk.read(plan, 'floor');
    expect(picture).not.toHaveBeenCalled();
    await desk.place({ ...wish, page: 2 });
    expect(picture.mock.calls).toEqual([[2, expect.any(AbortSignal)]]);
    expect([board.getState().job.underlays.length, close.mock.calls.length]).toEqual([1, 1]);
  });

  it('tells what was done to the picture', async () => {
    const { ui, desk } = setUp(async () =>
      source({ picture: async () => ({ ...scan, notes: ['It is smaller.'] }) }),
    );
    await desk.read(plan, 'floor');
    await desk.place(wish);
    expect(ui.getState().notice).toMatchObject({ title: 'plan.png was placed', text: 'It is smaller.' });
  });
});

describe('a file that is refused', () => {
  it('changes nothing and says why', async () => {
    const { board, ui, desk } = setUp(async () => {
      throw new Refused('It is empty.');
    });
    const { job } = board.getState();
    await desk.read(plan, 'floor');
    expect(ui.getState().notice).toMatchObject({
      title: 'plan.png was not placed',
      text: 'Nothing on the board has changed. It is empty.',
    });
    expect([board.getState().job, desk.getState().stage.stage]).toEqual([job, 'idle']);
  });

  it('by cancelling says nothing', async () => {
    const { board, ui, desk } = setUp(
      (_, __, signal) =>
        new Promise((_resolve, reject) => {
          signal?.addEventListener('abort', () => reject(signal.reason));
        }),
    );
    const reading = desk.read(plan, 'floor');
    await vi.waitFor(() => expect(desk.getState().stage.stage).toBe('reading'));
    await new Promise((done) => setTimeout(done));
    desk.cancel();
    await reading;
    expect([ui.getState().notice, desk.getState().stage.stage, board.getState().undoLabel]).toEqual([
      null,
      'idle',
      null,
    ]);
  });
});

it('drawing scales by the foot are what they say', () => {
  const feet = drawingScales('imperial').filter(({ name }) => name.includes(`1'-0"`));
  for (const { name, ratio } of feet) {
    const [over = 1, under = 1] = (name.split('"')[0] ?? '').split('/').map(Number);
    expect(ratio).toBeCloseTo(12 / (over / under), 9);
  }
  expect(feet.length).toBeGreaterThan(5);
});

import type { Job } from '../../../src/graph/document.ts';

/** A job that uses every part of the format once; invented. A fresh copy each time. */
export function sampleJob(): Job {
  return {
    format: 'gentlebend',
    version: 1,
    title: 'Sample kitchen',
    notes: 'Invented.',
    units: 'imperial',
    air: { elevation: 120, temperature: 20, humidity: 0.5, outdoorTemperature: -5 },
    kitchen: {
      cooktop: { fuel: 'gas', width: 0.914, heatInput: 17_600, placement: 'wall' },
      mountingHeight: 0.71,
      ceilingHeight: 2.44,
    },
    house: {
      volume: 400,
      ach50: 6,
      leakageExponent: 0.65,
      storeys: 1,
      otherExhaust: [{ name: 'clothes dryer', flow: 0.07 }],
      makeUpAir: null,
      combustion: ['natural-draught water heater'],
    },
    hoods: [
      {
        id: 'h1',
        name: 'Wall hood',
        width: 0.914,
        collar: { shape: 'round', diameter: 0.2032 },
        speeds: [
          { name: 'low', pressureBasis: 'static', density: 1.2, scaledFrom: { speed: 'high', ratio: 0.6 } },
          {
            name: 'high',
            pressureBasis: 'static',
            density: 1.2,
            curve: [
              [0, 260],
              [0.12, 200],
              [0.28, 0],
            ],
            sound: 62,
          },
        ],
      },
    ],
    blocks: [{ id: 'b1', name: 'joist 4', kind: 'joist', min: [0, 0, 2.2], max: [0.04, 4, 2.44] }],
    exits: [{ id: 'x1', name: 'north wall', kind: 'wall', min: [0, 3, 0], max: [4, 3.2, 2.44] }],
    underlays: [
      {
        id: 'u1',
        sheet: 'floor',
        image: 'data:image/png;base64,iVBORw0KGgo=',
        at: [0, 0],
        scale: 0.01,
        opacity: 0.5,
      },
    ],
    sheetNotes: [{ id: 't1', sheet: 'floor', at: [0.5, 0.5], text: 'check the joists' }],
    clearance: 0.05,
    prices: { 'bend-smooth-203': 24 },
    schemes: [
      {
        id: 's1',
        name: 'Out the north wall',
        defaults: {
          duct: { shape: 'round', diameter: 0.2032 },
          material: 'galvanized',
          bend: { kind: 'smooth', radiusRatio: 1.5 },
        },
        nodes: [
          { id: 'n1', at: [1.2, 0.4, 1.75], role: 'hood', hood: 'h1' },
          { id: 'n2', at: [1.2, 0.4, 2.3], role: 'turn', bend: { kind: 'five-piece', radiusRatio: 1 } },
          { id: 'n3', at: [1.2, 3, 2.3], role: 'cap', cap: 'wall-flap' },
        ],
        segments: [
          { id: 'd1', from: 'n1', to: 'n2', fittings: [{ kind: 'backdraught-damper', at: 0.3 }] },
          { id: 'd2', from: 'n2', to: 'n3', material: 'stainless', stretch: 1, insulation: 0.025 },
        ],
        dimensions: [
          {
            id: 'm1',
            sheet: 'floor',
            along: 'v',
            from: { node: 'n2' },
            to: { at: [1.2, 3.1, 2.3] },
            offset: 0.4,
          },
        ],
      },
    ],
  };
}

type Raw = Record<string | number, unknown>;

/** The sample as plain JSON data with the value at `path` replaced; `undefined` takes the key out. */
export function sampleWith(path: readonly (string | number)[], value: unknown): string {
  const raw = JSON.parse(JSON.stringify(sampleJob())) as Raw;
  let owner = raw;
  for (const key of path.slice(0, -1)) owner = owner[key] as Raw;
  owner[path.at(-1) ?? ''] = value;
  return JSON.stringify(raw);
}

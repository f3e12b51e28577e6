import { CFM, INCH } from '../units/index.ts';
import { words } from '../words/index.ts';
import type { FanSpeed, Hood, Job, UnitSystem } from './document.ts';

const says = words.route.templates;

/** Static pressure against flow of an invented 600 cfm blower at full speed: [m3/s, Pa]. */
const fullSpeed = [
  [0, 285],
  [0.07, 272],
  [0.14, 232],
  [0.2, 162],
  [0.25, 78],
  [0.283, 0],
] as const;

/** Invented speeds of the invented blower, as a ratio of its full speed, with an invented rated sound in dBA. */
const speeds = [
  { name: 'low', ratio: 0.4, sound: 44 },
  { name: 'medium', ratio: 0.6, sound: 52 },
  { name: 'high', ratio: 0.8, sound: 59 },
  { name: 'boost', ratio: 1, sound: 65 },
] as const;

/**
 * A hood to start from: invented, of no maker, and said to be so in its name. A 36 in wall hood with an
 * 8 in collar, four speeds with static-pressure curves that follow from one by the fan laws.
 *
 * @param collar diameter of the round collar, m
 */
export function genericHood(id: string, collar: number = 8 * INCH): Hood {
  return {
    id,
    name: says.hood,
    width: 36 * INCH,
    depth: 20 * INCH,
    collar: { shape: 'round', diameter: collar },
    speeds: speeds.map(
      ({ name, ratio, sound }): FanSpeed => ({
        name,
        pressureBasis: 'static',
        density: 1.2,
        curve: fullSpeed.map(([flow, pressure]) => [
          rounded(flow * ratio, 4),
          rounded(pressure * ratio ** 2, 1),
        ]),
        ratedFlow: Math.round((0.283 * ratio) / CFM) * CFM,
        sound,
      }),
    ),
  };
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

/**
 * A job with nothing drawn: one scheme, one invented hood to place. Duct starts at the collar's size in
 * galvanized steel, with the adjustable bend as the default: it is what a shop hands over when nobody
 * asks for better, so a first result promises nothing that has to be ordered (common practice).
 */
export function emptyJob(units: UnitSystem): Job {
  const diameter = units === 'imperial' ? 8 * INCH : 0.2;
  return {
    format: 'gentlebend',
    version: 1,
    title: says.job,
    notes: '',
    units,
    air: { elevation: 0, temperature: 20, humidity: 0.5, outdoorTemperature: 0 },
    kitchen: { ceilingHeight: units === 'imperial' ? 96 * INCH : 2.5 },
    hoods: [genericHood('hood-1', diameter)],
    blocks: [],
    exits: [],
    underlays: [],
    prices: {},
    schemes: [
      {
        id: 'scheme-1',
        name: says.scheme,
        defaults: { duct: { shape: 'round', diameter }, material: 'galvanized', bend: 'adjustable' },
        nodes: [],
        segments: [],
      },
    ],
  };
}

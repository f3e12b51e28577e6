import type { Hood, Job } from '../../graph/document.ts';
import { sectionWords } from '../../graph/sections.ts';
import { speedCurve } from '../../graph/speeds.ts';
import {
  formatArea,
  formatFlow,
  formatLength,
  formatPercent,
  formatPressure,
  formatTemperature,
  quantity,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Subject } from './subject.ts';
import { NONE, tableOf } from './tables.ts';
import type { Fact, SheetBlock } from './types.ts';

const say = words.jobSheet.appendix;

/** What the figures start from: air, kitchen and house as entered, and every fan curve as it is used. */
export function inputBlocks({ job, scheme, solution }: Subject): SheetBlock[] {
  const used = new Set([
    ...solution.speeds.map(({ hood }) => hood),
    ...scheme.nodes.flatMap(({ fan }) => (fan === undefined ? [] : [fan])),
  ]);
  return [
    { kind: 'heading', text: say.inputs },
    { kind: 'facts', facts: [...airFacts(job), ...kitchenFacts(job), ...houseFacts(job)] },
    ...job.hoods.filter(({ id }) => used.has(id)).map((hood) => curveTable(hood, job)),
  ];
}

function airFacts({ air, units }: Job): Fact[] {
  return [
    { label: say.elevation, text: quantity('elevation', air.elevation, units).text },
    { label: say.temperature, text: formatTemperature(air.temperature, units) },
    { label: say.humidity, text: formatPercent(air.humidity) },
    { label: say.outdoors, text: formatTemperature(air.outdoorTemperature, units) },
  ];
}

function kitchenFacts({ kitchen, units }: Job): Fact[] {
  const { cooktop, mountingHeight, ceilingHeight } = kitchen;
  return [
    { label: say.ceiling, text: formatLength(ceilingHeight, units) },
    {
      label: say.mounting,
      text: mountingHeight === undefined ? say.notGiven : formatLength(mountingHeight, units),
    },
    {
      label: say.cooktop,
      text: cooktop
        ? say.cooktopWords(
            say.fuels[cooktop.fuel],
            formatLength(cooktop.width, units),
            say.places[cooktop.placement],
          )
        : say.notGiven,
    },
    ...(cooktop?.heatInput === undefined
      ? []
      : [{ label: say.heat, text: quantity('heat', cooktop.heatInput, units).text }]),
  ];
}

function houseFacts({ house, units }: Job): Fact[] {
  if (!house) return [];
  const { makeUpAir, otherExhaust, combustion } = house;
  const list = (items: readonly string[]) => (items.length > 0 ? items.join(', ') : say.none);
  return [
    { label: say.houseVolume, text: quantity('volume', house.volume, units).text },
    { label: say.leakage, text: String(house.ach50) },
    { label: say.exponent, text: String(house.leakageExponent) },
    {
      label: say.otherExhaust,
      text: list(otherExhaust.map(({ name, flow }) => say.named(name, formatFlow(flow, units)))),
    },
    {
      label: say.makeUp,
      text: !makeUpAir
        ? say.none
        : makeUpAir.kind === 'opening'
          ? say.makeUpOpening(formatArea(makeUpAir.area, units))
          : say.makeUpFan(formatFlow(makeUpAir.flow, units)),
    },
    { label: say.combustion, text: list(combustion) },
  ];
}

function curveTable(hood: Hood, { units }: Job): SheetBlock {
  const rows = hood.speeds.map((speed, i) => ({ speed, made: speedCurve(hood, i) }));
  return tableOf(
    `fan/${hood.id}`,
    rows,
    [
      { id: 'speed', head: say.speed, weight: 9, cell: ({ speed }) => speed.name },
      {
        id: 'basis',
        head: say.basis,
        weight: 8,
        cell: ({ made }) => (made.known ? say.bases[made.curve.basis] : NONE),
      },
      {
        id: 'density',
        head: say.density,
        align: 'right',
        weight: 9,
        cell: ({ made }) =>
          made.known
            ? { text: quantity('density', made.curve.density, units).text, si: made.curve.density }
            : NONE,
      },
      {
        id: 'points',
        head: say.points,
        weight: 60,
        cell: ({ made }) =>
          made.known
            ? made.curve.points
                .map(([q, p]) => say.point(formatFlow(q, units), formatPressure(p, units)))
                .join('; ')
            : made.reason,
      },
      {
        id: 'sound',
        head: say.ratedSound,
        unit: 'dBA',
        align: 'right',
        weight: 7,
        cell: ({ speed }) =>
          speed.sound === undefined ? NONE : { text: String(speed.sound), si: speed.sound },
      },
    ],
    {
      caption: say.fan(say.named(`${hood.name},`, sectionWords(hood.collar, units))),
      rowId: ({ speed }) => speed.name,
      notes: [...new Set(rows.flatMap(({ made }) => (made.known ? made.assumptions : [])))],
    },
  );
}

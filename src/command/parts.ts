import { formatMoney, formatPrice, pricesAreInvented } from '../advice/cost/price.ts';
import { amountOf, stockWords, unitOfPart, weightAmount } from '../advice/parts/amount.ts';
import { type CuttingPlan, cuttingOf } from '../advice/parts/plan.ts';
import { type PartSource, partSources } from '../advice/parts/sources.ts';
import { type Totals, totalsOf } from '../advice/parts/totals.ts';
import { partWords } from '../advice/parts.ts';
import { cuttingTable, partsTable } from '../files/csv/parts.ts';
import { sourceWords } from '../graph/derive/text.ts';
import type { Job, Scheme } from '../graph/document.ts';
import { type Places, placesOf } from '../graph/places.ts';
import { sectionWords } from '../graph/sections.ts';
import { findMaterial } from '../hydraulics/catalogue.ts';
import { formatLength, formatPercent, formatRun, type System } from '../units/index.ts';
import { words } from '../words/index.ts';
import { csvOptions, jobCommand } from './command.ts';
import { table } from './table.ts';

const told = words.command.listed;

interface Listed {
  readonly scheme: Scheme;
  readonly totals: Totals;
  readonly places: Places;
  readonly sources: readonly PartSource[];
}

/** What has to be bought for each scheme, and how its duct is cut from stock lengths. */
export const parts = jobCommand(
  'parts',
  words.command.parts,
  csvOptions(['parts', 'cutting']),
  async ({ job, schemes, values, work }) => {
    const all: Listed[] = [];
    for (const scheme of schemes) {
      await work.step(words.command.doing.listing(scheme.name));
      const sources = partSources(job, scheme.id);
      const places = placesOf(cuttingOf(job, scheme.id).route, job.blocks);
      all.push({ scheme, totals: totalsOf(job, scheme.id), places, sources });
    }
    const ids = schemes.map(({ id }) => id);
    const tables = { parts: partsTable, cutting: cuttingTable };
    return {
      ok: true,
      text: `${[job.title, ...all.map((one) => listText(one, job.units)), `${pricesAreInvented}\n${words.partsList.caution}`].join('\n\n')}\n`,
      json: {
        title: job.title,
        units: { m: 'm', m2: 'm2', L: 'L', weight: 'kg', length: 'm' },
        schemes: all.map((one) => listJson(one, job)),
      },
      ...(values.csv ? { table: tables[values.csv](job, ids) } : {}),
    };
  },
);

function listText({ scheme, totals, places, sources }: Listed, units: System): string {
  const { cost, plans, weight, unweighed, run, bought, waste } = totals;
  const name = `${scheme.name} (${scheme.id})`;
  if (cost.lines.length === 0) return `${name}\n  ${told.nothing}`;
  const right = 'right' as const;
  const list = table(cost.lines, [
    { title: told.part, cell: ({ part }) => partWords(part, units) },
    { title: told.run, align: right, cell: ({ part }) => amountText(amountOf(part, units)) },
    { title: told.buy, align: right, cell: ({ part }) => stockWords(part, units) ?? '' },
    {
      title: told.weight,
      align: right,
      cell: ({ part }) => (part.weight === undefined ? '–' : amountText(weightAmount(part.weight, units))),
    },
    {
      title: told.price,
      align: right,
      cell: ({ part, price }) => (price ? formatPrice(price.each * unitOfPart(part, units).per) : '–'),
    },
    { title: told.amount, align: right, cell: ({ amount }) => (amount === null ? '–' : formatMoney(amount)) },
    { title: told.from, cell: ({ price }) => told.priceFrom[price?.from ?? 'none'] },
  ]);
  return [
    name,
    list.trimEnd(),
    '',
    `  ${told.total(formatMoney(cost.total), cost.unpriced)}`,
    `  ${told.weighs(amountText(weightAmount(weight, units)), unweighed)}`,
    `  ${told.duct(formatRun(run, units), formatRun(bought, units), formatPercent(waste))}`,
    ...plans.map((plan) => `\n${planText(plan, places, units)}`),
    '',
    ...sources.map(
      ({ what, source, sourceKind }) =>
        `  ${words.partsList.sources.line(what, source, sourceWords[sourceKind])}`,
    ),
  ].join('\n');
}

function planText(plan: CuttingPlan, places: Places, units: System): string {
  const { section, material, bars, stock, waste, proved } = plan;
  const what = `${sectionWords(section, units)} ${(findMaterial(material)?.name ?? material).toLowerCase()}`;
  return [
    `  ${told.plan(what, bars.length, formatLength(stock, units), formatPercent(waste), proved)}`,
    ...bars.map(({ cuts, offcut }, i) => {
      const pieces = cuts.map(({ length, segments }) =>
        told.piece(formatLength(length, units), segments.map(places.leg).join(told.and)),
      );
      return `    ${i + 1}. ${pieces.join('; ')}${offcut > 1e-3 ? `; ${told.left(formatLength(offcut, units))}` : ''}`;
    }),
  ].join('\n');
}

const amountText = ({ figure, unit }: { readonly figure: string; readonly unit: string }) =>
  `${figure} ${unit}`;

function listJson({ scheme: { id, name }, totals, sources }: Listed, job: Job) {
  const { cost, plans, ...sums } = totals;
  return {
    id,
    name,
    ...sums,
    total: cost.total,
    unpriced: cost.unpriced,
    parts: cost.lines.map(({ part, price, amount }) => ({
      ...part,
      name: partWords(part, job.units),
      weight: part.weight ?? null,
      price,
      amount,
    })),
    plans: plans.map(({ key, section, material, stock, make, bars, bought, used, waste, proved }) => ({
      key,
      section,
      material,
      make: make.id,
      stock,
      count: bars.length,
      bought,
      used,
      waste,
      proved,
      bars,
    })),
    sources,
  };
}

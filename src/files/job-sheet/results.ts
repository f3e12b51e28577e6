import { requiredAirflow } from '../../advice/required.ts';
import { sourceWords } from '../../graph/derive/text.ts';
import type { HouseResult, Solved, SpeedResult } from '../../graph/solution.ts';
import { formatFlow, formatNumber, formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Subject } from './subject.ts';
import { type ColumnOf, figures, NONE, shares, tableOf } from './tables.ts';
import type { SheetBlock } from './types.ts';

const { results: say, required: sayRequired, house: sayHouse } = words.jobSheet;

/** Every speed against what the hood is rated for and what the cooktop asks for, then the house. */
export function resultBlocks(subject: Subject): SheetBlock[] {
  const { solution } = subject;
  if (solution.speeds.length === 0) {
    return [
      { kind: 'text', text: subject.job.hoods.length > 0 ? say.noHood : say.none },
      ...requiredBlocks(subject),
    ];
  }
  return [speedTable(subject), ...requiredBlocks(subject), ...houseBlocks(subject)];
}

const solvedOf = ({ outcome }: SpeedResult): Solved | null => (outcome.solved ? outcome : null);

function speedTable({ job, solution, units, legNumbers }: Subject): SheetBlock {
  const { speeds } = solution;
  const need = requiredAirflow(job.kitchen).governing.flow;
  const several = new Set(speeds.map(({ hood }) => hood)).size > 1;
  const short = (row: SpeedResult) => (solvedOf(row)?.flow ?? Number.POSITIVE_INFINITY) < need;
  const beyond = (row: SpeedResult) => isBeyond(solvedOf(row)?.house ?? null);
  const hood: ColumnOf<SpeedResult> = { id: 'hood', head: say.hood, weight: 14, cell: (row) => row.hoodName };
  const columns: ColumnOf<SpeedResult>[] = [
    ...(several ? [hood] : []),
    { id: 'speed', head: say.speed, weight: 9, cell: (row) => row.name },
    figures('delivered', say.delivered, 'flow', units, (row) => solvedOf(row)?.flow),
    figures('rated', say.rated, 'flow', units, (row) => row.ratedFlow),
    shares('of rated', say.ofRated, (row) => {
      const solved = solvedOf(row);
      return solved && row.ratedFlow > 0 ? solved.flow / row.ratedFlow : undefined;
    }),
    ...(several
      ? []
      : [
          shares<SpeedResult>(
            'of required',
            say.ofRequired,
            (row) => {
              const solved = solvedOf(row);
              return solved && need > 0 ? solved.flow / need : undefined;
            },
            short,
          ),
        ]),
    figures('total', say.total, 'pressure', units, (row) => solvedOf(row)?.totalPressure),
    figures('static', say.static, 'pressure', units, (row) => solvedOf(row)?.staticPressure),
    figures('fastest', say.fastest, 'velocity', units, (row) => solvedOf(row)?.fastest?.velocity),
    {
      id: 'in leg',
      head: say.inLeg,
      align: 'right',
      weight: 5,
      cell: (row) => String(legNumbers.get(solvedOf(row)?.fastest?.segment ?? '') ?? NONE),
    },
    level('cook', say.cook, (solved) => solved.sound.cook.level),
    {
      id: 'sones',
      head: say.sones,
      align: 'right',
      weight: 7,
      cell: (row) => {
        const sones = solvedOf(row)?.sound.cook.sones;
        return sones === undefined ? NONE : { text: formatNumber(sones, sones < 9.95 ? 1 : 0), si: sones };
      },
    },
    level('outside', say.outside, (solved) => solved.sound.outside.level),
    ...(speeds.some((row) => solvedOf(row)?.house)
      ? [
          figures<SpeedResult>(
            'house',
            say.house,
            'pressure',
            units,
            (row) => solvedOf(row)?.house?.pressure,
            beyond,
          ),
        ]
      : []),
  ];
  const uncertainty = speeds.map((row) => solvedOf(row)?.sound.uncertainty).find((one) => one !== undefined);
  const notes = speedNotes(speeds);
  return tableOf('speeds', speeds, columns, {
    rowId: (row) => `${row.hood}/${row.speed}`,
    notes: uncertainty === undefined ? notes : [say.legs, say.sound(uncertainty), ...notes],
  });
}

/** What is said of speeds, each sentence once with the speeds that it is said of. */
function speedNotes(speeds: readonly SpeedResult[]): string[] {
  const about = new Map<string, { hood: string; text: string; names: string[] }>();
  for (const { hoodName: hood, name, outcome } of speeds)
    for (const text of outcome.solved ? outcome.stall.map(({ message }) => message) : [outcome.reason]) {
      const key = JSON.stringify([hood, text]);
      const one = about.get(key) ?? { hood, text, names: [] };
      one.names.push(name);
      about.set(key, one);
    }
  return [...about.values()].map(({ hood, text, names }) => say.noted(hood, names.join(', '), text));
}

function level(id: string, head: string, of: (solved: Solved) => number): ColumnOf<SpeedResult> {
  return {
    id,
    head,
    unit: 'dBA',
    align: 'right',
    weight: 7,
    cell: (row) => {
      const solved = solvedOf(row);
      return solved ? { text: formatNumber(of(solved)), si: of(solved) } : NONE;
    },
  };
}

function requiredBlocks({ job, solution, units }: Subject): SheetBlock[] {
  const { rules, governing } = requiredAirflow(job.kitchen);
  const best = solution.speeds
    .flatMap((row) => (row.outcome.solved ? [{ name: row.name, flow: row.outcome.flow }] : []))
    .reduce<{ name: string; flow: number } | null>(
      (most, row) => (most && most.flow >= row.flow ? most : row),
      null,
    );
  const hoods = new Set(solution.speeds.map(({ hood }) => hood)).size;
  const lead = [
    sayRequired.governs(formatFlow(governing.flow, units), governing.name),
    ...(hoods === 1 && best && best.flow < governing.flow
      ? [sayRequired.short(formatFlow(governing.flow - best.flow, units), best.name)]
      : []),
  ];
  return [
    { kind: 'heading', text: sayRequired.heading },
    { kind: 'text', text: lead.join(' ') },
    tableOf(
      'required',
      rules,
      [
        { id: 'rule', head: sayRequired.rule, weight: 22, cell: ({ name }) => name },
        figures('flow', sayRequired.flow, 'flow', units, ({ flow }) => flow),
        { id: 'because', head: sayRequired.because, weight: 38, cell: ({ because }) => because },
        {
          id: 'source',
          head: sayRequired.source,
          weight: 38,
          cell: ({ source, sourceKind }) => `${source} (${sourceWords[sourceKind]})`,
        },
      ],
      { rowId: ({ id }) => id },
    ),
  ];
}

function isBeyond(house: HouseResult | null): boolean {
  return house !== null && house.limit !== null && -house.pressure > house.limit.value;
}

interface HouseRow {
  readonly row: SpeedResult;
  readonly house: HouseResult;
}

function houseBlocks({ solution, units }: Subject): SheetBlock[] {
  const rows = solution.speeds.flatMap((row): HouseRow[] => {
    const house = solvedOf(row)?.house;
    return house ? [{ row, house }] : [];
  });
  const [first] = rows;
  if (!first) return [];
  const beyond = rows.filter(({ house }) => isBeyond(house));
  const { limit } = first.house;
  const spills = beyond.find(({ house }) => house.limit?.canSpill)?.house.limit;
  const flow = (id: string, head: string, of: (house: HouseResult) => number | undefined) =>
    figures<HouseRow>(id, head, 'flow', units, ({ house }) => of(house));
  return [
    { kind: 'heading', text: sayHouse.heading },
    ...(spills
      ? [
          {
            kind: 'cautions' as const,
            cautions: [sayHouse.beyond(beyond.map(({ row }) => row.name).join(', '), spills.appliance)],
          },
        ]
      : []),
    tableOf(
      'house',
      rows,
      [
        { id: 'speed', head: say.speed, weight: 9, cell: ({ row }) => row.name },
        figures(
          'pressure',
          sayHouse.pressure,
          'pressure',
          units,
          ({ house }) => house.pressure,
          ({ house }) => isBeyond(house),
        ),
        flow('leakage', sayHouse.leakage, ({ leakage }) => leakage),
        flow('make-up', sayHouse.makeUp, ({ makeUp }) => makeUp),
        flow('hoods', sayHouse.hoods, ({ hoods }) => hoods),
        flow('other', sayHouse.other, ({ otherExhaust }) => otherExhaust),
        flow('needed', sayHouse.needed, ({ makeUpNeeded }) => makeUpNeeded?.flow),
        figures('opening', sayHouse.opening, 'area', units, ({ house }) => house.makeUpNeeded?.opening),
      ],
      {
        rowId: ({ row }) => `${row.hood}/${row.speed}`,
        notes: [
          sayHouse.below,
          ...(limit
            ? [
                sayHouse.limit(
                  formatPressure(limit.value, units),
                  limit.appliance,
                  `${limit.source} (${sourceWords[limit.sourceKind]})`,
                ),
              ]
            : []),
        ],
      },
    ),
  ];
}

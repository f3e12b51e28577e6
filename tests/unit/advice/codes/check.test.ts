import { type Draft, produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { checkCodes } from '../../../../src/advice/codes/check.ts';
import { tableLength } from '../../../../src/advice/codes/run.ts';
import type { CodeState } from '../../../../src/advice/codes/types.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { setCapClearance, setRule } from '../../../../src/graph/edits/index.ts';
import { rules } from '../../../../src/graph/rules.ts';
import { solveScheme } from '../../../../src/graph/solve.ts';
import { drawn, edited } from '../../../support/drawn.ts';
import { exampleJob } from '../../../support/route-job.ts';

type Edit = (job: Draft<Job>) => void;

/** The small job with a hood 36 in wide, 28 in above a cooktop of 30 in. */
const start: Edit = (job) => {
  job.kitchen.cooktop = { fuel: 'electric', width: 0.762, placement: 'wall' };
  job.kitchen.mountingHeight = 0.7112;
  for (const hood of job.hoods) hood.width = 0.9144;
};

function resultOf(rule: string, edit: Edit = () => {}) {
  const { job } = edited((draft) => {
    start(draft);
    edit(draft);
  }, drawn());
  const found = checkCodes(job, solveScheme(job, 's1')).find((one) => one.rule === rule);
  if (!found) throw new Error(`no result for ${rule}`);
  return found;
}

const leg = (job: Draft<Job>, id: string) => {
  const found = job.schemes[0]?.segments.find((each) => each.id === id);
  if (!found) throw new Error(id);
  return found;
};
const node = (job: Draft<Job>, id: string) => {
  const found = job.schemes[0]?.nodes.find((each) => each.id === id);
  if (!found) throw new Error(id);
  return found;
};
const cap =
  (clearances: NonNullable<Job['schemes'][number]['nodes'][number]['clearances']>): Edit =>
  (job) => {
    node(job, 'n4').clearances = clearances;
  };
/** A fan of one speed whose curve is straight: the pressure without flow and the flow without pressure. */
const fan =
  (pressure: number, flow: number): Edit =>
  (job) => {
    const curve: [number, number][] = [
      [0, pressure],
      [flow, 0],
    ];
    for (const hood of job.hoods)
      hood.speeds = [{ name: 'high', pressureBasis: 'static', density: 1.2, curve }];
  };
/** A fan that gives this much at 0.25 in. w.g. */
const rated = (flow: number): Edit => fan(2 * 62.2722275, 2 * flow);
/** What the label of every speed says. */
const labelled =
  (flow: number): Edit =>
  (job) => {
    for (const hood of job.hoods) for (const speed of hood.speeds) speed.ratedFlow = flow;
  };
const material =
  (name: string): Edit =>
  (job) => {
    leg(job, 'd2').material = name;
  };
const withoutDamper: Edit = (job) => {
  delete leg(job, 'd2').fittings;
};
const capOf =
  (name: string): Edit =>
  (job) => {
    node(job, 'n4').cap = name;
  };
const mounted =
  (height: number): Edit =>
  (job) => {
    job.kitchen.mountingHeight = height;
  };
/** A wall to the east through which duct goes out, between two distances from the corner of the room. */
const exitBetween =
  (from: number, to: number): Edit =>
  (job) => {
    job.exits.push({ id: 'e', name: 'east wall', kind: 'wall', min: [from, 0, 0], max: [to, 4, 3] });
  };
/** The run's last leg ends so that the whole run is as long as this, m. */
const long =
  (metres: number): Edit =>
  (job) => {
    node(job, 'n4').at = [1 + metres - 2.6, 2, 2.35];
  };
const between =
  (metres: number): Edit =>
  (job) => {
    node(job, 'n3').at = [1, metres, 2.35];
    node(job, 'n4').at = [4, metres, 2.35];
    for (const each of ['n2', 'n3']) node(job, each).bend = { kind: 'smooth', radiusRatio: 1 };
  };
const every =
  (...edits: Edit[]): Edit =>
  (job) => {
    for (const edit of edits) edit(job);
  };
const small = 0.0943894886;

/** [rule, what it is about, the edit, the state]: each rule on both sides of its limit. */
const cases: readonly (readonly [string, string, Edit, CodeState])[] = [
  ['duct-material', 'galvanized steel', () => {}, 'meets'],
  ['duct-material', 'aluminium', material('aluminium'), 'fails'],
  ['duct-material', 'a material that is not known', material('moon dust'), 'cannot tell'],
  ['smooth-interior', 'rigid duct', () => {}, 'meets'],
  ['smooth-interior', 'flexible duct', material('flexible'), 'fails'],
  ['collar-size', 'the size of the collar', () => {}, 'meets'],
  [
    'collar-size',
    'an inch less',
    (job) => {
      leg(job, 'd3').duct = { shape: 'round', diameter: 0.1778 };
    },
    'fails',
  ],
  [
    'duct-length',
    '8 in at 250 cfm, 198 ft with two turns of 15 ft',
    every(rated(0.117986861), long(60.3504 - 9.144)),
    'meets',
  ],
  [
    'duct-length',
    '8 in at 250 cfm, a foot more',
    every(rated(0.117986861), long(60.3504 - 9.144 + 0.3048)),
    'fails',
  ],
  ['duct-length', 'a fan that the table does not reach', rated(0.2), 'cannot tell'],
  ['run-length', '30 ft', long(9.144), 'meets'],
  ['run-length', '31 ft', long(9.45), 'fails'],
  ['turns', 'two turns', () => {}, 'meets'],
  [
    'turns',
    'four turns',
    (job) => {
      const [scheme] = job.schemes;
      scheme?.nodes.push(
        { id: 'n5', at: [4, 4, 2.35], role: 'turn' },
        { id: 'n6', at: [4, 4, 4], role: 'cap', cap: 'roof-cap' },
      );
      node(job, 'n4').role = 'turn';
      scheme?.segments.push({ id: 'd4', from: 'n4', to: 'n5' }, { id: 'd5', from: 'n5', to: 'n6' });
    },
    'fails',
  ],
  ['straight-between-turns', 'two diameters', between(4 * 0.2032), 'meets'],
  ['straight-between-turns', 'a little less', between(3.9 * 0.2032), 'fails'],
  ['clear-property-line', '3 ft', cap({ propertyLine: 0.9144 }), 'meets'],
  ['clear-property-line', 'an inch less', cap({ propertyLine: 0.889 }), 'fails'],
  ['clear-property-line', 'no distance', () => {}, 'cannot tell'],
  ['clear-opening', '3 ft', cap({ opening: 0.9144 }), 'meets'],
  ['clear-opening', 'an inch less', cap({ opening: 0.889 }), 'fails'],
  ['clear-intake', '10 ft', cap({ intake: 3.048 }), 'meets'],
  ['clear-intake', 'an inch less', cap({ intake: 3.0226 }), 'fails'],
  ['clear-intake', 'nearer, but 3 ft above', cap({ intake: 1, aboveIntake: 0.9144 }), 'meets'],
  ['clear-intake', 'nearer, and not quite 3 ft above', cap({ intake: 1, aboveIntake: 0.9 }), 'fails'],
  ['backdraught-damper', 'a damper', capOf('open'), 'meets'],
  ['backdraught-damper', 'the flap of the cap', withoutDamper, 'meets'],
  ['backdraught-damper', 'neither', every(withoutDamper, capOf('open')), 'fails'],
  ['no-screen', 'none', () => {}, 'meets'],
  ['no-screen', 'a screened cap', capOf('open-screened'), 'fails'],
  [
    'no-screen',
    'a screen in the run',
    (job) => {
      leg(job, 'd3').fittings = [{ kind: 'screen', at: 1 }];
    },
    'fails',
  ],
  ['make-up-air', '400 cfm', every(rated(small), labelled(0.188778977)), 'meets'],
  ['make-up-air', '401 cfm', every(rated(small), labelled(0.18925)), 'fails'],
  ['own-duct', 'one hood', () => {}, 'meets'],
  [
    'own-duct',
    'two hoods that meet',
    (job) => {
      const [first] = job.hoods;
      if (first) job.hoods.push({ ...first, id: 'h2', name: 'Second hood' });
      job.schemes[0]?.nodes.push({ id: 'n9', at: [2, 0, 1.75], role: 'hood', hood: 'h2' });
      job.schemes[0]?.segments.push({ id: 'd9', from: 'n9', to: 'n3' });
    },
    'fails',
  ],
  ['ends-outdoors', 'a cap at an exit', exitBetween(3.9, 4), 'meets'],
  ['ends-outdoors', 'a cap away from every exit', exitBetween(9, 9.1), 'fails'],
  ['ends-outdoors', 'no exits drawn', () => {}, 'cannot tell'],
  ['velocity', 'some 1200 fpm', fan(250, 0.23), 'meets'],
  ['velocity', 'far below 1000 fpm', rated(0.05), 'fails'],
  ['hood-overhang', '3 in on each side', () => {}, 'meets'],
  [
    'hood-overhang',
    'half an inch less',
    (job) => {
      for (const hood of job.hoods) hood.width = 0.889;
    },
    'fails',
  ],
  ['mounting-least', '24 in', mounted(0.6096), 'meets'],
  ['mounting-least', '23 in', mounted(0.5842), 'fails'],
  ['mounting-most', '36 in', mounted(0.9144), 'meets'],
  ['mounting-most', '37 in', mounted(0.9398), 'fails'],
  [
    'mounting-most',
    'no height',
    (job) => {
      delete job.kitchen.mountingHeight;
    },
    'cannot tell',
  ],
];

describe('each rule has two sides', () => {
  test.each(cases)('%s: %s', (rule, _about, edit, state) => {
    const result = resultOf(rule, edit);
    expect(result.state, result.message).toBe(state);
    if (state === 'fails') expect(result.nodes.length + result.segments.length).toBeGreaterThan(0);
  });

  test('least-air: the air that the hood moves, a hair less and a hair more than asked', () => {
    const air = (share: number) => {
      const { job } = edited(start, drawn());
      const outcome = solveScheme(job, 's1').speeds[0]?.outcome;
      const flow = outcome?.solved ? outcome.flow : 0;
      return resultOf('least-air', (draft) => setRule(draft, 'least-air', { limit: share * flow })).state;
    };
    expect([air(0.999), air(1.001)]).toEqual(['meets', 'fails']);
  });

  test('house-pressure: a house within the limit of its water heater, and one beyond', () => {
    const house =
      (ach50: number): Edit =>
      (job) => {
        job.house = {
          volume: 400,
          ach50,
          leakageExponent: 0.65,
          storeys: 1,
          otherExhaust: [],
          makeUpAir: null,
          combustion: ['natural-draught-water-heater'],
        };
      };
    expect(resultOf('house-pressure', house(30)).state).toBe('meets');
    expect(resultOf('house-pressure', house(2)).state).toBe('fails');
  });

  test('no rule is without both', () => {
    const sides = new Map<string, Set<string>>();
    for (const [rule, , , state] of cases) sides.set(rule, (sides.get(rule) ?? new Set()).add(state));
    const tried = [...sides]
      .filter(([, states]) => states.has('meets') && states.has('fails'))
      .map(([rule]) => rule);
    expect([...tried, 'least-air', 'house-pressure'].sort()).toEqual(rules.map(({ id }) => id).sort());
  });
});

test('the table of duct lengths goes by the larger airflow and the smaller diameter', () => {
  expect(tableLength(0.1524, 0.0943894886, 'smooth')).toBe(16.1544);
  expect(tableLength(0.16, 0.09, 'smooth')).toBe(16.1544);
  expect(tableLength(0.15, 0.0943894886, 'smooth')).toBe(1.2192);
  expect(tableLength(0.2032, 0.15, 'smooth')).toBe('beyond the table');
});

test('a rule that is switched off is not held, and its finding goes with it', () => {
  const { job } = edited((draft) => {
    start(draft);
    setRule(draft, 'make-up-air', { off: true });
  }, drawn());
  const solution = solveScheme(job, 's1');
  expect(checkCodes(job, solution).some(({ rule }) => rule === 'make-up-air')).toBe(false);
  expect(solution.findings.some(({ rule }) => rule === 'make-up-air')).toBe(false);
});

test('a limit of the job takes the place of the rule’s, says so, and can be taken back', () => {
  const changed = resultOf('turns', (job) => setRule(job, 'turns', { limit: 1 }));
  expect(changed).toMatchObject({ state: 'fails', overridden: true, limit: '1 turns' });
  const back = resultOf('turns', (job) => {
    setRule(job, 'turns', { limit: 1 });
    setRule(job, 'turns', { limit: null });
  });
  expect(back).toMatchObject({ state: 'meets', overridden: false });
});

test('every result says its source and its edition', () => {
  const { job } = edited(start, drawn());
  for (const { source, edition, remedy } of checkCodes(job, solveScheme(job, 's1')))
    expect([source, edition, remedy].every((words) => words.length > 3)).toBe(true);
});

test.each(['wall', 'roof'])(
  'every finding and every result on the route of %s leads to a place',
  (schemeId) => {
    const job = exampleJob();
    const solution = solveScheme(job, schemeId);
    const { nodes, segments } = solution.route;
    const said = [
      ...solution.findings,
      ...checkCodes(job, solution).filter(({ state }) => state !== 'not applicable'),
    ];
    expect(said.length).toBeGreaterThan(15);
    for (const place of said) {
      const known = [
        ...place.nodes.map((id) => nodes.has(id)),
        ...place.segments.map((id) => segments.has(id)),
      ];
      expect([known.length > 0, known.every(Boolean)], place.message).toEqual([true, true]);
    }
  },
);

test('a distance of the cap that is taken back leaves no trace in the job', () => {
  const { job } = edited(() => {}, drawn());
  const entered = produce(job, (draft) => setCapClearance(draft, 's1', 'n4', 'opening', 0.5));
  const back = produce(entered, (draft) => setCapClearance(draft, 's1', 'n4', 'opening', null));
  expect(entered).not.toEqual(job);
  expect(back).toEqual(job);
});

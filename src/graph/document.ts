import * as z from 'zod';

/**
 * The job document: one kitchen, its hoods, and the schemes of running the duct. SI throughout
 * (m, m3/s, Pa, °C, degrees); `units` says only how to show it. The published JSON Schema and the
 * types both come from this schema.
 */

/** Without code made at run time, which the page's content policy forbids. */
z.config({ jitless: true });

const finite = z.number();
const positive = finite.gt(0);
const nonNegative = finite.min(0);
const id = z.string().min(1).max(64);
const text = z.string().max(10_000);

/** [x east, y north, z up], metres. */
export const vec3 = z.tuple([finite, finite, finite]);

export const section = z.discriminatedUnion('shape', [
  z.object({ shape: z.literal('round'), diameter: positive.max(2) }),
  z.object({ shape: z.literal('rectangular'), width: positive.max(2), height: positive.max(2) }),
  z.object({ shape: z.literal('oval'), width: positive.max(2), height: positive.max(2) }),
]);

export const bendChoice = z.object({
  /** Catalogue id of `shared/bends.json`. */
  kind: z.string(),
  /** Centre-line radius over diameter (over width in the plane of the turn, for rectangular duct). */
  radiusRatio: nonNegative.max(10).optional(),
});

export const transitionChoice = z.object({
  kind: z.enum(['abrupt', 'conical']),
  /** Full included angle of the cone, degrees. */
  angle: positive.max(180).optional(),
});

const userLoss = z.union([
  z.object({ c: nonNegative }),
  z.object({ loss: nonNegative, atFlow: positive }),
  z.object({ equivalentLength: nonNegative }),
]);

export const inlinePart = z.object({
  /** Catalogue id of `shared/inline.json`, or `user`. */
  kind: z.string(),
  /** Metres along the segment from its `from` node. */
  at: nonNegative,
  name: z.string().optional(),
  /** Blade angle of a balancing damper, degrees from open. */
  angle: nonNegative.max(90).optional(),
  freeArea: positive.max(1).optional(),
  user: userLoss.optional(),
});

export const node = z.object({
  id,
  at: vec3,
  role: z.enum(['hood', 'turn', 'cap', 'fan']),
  hood: id.optional(),
  bend: bendChoice.optional(),
  transition: transitionChoice.optional(),
  /** Catalogue id of `shared/caps.json`. */
  cap: z.string().optional(),
  /** Free opening of the cap when it differs from its catalogue row, m2. */
  capOpening: positive.optional(),
  /** Least distances from the cap to what stands around it, as measured on site, m. */
  clearances: z
    .object({
      propertyLine: nonNegative.optional(),
      opening: nonNegative.optional(),
      intake: nonNegative.optional(),
      /** How far the cap stands above that intake; below it where negative. */
      aboveIntake: finite.optional(),
    })
    .optional(),
  /** A booster fan's id in `hoods`, for role `fan`. */
  fan: id.optional(),
  /** Free area of a hole in the duct here, through which air is lost outdoors, m2. */
  leak: positive.max(1).optional(),
});

export const segment = z.object({
  id,
  from: id,
  to: id,
  duct: section.optional(),
  /** Catalogue id of `shared/materials.json`. */
  material: z.string().optional(),
  /** Installed length over fully stretched length, for flexible duct. */
  stretch: positive.max(1).optional(),
  /** Thickness, m. */
  insulation: nonNegative.max(0.3).optional(),
  fittings: z.array(inlinePart).optional(),
});

const sheetName = z.enum(['floor', 'section-x', 'section-y']);

const share = nonNegative.max(1);

/** An end of a dimension: it follows a node of the scheme or a face of a block or exit, or keeps to a place. */
export const dimensionEnd = z.union([
  z.object({ node: id }),
  /** A block or exit face, and a place on it as parts of its size from its lowest corner. */
  z.object({ box: id, part: z.tuple([share, share, share]) }),
  z.object({ at: vec3 }),
]);

export const dimension = z.object({
  id,
  sheet: sheetName,
  /** What is measured: the distance along the sheet's `u` or `v`, or straight from end to end. */
  along: z.enum(['u', 'v', 'straight']),
  from: dimensionEnd,
  to: dimensionEnd,
  /** From the ends to the dimension line, m on the sheet; which side by its sign. */
  offset: finite,
});

export const scheme = z.object({
  id,
  name: z.string().min(1).max(200),
  notes: text.optional(),
  defaults: z.object({
    duct: section,
    material: z.string(),
    bend: z.union([z.string(), bendChoice]).optional(),
  }),
  nodes: z.array(node),
  segments: z.array(segment),
  dimensions: z.array(dimension).optional(),
});

const curve = z.array(z.tuple([nonNegative, finite])).min(2);

export const fanSpeed = z.object({
  name: z.string().min(1),
  pressureBasis: z.enum(['static', 'total']).default('static'),
  density: positive.default(1.2),
  /** [m3/s, Pa]. Exactly one of `curve`, `certified`, `freeAir`, `single`, `scaledFrom` is given. */
  curve: curve.optional(),
  /** Two certified points [m3/s, Pa]. */
  certified: z.tuple([z.tuple([nonNegative, finite]), z.tuple([nonNegative, finite])]).optional(),
  freeAir: z.object({ flow: positive, shutOffPressure: positive }).optional(),
  /** One advertised flow; the pressure behind it is an assumption that is shown and can be edited. */
  single: z.object({ flow: positive, assumedShutOffPressure: positive.optional() }).optional(),
  /** Fan laws from another speed of the same hood: speed ratio. */
  scaledFrom: z.object({ speed: z.string(), ratio: positive.max(5) }).optional(),
  /** What the label says it moves, m3/s; the free delivery of the curve where absent. */
  ratedFlow: positive.optional(),
  /** Rated sound, dBA at the test distance. */
  sound: finite.optional(),
});

export const hood = z.object({
  id,
  name: z.string().min(1),
  width: positive.optional(),
  depth: positive.optional(),
  collar: section,
  speeds: z.array(fanSpeed).min(1),
});

export const block = z.object({
  id,
  name: z.string(),
  /** The last three are what a cap keeps its distance from: duct does not run into them. */
  kind: z.enum(['obstacle', 'chase', 'cabinet', 'joist', 'beam', 'wall', 'window', 'intake', 'lot line']),
  min: vec3,
  max: vec3,
});

export const exitFace = z.object({
  id,
  name: z.string(),
  kind: z.enum(['wall', 'roof']),
  min: vec3,
  max: vec3,
});

/** Words pinned to a place of a sheet. */
export const sheetNote = z.object({
  id,
  sheet: sheetName,
  /** Metres on the sheet. */
  at: z.tuple([finite, finite]),
  text,
});

/** A picture under a sheet, held in the job itself. */
export const underlay = z.object({
  id,
  name: z.string().max(200).optional(),
  sheet: sheetName,
  /** `data:image/…` */
  image: z.string(),
  /** Pixels of the picture across and down; what it says itself where absent. */
  size: z.tuple([positive, positive]).optional(),
  /** The lower left corner on the sheet, m. */
  at: z.tuple([finite, finite]),
  /** Metres a pixel of the picture. */
  scale: positive,
  opacity: nonNegative.max(1),
  /** Held against being moved by hand. */
  locked: z.boolean().optional(),
  /** Light and dark change places in the dark theme. */
  invert: z.boolean().optional(),
});

export const job = z.object({
  format: z.literal('gentlebend'),
  version: z.literal(1),
  title: z.string().max(300),
  notes: text.default(''),
  units: z.enum(['imperial', 'metric']),
  air: z
    .object({
      /** m above sea level. */
      elevation: finite.min(-500).max(6000).default(0),
      temperature: finite.min(-40).max(80).default(20),
      humidity: nonNegative.max(1).default(0.5),
      outdoorTemperature: finite.min(-60).max(60).default(0),
    })
    .prefault({}),
  kitchen: z
    .object({
      cooktop: z
        .object({
          fuel: z.enum(['gas', 'electric', 'induction', 'solid']),
          width: positive,
          /** W */
          heatInput: nonNegative.optional(),
          placement: z.enum(['wall', 'island', 'outdoor']),
        })
        .optional(),
      /** Cooktop to hood, m. */
      mountingHeight: positive.optional(),
      ceilingHeight: positive.default(2.44),
      /** Airflow that takes the place of what the rules ask for, m3/s, with the reason that is printed beside it. */
      requiredAirflow: z.object({ flow: positive, reason: z.string().min(1).max(500) }).optional(),
    })
    .prefault({}),
  house: z
    .object({
      volume: positive,
      floorArea: positive.optional(),
      ach50: positive,
      leakageExponent: positive.min(0.5).max(1).default(0.65),
      storeys: z.number().int().min(1).max(10).default(1),
      otherExhaust: z.array(z.object({ name: z.string(), flow: nonNegative })).default([]),
      makeUpAir: z
        .union([
          z.object({ kind: z.literal('opening'), area: positive, c: positive.optional() }),
          z.object({ kind: z.literal('fan'), flow: positive }),
        ])
        .nullable()
        .default(null),
      combustion: z.array(z.string()).default([]),
    })
    .optional(),
  hoods: z.array(hood),
  blocks: z.array(block).default([]),
  exits: z.array(exitFace).default([]),
  underlays: z.array(underlay).default([]),
  sheetNotes: z.array(sheetNote).optional(),
  /** Wanted between the outside of a duct and what it passes, m; a usual one where absent. */
  clearance: nonNegative.max(1).optional(),
  prices: z.record(z.string(), nonNegative).default({}),
  /** Straight lengths that duct is sold in, m, by part key as in `prices`; the usual ones where absent. */
  stock: z.record(z.string(), finite.min(0.3).max(30)).optional(),
  /** Which of the rules of `shared/rules.json` are held, and limits that take the place of theirs. */
  profile: z
    .object({
      name: z.string().max(200).optional(),
      rules: z.record(
        z.string(),
        z.object({
          off: z.boolean().optional(),
          /** One figure, or the least and the most of a band, in the rule's SI unit. */
          limit: z.union([nonNegative, z.tuple([nonNegative, nonNegative])]).optional(),
        }),
      ),
    })
    .optional(),
  schemes: z.array(scheme).min(1),
});

export type Vec3 = z.infer<typeof vec3>;
export type Job = z.infer<typeof job>;
export type Scheme = z.infer<typeof scheme>;
export type Node = z.infer<typeof node>;
export type Segment = z.infer<typeof segment>;
export type Hood = z.infer<typeof hood>;
export type FanSpeed = z.infer<typeof fanSpeed>;
export type Block = z.infer<typeof block>;
export type ExitFace = z.infer<typeof exitFace>;
export type Underlay = z.infer<typeof underlay>;
export type SheetNote = z.infer<typeof sheetNote>;
export type Dimension = z.infer<typeof dimension>;
export type DimensionEnd = z.infer<typeof dimensionEnd>;
export type BendChoice = z.infer<typeof bendChoice>;
export type TransitionChoice = z.infer<typeof transitionChoice>;
export type InlinePart = z.infer<typeof inlinePart>;
export type UnitSystem = Job['units'];

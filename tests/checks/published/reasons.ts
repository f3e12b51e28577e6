type Entry = readonly [first: string, last: string, why: string];

const DIFFUSERS =
  'Second opinions on diffusers, which scatter by a factor of two; the catalogue follows one formula, which costs more at these small angles.';

/** Figures that the model computes and does not meet, with the reason. */
export const disagreements: readonly Entry[] = [
  [
    'A-005',
    'A-010',
    'An explicit fit to Colebrook; ours is the root of Colebrook itself, which the fit misses by this much.',
  ],
  ['A-012', 'A-012', 'The textbook answers with the Swamee-Jain fit; ours is the root of Colebrook.'],
  [
    'A-064',
    'A-064',
    'One exponent for every duct; ours counts the Reynolds number of this one (8 in, 0.2 m³/s), and rougher flow follows density more closely.',
  ],
  [
    'B-309',
    'B-309',
    'Two readings of one cell, 0.90 and 0.98, each with an uncertain row; the catalogue follows 0.98 (B-105).',
  ],
  [
    'B-312',
    'B-314',
    'The industrial worksheet takes thirds and halves; the catalogue follows the angle factor of the handbook (B-082 to B-092), which costs more below 90°.',
  ],
  [
    'B-320',
    'B-320',
    "Industrial practice for a plain end; the catalogue follows the handbook's table, 1.0 for a thin free end (B-275).",
  ],
  ['B-322', 'B-322', 'Industrial practice prints 0.49; the catalogue follows 0.50 (B-269, B-335).'],
  [
    'B-324',
    'B-330',
    'Second opinions on contractions, which scatter among themselves; the catalogue follows one table (B-241 to B-268).',
  ],
  ['B-331', 'B-331', DIFFUSERS],
  ['B-333', 'B-333', DIFFUSERS],
  [
    'B-336',
    'B-336',
    "A pipe handbook's projecting pipe has a thick wall; the catalogue follows the duct table, 1.0 for a thin one (B-275).",
  ],
  [
    'B-340',
    'B-340',
    'Printed for a screen; ours is the formula for a perforated plate, which meets the plate of B-339.',
  ],
  [
    'B-341',
    'B-343',
    'A method that counts Reynolds number and outlet length for a water pipe; ours is the duct table, the same for any size and outlet, with the friction of the arc.',
  ],
  [
    'B-346',
    'B-347',
    'The worked example takes the row of area ratio 2 for ratios of 1.23 and 1.27; ours fades to nothing as the ducts become alike. At one velocity pressure the difference is under 0.04 of it.',
  ],
  [
    'B-352',
    'B-352',
    'The angle of the wye is not printed; ours is for 45° (0.38 at 30°), and recalled from another handbook.',
  ],
  [
    'E-027',
    'E-028',
    "Sutherland's law of the standard atmosphere; the property table of the textbook lies 0.6 % above it.",
  ],
  [
    'E-033',
    'E-033',
    'The density meets; the viscosity of the textbook lies 0.7 % above the standard atmosphere.',
  ],
  [
    'G-003',
    'G-003',
    'The standard is recalled with 7, the printed form has 10 (G-001); the louder is followed.',
  ],
  [
    'G-005',
    'G-005',
    'The same law in US units with its constant rounded; it differs from the metric form (G-004) by 0.3 dB.',
  ],
  [
    'H-011',
    'H-012',
    'The source takes 4005 fpm to the inch of water and a rounded area; the conventional inch is 0.2 % larger.',
  ],
  [
    'H-013',
    'H-016',
    'Friction read from the industrial chart; ours is Colebrook at the roughness behind it (0.0005 ft), 2 % lower. The sum H-016 is off by 1.1 %.',
  ],
  [
    'H-043',
    'H-043',
    'The example multiplies the rectangular bend by a Reynolds correction (1.29 here) of the older table; the catalogue follows CR3-1, which has none, and says so in its row.',
  ],
  [
    'H-054',
    'H-054',
    'Friction factor and velocity meet; the Reynolds number is 0.6 % higher by the viscosity (E-028).',
  ],
];

/** Figures that the model does not compute, with the reason. */
export const notComputed: readonly Entry[] = [
  ['A-027', 'A-027', 'Drawn tubing is no duct of a kitchen.'],
  [
    'A-035',
    'A-039',
    'Words for roughness of older editions; the catalogue stores the number and not the word.',
  ],
  ['A-067', 'A-068', 'How slack flexible duct is left is for the user to say.'],
  ['B-337', 'B-338', 'A screen by its wire Reynolds number; the catalogue knows screens by free area.'],
  ['B-353', 'B-364', 'System effect at a fan inlet: not modelled, a hood is rated with its own inlet.'],
  ['C-102', 'C-104', 'A rule in words, or a sheet thickness: no number of the model.'],
  ['C-107', 'C-108', 'A rule in words.'],
  ['C-110', 'C-113', 'For shafts of many storeys and institutions: outside this tool.'],
  ['C-115', 'C-117', 'A second recommendation, or a rule in words; the governing code minimum is C-114.'],
  [
    'C-119',
    'C-128',
    'An older edition for commercial kitchens, and clothes dryers, whose flow is not printed.',
  ],
  [
    'C-129',
    'C-135',
    'Recalled clauses to be checked in the edition in force: kept as words where they caution.',
  ],
  ['D-007', 'D-009', 'Rules by room volume and by cfm allowance: not offered as a rule for a hood.'],
  ['D-011', 'D-012', 'A hood overhang and a sound ceiling: advice in words.'],
  ['D-017', 'D-017', 'A rating point: it comes with the data of a fan.'],
  ['E-001', 'E-001', "The standard atmosphere's temperature: the job says its own."],
  ['E-005', 'E-005', "The standard atmosphere's temperature: the job says its own."],
  ['E-009', 'E-009', "The standard atmosphere's temperature: the job says its own."],
  ['E-013', 'E-013', "The standard atmosphere's temperature: the job says its own."],
  ['F-001', 'F-007', "One state's make-up air form: its infiltration credit is not modelled, leakage is."],
  ['F-020', 'F-020', 'An exponent that the job states; it is the default there.'],
  [
    'G-007',
    'G-023',
    'Other fans, and velocity limits of other rooms and ratings than the two in the catalogue.',
  ],
  ['G-026', 'G-029', 'Velocity limits of other ratings than the two in the catalogue.'],
  ['G-041', 'G-041', 'The meaning of the sone.'],
  ['H-009', 'H-009', 'Arithmetic on a velocity that is given.'],
  ['H-033', 'H-037', 'Sums of rows whose parts are not printed.'],
  ['H-041', 'H-041', 'A sum of rows whose parts are not printed.'],
  ['H-046', 'H-047', 'Arithmetic on rounded figures that are given.'],
  ['H-049', 'H-050', 'Sums of rows whose parts are not printed.'],
  ['H-058', 'H-058', 'Compressible flow: outside this tool.'],
  ['H-062', 'H-062', "One state's make-up air form."],
  ['I-002', 'I-002', 'The speed ratio is not printed.'],
  ['I-006', 'I-006', 'Fan power is not modelled.'],
  ['I-010', 'I-010', 'Fan power is not modelled.'],
];

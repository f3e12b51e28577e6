/** What the trade's words mean, in plain ones. Nothing here is computed with. */

export interface Entry {
  readonly term: string;
  /** Other words for the same thing, that a search finds it by. */
  readonly also?: string;
  readonly text: string;
}

const entry = (term: string, text: string, also?: string): Entry => ({
  term,
  text,
  ...(also === undefined ? {} : { also }),
});

/** Entries by the name that the program knows them by; the order is that of the words, not of the names. */
export const entries = {
  airDelivered: entry(
    'air delivered',
    'What really gets out at a speed, once the fan has to push it through this duct. It is less than the figure on the box.',
    'flow cfm volume',
  ),
  airtightness: entry(
    'air changes at 50 Pa',
    'How leaky a house is: how often an hour its air is exchanged while a test fan holds it 50 Pa below outdoors. Below 1.5 is very tight, above 10 is draughty. A blower-door test measures it.',
    'ACH50 n50 blower door leakage tightness',
  ),
  backDraughting: entry(
    'back-draughting',
    'Air that comes down a flue instead of gas going up it, because fans have drawn the house down. It brings carbon monoxide into the rooms. Only a test on site, with every exhaust fan running, shows whether it happens.',
    'back-drafting spillage carbon monoxide CO flue',
  ),
  backdraughtDamper: entry(
    'backdraught damper',
    'A flap in the duct that the air opens on its way out and that falls shut when the fan stops, so that outdoor air stays out. It costs pressure for as long as the fan runs.',
    'back-draft flap non-return',
  ),
  balancingDamper: entry(
    'balancing damper',
    'A blade set by hand to throttle one branch, so that another gets its share.',
    'volume control',
  ),
  bendRadius: entry(
    'centre-line radius, r/D',
    'How wide a bend sweeps: the radius of its middle line over the diameter of the duct. At 1.5 the air follows easily; at 0.5 the inside is nearly a corner and costs several times as much.',
    'elbow radius ratio gentle tight',
  ),
  cap: entry(
    'cap',
    'What ends the duct outdoors, on a wall or a roof. Its opening, flap and screen can cost as much as all the bends together.',
    'termination hood louvre jack',
  ),
  chase: entry(
    'chase',
    'A boxed-in space left for ducts or pipes to run through a floor or up a wall.',
    'shaft',
  ),
  collar: entry(
    'collar',
    'The short ring on top of the hood that the duct is fitted to. Its size is the size that the fan was made for; a smaller duct chokes it.',
    'spigot outlet connection',
  ),
  decibel: entry(
    'dB(A)',
    'Loudness as a meter reads it, weighted for the ear. Ten more sound about twice as loud. Talking across a kitchen is around 60.',
    'decibel dBA sound pressure level noise',
  ),
  equivalentLength: entry(
    'equivalent length',
    'How much straight duct would cost as much pressure as this fitting. It makes bends and duct comparable; the calculation itself uses the loss coefficient.',
    'feet of duct',
  ),
  exitFace: entry(
    'exit face',
    'A part of an outside wall or of the roof through which a duct may leave the house.',
    'outside',
  ),
  fanCurve: entry(
    'fan curve',
    'What a fan moves against each pressure: all of it where nothing stands in the way, nothing at shut-off. The real flow lies where this curve meets that of the duct.',
    'performance characteristic',
  ),
  flexibleDuct: entry(
    'flexible duct',
    'Duct that stretches like an accordion. Its folds cost two to many times the friction of smooth metal, most when it is left slack, and they hold grease. Many codes forbid it for kitchens.',
    'flex foil',
  ),
  freeDelivery: entry(
    'free delivery',
    'What a fan moves with nothing connected to it. An advertised figure is often this one, and no kitchen reaches it.',
    'free air rated zero static',
  ),
  friction: entry(
    'friction',
    'Pressure that the air loses along the walls of the duct. Double the flow costs nearly four times as much; one size larger duct takes most of it away.',
    'straight duct loss',
  ),
  frictionFactor: entry(
    'friction factor',
    'A number for how strongly the wall holds the air back. It comes from how rough the wall is and how fast the air is (the Colebrook equation).',
    'Darcy Moody roughness',
  ),
  gore: entry(
    'gore',
    'One of the wedge-shaped rings that a segmented bend is riveted or welded together from. More gores come nearer to a smooth curve: a five-piece bend costs less than a three-piece one.',
    'segment piece lobster-back mitre',
  ),
  housePressure: entry(
    'house pressure',
    'How far the house stands below outdoors while the fans run. A few pascals are enough to turn a flue around.',
    'depressurization negative pressure',
  ),
  leg: entry(
    'leg',
    'One straight stretch of duct from one turn or fitting to the next.',
    'segment run section',
  ),
  lossCoefficient: entry(
    'loss coefficient, C',
    'How many velocity pressures a fitting costs: a bend with C 0.5 takes half of one. It depends on the shape and not, or little, on the flow.',
    'K zeta resistance',
  ),
  lossRate: entry(
    'loss rate',
    'Friction for each metre or hundred feet of straight duct.',
    'per foot per metre',
  ),
  makeUpAir: entry(
    'make-up air',
    'Air that is let in on purpose to replace what the hood takes out. Without it the fan starves and the house draws air through its leaks, its flues included.',
    'replacement supply inlet',
  ),
  mitred: entry(
    'mitred bend',
    'A corner made by one straight cut, without any curve. It is the dearest of all turns unless it has turning vanes.',
    'square corner',
  ),
  naturalDraught: entry(
    'natural draught',
    'Said of an appliance whose flue gas rises only because it is warm. A little suction in the house stops it.',
    'atmospheric water heater boiler fireplace',
  ),
  pressureLoss: entry(
    'pressure loss',
    'The part of what the fan gives that a stretch of duct or a fitting uses up for good.',
    'drop resistance',
  ),
  ratedFlow: entry(
    'rated flow',
    "What the hood's label says it moves, mostly measured with a short duct or none.",
    'label advertised nominal',
  ),
  requiredAirflow: entry(
    'required airflow',
    'How much air a cooktop of this kind and width needs to be drawn off, by the rule that asks for most. Rules differ; the panel names each.',
    'needed capture',
  ),
  reynolds: entry(
    'Reynolds number',
    'Tells smooth flow from turbulent flow. Kitchen ducts are always well in the turbulent range.',
    'turbulence',
  ),
  riser: entry(
    'riser',
    'A leg that goes straight up. On the floor sheet it is drawn as a circle with its height.',
    'vertical',
  ),
  scheme: entry(
    'scheme',
    'One way to run the duct in this kitchen. A job may hold several, which share the room and the hood and can be compared.',
    'alternative option variant',
  ),
  sectionSheet: entry(
    'section',
    'A drawing of the kitchen cut upright and looked at from the side, where the floor sheet looks from above. The word is also used for the cross-section of a duct.',
    'elevation',
  ),
  setback: entry(
    'taken from each leg',
    'How much of the straight on either side the curve of a bend uses up. A wide bend does not fit where the legs are short.',
    'tangent length',
  ),
  shutOff: entry(
    'shut-off pressure',
    'The pressure that a fan makes with its outlet closed and no air moving: the most it has to give.',
    'maximum static',
  ),
  sone: entry(
    'sone',
    'Loudness on a scale that the ear agrees with: two sones sound twice as loud as one. A quiet refrigerator is about one.',
    'loudness',
  ),
  stall: entry(
    'stall',
    'A region of a fan curve where the same pressure goes with more than one flow. A fan that works there pulses and is loud.',
    'surge hump',
  ),
  staticPressure: entry(
    'static pressure',
    'Pressure of the air against the walls of the duct, as a gauge on its side reads it. It is what is left of the total pressure after the velocity pressure.',
    'SP gauge',
  ),
  systemCurve: entry(
    'system curve',
    'What pressure this duct asks for at each flow. It rises about with the square of the flow.',
    'resistance duct curve',
  ),
  takeOff: entry(
    'take-off',
    'Where a branch leaves or joins the main duct. A slanted one costs far less than a square tee.',
    'branch tee junction wye',
  ),
  totalPressure: entry(
    'total pressure',
    'Static and velocity pressure together: all that a fan gives to the air. Bends and duct use it up on the way.',
    'TP',
  ),
  transition: entry(
    'transition',
    'A piece between two sizes or shapes of duct. A slow cone costs little, a sudden step much.',
    'reducer enlargement cone',
  ),
  velocity: entry(
    'velocity',
    'How fast the air moves: the flow over the area of the duct. Too slow lets grease settle, too fast is loud and dear.',
    'fpm speed',
  ),
  velocityPressure: entry(
    'velocity pressure',
    'The pressure that the air has because it moves. It grows with the square of the velocity, and every fitting costs a part or a multiple of it.',
    'VP dynamic pressure',
  ),
} as const satisfies Readonly<Record<string, Entry>>;

export const view = {
  here: 'What the words here mean',
};

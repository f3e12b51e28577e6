import { counted } from './plural.ts';

/** A number of things: "1 bend", "3 bends". */
export const bends = (n: number) => counted(n, { one: 'bend', other: 'bends' });
export const blocks = (n: number) => counted(n, { one: 'block', other: 'blocks' });
export const dimensions = (n: number) => counted(n, { one: 'dimension', other: 'dimensions' });
export const ducts = (n: number) => counted(n, { one: 'duct', other: 'ducts' });
export const findings = (n: number) => counted(n, { one: 'finding', other: 'findings' });
export const couplings = (n: number) => counted(n, { one: 'coupling', other: 'couplings' });
export const hangers = (n: number) => counted(n, { one: 'hanger', other: 'hangers' });
export const reducers = (n: number) => counted(n, { one: 'reducer', other: 'reducers' });
export const hoods = (n: number) => counted(n, { one: 'hood', other: 'hoods' });
export const legs = (n: number) => counted(n, { one: 'leg', other: 'legs' });
export const nodes = (n: number) => counted(n, { one: 'node', other: 'nodes' });
export const notes = (n: number) => counted(n, { one: 'note', other: 'notes' });
export const outsideFaces = (n: number) => counted(n, { one: 'outside face', other: 'outside faces' });
export const partsInLine = (n: number) => counted(n, { one: 'part in line', other: 'parts in line' });
export const places = (n: number) => counted(n, { one: 'place', other: 'places' });
export const points = (n: number) => counted(n, { one: 'point', other: 'points' });
export const risers = (n: number) => counted(n, { one: 'riser', other: 'risers' });
export const routes = (n: number) => counted(n, { one: 'route', other: 'routes' });
export const sections = (n: number) => counted(n, { one: 'section', other: 'sections' });
export const steps = (n: number) => counted(n, { one: 'step', other: 'steps' });
export const things = (n: number) => counted(n, { one: 'thing', other: 'things' });
export const turns = (n: number) => counted(n, { one: 'turn', other: 'turns' });

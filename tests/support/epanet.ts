import { LinkProperty, NodeProperty, Option, Project, Workspace } from 'epanet-js';

/** A network in terms that both solvers know: round ducts with a K, and fans by a curve. */
export interface PlainNetwork {
  readonly density: number;
  readonly viscosity: number;
  readonly nodes: readonly { readonly id: string; readonly pressure?: number }[];
  readonly edges: readonly PlainEdge[];
}
export interface PlainEdge {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly duct?: {
    readonly length: number;
    readonly diameter: number;
    readonly roughness: number;
    readonly k: number;
  };
  readonly fan?: {
    readonly points: readonly (readonly [number, number])[];
    readonly kind: 'power' | 'linear';
  };
}

/** The engine's own gravity, m/s2: it turns Pa into its metres of head (see the reference's notes). */
const GRAVITY = 9.81456;

/** The network as the engine's input: L/s, m of head, mm; air by its kinematic viscosity. */
export function epanetInput(network: PlainNetwork): string {
  const head = (pascal: number): number => pascal / (network.density * GRAVITY);
  const lines: string[] = ['[JUNCTIONS]'];
  for (const n of network.nodes) if (n.pressure === undefined) lines.push(` ${n.id} 0 0`);
  lines.push('[RESERVOIRS]');
  for (const n of network.nodes) if (n.pressure !== undefined) lines.push(` ${n.id} ${head(n.pressure)}`);
  lines.push('[PIPES]');
  for (const e of network.edges) {
    const d = e.duct;
    if (d)
      lines.push(
        ` ${e.id} ${e.from} ${e.to} ${d.length} ${d.diameter * 1000} ${d.roughness * 1000} ${d.k} Open`,
      );
  }
  lines.push('[PUMPS]');
  for (const e of network.edges) if (e.fan) lines.push(` ${e.id} ${e.from} ${e.to} HEAD C${e.id}`);
  lines.push('[CURVES]');
  for (const e of network.edges)
    for (const [q, p] of e.fan?.points ?? []) lines.push(` C${e.id} ${q * 1000} ${head(p)}`);
  lines.push('[OPTIONS]', ' UNITS LPS', ' HEADLOSS D-W', ` VISCOSITY ${network.viscosity / network.density}`);
  lines.push(' SPECIFIC GRAVITY 1', ' TRIALS 400', ' ACCURACY 0.00001', ' UNBALANCED STOP');
  lines.push('[TIMES]', ' DURATION 0', '[REPORT]', ' MESSAGES NO', ' STATUS NO', '[END]', '');
  return lines.join('\n');
}

/** One engine, to be opened on network after network. */
export class Epanet {
  private readonly workspace = new Workspace();
  private project: Project | null = null;

  async load(): Promise<void> {
    await this.workspace.loadModule();
    this.project = new Project(this.workspace);
  }

  private get model(): Project {
    if (!this.project) throw new Error('the engine is not loaded');
    return this.project;
  }

  open(input: string, accuracy = 1e-8): void {
    this.workspace.writeFile('net.inp', input);
    this.model.open('net.inp', 'net.rpt', 'net.bin');
    this.model.setOption(Option.Accuracy, accuracy);
    this.model.openH();
  }

  /** Solves what is open, from the engine's own initial flows; time steps are not gone through. */
  solve(): void {
    this.model.initH(10);
    this.model.runH();
  }

  close(): void {
    this.model.closeH();
    this.model.close();
  }

  /** m3/s */
  flow(edge: string): number {
    return this.model.getLinkValue(this.model.getLinkIndex(edge), LinkProperty.Flow) / 1000;
  }

  /** Pa */
  pressure(node: string, density: number): number {
    return this.model.getNodeValue(this.model.getNodeIndex(node), NodeProperty.Head) * density * GRAVITY;
  }
}

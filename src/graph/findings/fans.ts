import { type Places, sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { speedCurve } from '../speeds.ts';
import { finding } from './drawing.ts';
import type { Ran, SolvedScheme } from './solved.ts';

/** What the fans' data leave open, and how the fans stand against each other. */
export function fanFindings(scheme: SolvedScheme, places: Places): Finding[] {
  return [
    ...scheme.ran.flatMap((ran) => [...assumedCurves(ran), ...stalls(ran), ...backwards(ran)]),
    ...fansLeftOut(scheme),
    ...junctionsLeftOut(scheme, places),
  ];
}

/** Speeds that rest on less than a curve, one finding for each assumption. */
function assumedCurves({ node, hood }: Ran): Finding[] {
  const names = new Map<string, string[]>();
  hood.speeds.forEach((speed, i) => {
    const curve = speedCurve(hood, i);
    for (const words of curve.known ? curve.assumptions : []) {
      names.set(words, [...(names.get(words) ?? []), speed.name]);
    }
  });
  return [...names].map(([words, speeds]) =>
    at(
      node,
      `${hood.id}/${speeds.join('+')}`,
      finding('fan-assumed', 'note', { nodes: [node] }, `${hood.name}, ${speeds.join(', ')}: ${words}`, {
        remedy: 'Enter the curve from the data sheet where there is one.',
        source: 'assumption',
      }),
    ),
  );
}

function stalls({ node, hood, speeds }: Ran): Finding[] {
  return speeds.flatMap(({ name, outcome }) =>
    (outcome.solved ? outcome.stall : []).map((note) =>
      at(
        node,
        `${hood.id}/${name}`,
        finding('stall', 'warning', { nodes: [node] }, `${hood.name}, ${name}: ${note.message}`, {
          remedy: 'Give the fan less resistance, so that it works beyond the rising part of its curve.',
          source: 'common practice: keep clear of the rising part of a fan curve',
        }),
      ),
    ),
  );
}

function backwards({ node, hood, speeds }: Ran): Finding[] {
  const names = speeds.filter(({ outcome }) => outcome.solved && outcome.flow < 0).map(({ name }) => name);
  if (names.length === 0) return [];
  const message = `At ${names.join(', ')} the air comes back out of ${hood.name}: another fan overpowers it.`;
  const remedy = 'Give it a duct of its own, or a backdraught damper and more pressure.';
  return [finding('backwards', 'danger', { nodes: [node] }, message, { remedy })];
}

/** Fans drawn in the run that did not take part in the solve. */
function fansLeftOut({ scene, solutions }: SolvedScheme): Finding[] {
  if (solutions.length === 0) return [];
  return scene.scheme.nodes
    .filter((node) => node.role === 'fan' && !solutions.every(({ boosters }) => boosters.has(node.id)))
    .map((node) => {
      const placed = scene.boosters.some((booster) => booster.node === node.id);
      const why = placed
        ? 'one of its speeds has no curve'
        : 'it has no fan data behind it, or not one duct in and one out';
      return finding(
        'fan-left-out',
        'warning',
        { nodes: [node.id] },
        `A fan in the run is left out of the numbers: ${why}.`,
        { remedy: 'Choose its fan and set it between two ducts, or judge the run by the hood alone.' },
      );
    });
}

/** Junctions whose own loss the numbers do not hold. */
function junctionsLeftOut({ scene, solutions }: SolvedScheme, places: Places): Finding[] {
  const why = new Map<string, string>();
  for (const { solved } of solutions) for (const [id, reason] of solved.leftOut) why.set(id, reason);
  for (const node of scene.route.nodes.values())
    if (node.kind === 'hood' && node.segments.length > 1)
      why.set(node.id, 'ducts that start at one hood are taken to share its collar without a loss');
  return [...why].map(([id, reason]) => {
    const segments = scene.route.nodes.get(id)?.segments ?? [];
    return finding(
      'junction-left-out',
      'warning',
      { nodes: [id], segments },
      `${sentence(places.node(id))} joins ${segments.length} ducts; the loss where they join is left out of the numbers, so the air delivered is overstated: ${reason}.`,
    );
  });
}

/** A finding with an id of its own where one place has several of a rule. */
function at(node: string, what: string, found: Finding): Finding {
  return { ...found, id: `${found.rule}:${node}/${what}` };
}

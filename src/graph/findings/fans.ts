import { words } from '../../words/index.ts';
import { type Places, sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { speedCurve } from '../speeds.ts';
import { finding } from './drawing.ts';
import type { Ran, SolvedScheme } from './solved.ts';

const says = words.findings.fans;

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
      finding('fan-assumed', 'note', { nodes: [node] }, says.assumed(hood.name, speeds.join(', '), words), {
        remedy: says.enterCurve,
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
        finding('stall', 'warning', { nodes: [node] }, says.noted(hood.name, name, note.message), {
          remedy: says.lessResistance,
          source: says.risingSource,
        }),
      ),
    ),
  );
}

function backwards({ node, hood, speeds }: Ran): Finding[] {
  const names = speeds.filter(({ outcome }) => outcome.solved && outcome.flow < 0).map(({ name }) => name);
  if (names.length === 0) return [];
  const message = says.overpowered(names.join(', '), hood.name);
  const remedy = says.ownDuct;
  return [finding('backwards', 'danger', { nodes: [node] }, message, { remedy })];
}

/** Fans drawn in the run that did not take part in the solve. */
function fansLeftOut({ scene, solutions }: SolvedScheme): Finding[] {
  if (solutions.length === 0) return [];
  return scene.scheme.nodes
    .filter((node) => node.role === 'fan' && !solutions.every(({ boosters }) => boosters.has(node.id)))
    .map((node) => {
      const placed = scene.boosters.some((booster) => booster.node === node.id);
      const why = placed ? says.noCurve : says.noData;
      return finding('fan-left-out', 'warning', { nodes: [node.id] }, says.leftOut(why), {
        remedy: says.chooseFan,
      });
    });
}

/** Junctions whose own loss the numbers do not hold. */
function junctionsLeftOut({ scene, solutions }: SolvedScheme, places: Places): Finding[] {
  const why = new Map<string, string>();
  for (const { solved } of solutions) for (const [id, reason] of solved.leftOut) why.set(id, reason);
  for (const node of scene.route.nodes.values())
    if (node.kind === 'hood' && node.segments.length > 1) why.set(node.id, says.oneCollar);
  return [...why].map(([id, reason]) => {
    const segments = scene.route.nodes.get(id)?.segments ?? [];
    return finding(
      'junction-left-out',
      'warning',
      { nodes: [id], segments },
      says.noJunctionLoss(sentence(places.node(id)), segments.length, reason),
    );
  });
}

/** A finding with an id of its own where one place has several of a rule. */
function at(node: string, what: string, found: Finding): Finding {
  return { ...found, id: `${found.rule}:${node}/${what}` };
}

import type { Hood } from '../document.ts';
import type { Finding } from '../route.ts';
import type { SpeedResult } from '../solution.ts';
import { speedCurve } from '../speeds.ts';
import { finding } from './drawing.ts';

interface Ran {
  readonly node: string;
  readonly hood: Hood;
  readonly speeds: readonly SpeedResult[];
}

/** What only the fan's data and the solve can tell of one hood. */
export function solvedFindings(ran: Ran): readonly Finding[] {
  return [...assumedCurves(ran), ...stalls(ran), ...backwards(ran)];
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
        finding('stall', 'warning', { nodes: [node] }, `${hood.name}, ${name}: ${note.message}`),
      ),
    ),
  );
}

function backwards({ node, hood, speeds }: Ran): Finding[] {
  const names = speeds.filter(({ outcome }) => outcome.solved && outcome.flow < 0).map(({ name }) => name);
  if (names.length === 0) return [];
  const message = `At ${names.join(', ')} the air comes back out of ${hood.name}: another hood on the same duct overpowers it.`;
  const remedy = 'Give it a duct of its own, or a backdraught damper and more pressure.';
  return [finding('backwards', 'danger', { nodes: [node] }, message, { remedy })];
}

/** A finding with an id of its own where one place has several of a rule. */
function at(node: string, what: string, found: Finding): Finding {
  return { ...found, id: `${found.rule}:${node}/${what}` };
}

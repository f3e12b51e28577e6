import { setDuct, setEveryBend, setMaterial } from '../../graph/edits/index.ts';
import { bends, materials } from '../../hydraulics/catalogue.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { RowChooser, SectionChooser } from './choosers.tsx';

const says = words.panels.scheme;

/** With nothing selected: what every duct and turn of the scheme is made of unless it says otherwise. */
export function SchemeDetails() {
  const { board } = useApp();
  const scheme = useBoard((state) => state.job.schemes.find((s) => s.id === state.schemeId));
  if (!scheme) return null;
  const { defaults, id } = scheme;
  const bend = typeof defaults.bend === 'object' ? defaults.bend.kind : defaults.bend;
  return (
    <>
      <div className="empty-state">
        <h2>{says.nothing}</h2>
        <p>{says.nothingHint}</p>
      </div>
      <section className="details" aria-label={says.label}>
        <h3>{says.whole(scheme.name)}</h3>
        <SectionChooser
          label={says.size}
          value={defaults.duct}
          onChoose={(duct) => board.dispatch(words.edits.scheme.size, (job) => setDuct(job, id, 'all', duct))}
        />
        <RowChooser
          label={says.material}
          rows={materials}
          value={defaults.material}
          onChoose={(material) =>
            board.dispatch(words.edits.scheme.material, (job) => setMaterial(job, id, 'all', material))
          }
        />
        <RowChooser
          label={says.bends}
          rows={bends}
          value={bend ?? ''}
          onChoose={(kind) =>
            board.dispatch(words.edits.scheme.bends, (job) => setEveryBend(job, id, { kind }))
          }
        />
        <p className="hint">{says.hint}</p>
      </section>
    </>
  );
}

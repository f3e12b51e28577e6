import { setDuct, setEveryBend, setMaterial } from '../../graph/edits/index.ts';
import { bends, materials } from '../../hydraulics/catalogue.ts';
import { useApp, useBoard } from '../context.ts';
import { RowChooser, SectionChooser } from './choosers.tsx';

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
        <h2>Nothing selected</h2>
        <p>Click a duct, a turn, the hood or the cap on a sheet to see its numbers and to change it.</p>
      </div>
      <section className="details" aria-label="Scheme">
        <h3>The whole of “{scheme.name}”</h3>
        <SectionChooser
          label="Size"
          value={defaults.duct}
          onChoose={(duct) =>
            board.dispatch('change size of all duct', (job) => setDuct(job, id, 'all', duct))
          }
        />
        <RowChooser
          label="Material"
          rows={materials}
          value={defaults.material}
          onChoose={(material) =>
            board.dispatch('change material of all duct', (job) => setMaterial(job, id, 'all', material))
          }
        />
        <RowChooser
          label="Bends"
          rows={bends}
          value={bend ?? ''}
          onChoose={(kind) => board.dispatch('change every bend', (job) => setEveryBend(job, id, { kind }))}
        />
        <p className="hint">A choice here goes to every duct and every turn of the scheme.</p>
      </section>
    </>
  );
}

import { formatLarge } from '../../units/index.ts';
import './route-search.css';
import { useState } from 'react';
import { Button, Heading, ProgressBar } from 'react-aria-components';
import { hoodsOf, type Missing, missingFor, usualQuestion } from '../../advice/route-search/question.ts';
import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { commandById } from '../commands.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { useFocusBack } from '../focus-back.ts';
import { Choice } from '../kitchen/fields.tsx';
import type { SearchFields } from './fields.ts';
import { SearchForm } from './SearchForm.tsx';
import { SearchResults } from './SearchResults.tsx';
import { type Run, useSearch } from './use-search.ts';

/** Looks for the routes of least loss from the hood to the exits, in the place of the side panel. */
export default function RouteSearchPanel() {
  const { ui } = useApp();
  const box = useFocusBack();
  return (
    <aside ref={box} tabIndex={-1} className="side-panel route-search" aria-label="Find a route">
      <header className="panel-head">
        <Heading level={2}>Find a route</Heading>
        <IconButton icon="close" label="Close" onPress={() => ui.setState({ routeSearch: false })} />
      </header>
      <div className="tab-panel">
        <Search />
      </div>
    </aside>
  );
}

function Search() {
  const { board } = useApp();
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const [hood, setHood] = useState<string | undefined>();
  const [chosen, setChosen] = useState<Partial<SearchFields>>({});
  const usual = usualQuestion(job, schemeId, hood);
  const { run, start, cancel } = useSearch();
  if (!usual) return <HowToBegin missing={missingFor(job, schemeId)} />;
  const exits = (chosen.exits ?? usual.exits).filter((id) => usual.exits.includes(id));
  const question = { ...usual, ...chosen, exits };
  const running = run.state === 'running';
  return (
    <>
      <HoodChoice job={job} schemeId={schemeId} value={usual.hood} onChoose={setHood} />
      <SearchForm
        fields={question}
        onChange={(change) => setChosen((before) => ({ ...before, ...change }))}
      />
      <div className="search-act">
        {running ? (
          <Button className="button" onPress={cancel}>
            Cancel
          </Button>
        ) : (
          <Button
            className="button primary"
            isDisabled={exits.length === 0}
            onPress={() => {
              board.set({ ghost: null });
              start(question);
            }}
          >
            Search
          </Button>
        )}
        <Progress run={run} />
      </div>
      {run.state === 'done' && run.search.routes.length > 0 && (
        <SearchResults key={run.number} question={run.question} search={run.search} />
      )}
      <Outcome run={run} job={job} noExit={exits.length === 0} />
    </>
  );
}

/** Which hood the route is for, where there are several. */
function HoodChoice(props: {
  readonly job: Job;
  readonly schemeId: string;
  readonly value: string;
  readonly onChoose: (node: string) => void;
}) {
  const hoods = hoodsOf(props.job, schemeOf(props.job, props.schemeId)).map(({ id, hood }) => ({
    id,
    name: props.job.hoods.find((each) => each.id === hood)?.name ?? id,
  }));
  if (hoods.length < 2) return null;
  return <Choice label="From the hood" choices={hoods} value={props.value} onChoose={props.onChoose} />;
}

function Progress({ run }: { run: Run }) {
  const examined = run.state === 'done' ? run.search.examined : 'examined' in run ? run.examined : null;
  if (examined === null) return null;
  const words = `${formatLarge(examined)} states examined`;
  if (run.state !== 'running')
    return <span className="search-count">{run.state === 'cancelled' ? `Called off: ${words}` : words}</span>;
  return (
    <ProgressBar className="search-progress" isIndeterminate aria-label="Searching" valueLabel={words}>
      <span className="search-track" aria-hidden="true">
        <span />
      </span>
      <span className="search-count">{words}</span>
    </ProgressBar>
  );
}

function Outcome({ run, job, noExit }: { run: Run; job: Job; noExit: boolean }) {
  if (run.state === 'failed') return <p className="field-error">{run.message}</p>;
  if (run.state === 'done' && (run.job.blocks !== job.blocks || run.job.exits !== job.exits))
    return (
      <p className="caution">The room has changed since this search. Search again before relying on it.</p>
    );
  if (run.state === 'done' && run.search.reason) return <p className="caution">{run.search.reason}</p>;
  if (run.state === 'done')
    return (
      <p className="hint">
        Each route was drawn, solved and measured against the blocks. What is not drawn is not known: look for
        wiring, pipes and framing before anything is cut, and keep the clearances that the hood’s instructions
        and the local code ask for. Nothing that carries the house is cut without whoever answers for it.
      </p>
    );
  return (
    <p className="hint">
      {noExit
        ? 'Choose at least one exit.'
        : 'Looks for the ways of least loss that keep clear of every block, turn square with the chosen bend, and never dip below the collar. Chases may be used.'}
    </p>
  );
}

/** What has to be drawn first, and how. */
function HowToBegin({ missing }: { missing: readonly Missing[] }) {
  const app = useApp();
  return (
    <div className="empty-state">
      <h3>A search goes from a hood to an exit</h3>
      <ol>
        {missing.includes('hood') && (
          <li>
            Pick the <strong>hood</strong> tool (H) and click on the floor sheet where its middle is.
          </li>
        )}
        {missing.includes('exit') && (
          <li>
            Pick the <strong>exit</strong> tool (X) and draw the outside wall or the roof that the duct may go
            through.
          </li>
        )}
        <li>Draw what is in the way with the block tool: joists, beams, cabinets.</li>
      </ol>
      <div className="search-act">
        {missing.includes('hood') && (
          <Button className="button" onPress={() => commandById('tool.hood').run(app)}>
            Place a hood
          </Button>
        )}
        {missing.includes('exit') && (
          <Button className="button" onPress={() => commandById('tool.exit').run(app)}>
            Draw an exit face
          </Button>
        )}
      </div>
    </div>
  );
}

import { formatLarge } from '../../units/index.ts';
import './route-search.css';
import { useState } from 'react';
import { Button, Heading, ProgressBar } from 'react-aria-components';
import { hoodsOf, type Missing, missingFor, usualQuestion } from '../../advice/route-search/question.ts';
import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { words } from '../../words/index.ts';
import { commandById } from '../commands.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { useFocusBack } from '../focus-back.ts';
import { Choice } from '../kitchen/fields.tsx';
import { Marked } from '../Marked.tsx';
import type { SearchFields } from './fields.ts';
import { SearchForm } from './SearchForm.tsx';
import { SearchResults } from './SearchResults.tsx';
import { type Run, useSearch } from './use-search.ts';

const says = words.routeSearch.panel;

/** Looks for the routes of least loss from the hood to the exits, in the place of the side panel. */
export default function RouteSearchPanel() {
  const { ui } = useApp();
  const box = useFocusBack();
  return (
    <aside ref={box} tabIndex={-1} className="side-panel route-search" aria-label={says.heading}>
      <header className="panel-head">
        <Heading level={2}>{says.heading}</Heading>
        <IconButton
          icon="close"
          label={words.shell.dialog.close}
          onPress={() => ui.setState({ routeSearch: false })}
        />
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
            {words.shell.dialog.cancel}
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
            {says.search}
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
  return <Choice label={says.hood} choices={hoods} value={props.value} onChoose={props.onChoose} />;
}

function Progress({ run }: { run: Run }) {
  const examined = run.state === 'done' ? run.search.examined : 'examined' in run ? run.examined : null;
  if (examined === null) return null;
  const words = says.examined(formatLarge(examined));
  if (run.state !== 'running')
    return <span className="search-count">{run.state === 'cancelled' ? says.calledOff(words) : words}</span>;
  return (
    <ProgressBar className="search-progress" isIndeterminate aria-label={says.searching} valueLabel={words}>
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
    return <p className="caution">{says.changed}</p>;
  if (run.state === 'done' && run.search.reason) return <p className="caution">{run.search.reason}</p>;
  if (run.state === 'done') return <p className="hint">{says.caution}</p>;
  return <p className="hint">{noExit ? says.noExit : says.hint}</p>;
}

/** What has to be drawn first, and how. */
function HowToBegin({ missing }: { missing: readonly Missing[] }) {
  const app = useApp();
  return (
    <div className="empty-state">
      <h3>{says.start.heading}</h3>
      <ol>
        {missing.includes('hood') && (
          <li>
            <Marked text={says.start.hood} />
          </li>
        )}
        {missing.includes('exit') && (
          <li>
            <Marked text={says.start.exit} />
          </li>
        )}
        <li>{says.start.blocks}</li>
      </ol>
      <div className="search-act">
        {missing.includes('hood') && (
          <Button className="button" onPress={() => commandById('tool.hood').run(app)}>
            {says.start.placeHood}
          </Button>
        )}
        {missing.includes('exit') && (
          <Button className="button" onPress={() => commandById('tool.exit').run(app)}>
            {says.start.drawExit}
          </Button>
        )}
      </div>
    </div>
  );
}

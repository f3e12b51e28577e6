import './lab.css';
import './lab-turn.css';
import './lab-pages.css';
import './lab-lessons.css';
import './lab-presenting.css';
import { useMemo, useState } from 'react';
import {
  Dialog,
  Heading,
  Modal,
  ModalOverlay,
  Switch,
  Tab,
  TabList,
  TabPanel,
  Tabs,
  ToggleButton,
  ToggleButtonGroup,
} from 'react-aria-components';
import { labScene } from '../../advice/lab/bench.ts';
import { trialOf } from '../../advice/lab/trial.ts';
import { setBend } from '../../graph/edits/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { nodeName } from '../places.ts';
import { capitalized } from '../wording.ts';
import { KindsPage } from './KindsPage.tsx';
import { LessonsPage } from './LessonsPage.tsx';
import { type Lab, LabContext, type Made } from './lab-context.ts';
import { PresentButton, usePresenting } from './presenting.tsx';
import { RunPage } from './RunPage.tsx';
import { TurnPage } from './TurnPage.tsx';
import { TwoPage } from './TwoPage.tsx';

const says = words.lab.frame;

type PageId = 'turn' | 'kinds' | 'two' | 'run' | 'lessons';

/** The trainer's view over the whole window: bends to try, to compare, to guess at, and lessons. */
export default function BendLab() {
  const { ui } = useApp();
  const asked = useUi((state) => state.lab);
  const presenting = usePresenting(asked !== null);
  const close = () => ui.setState({ lab: null });
  return (
    <ModalOverlay
      className="lab-overlay"
      isOpen={asked !== null}
      isKeyboardDismissDisabled={presenting.on}
      onOpenChange={(open) => !open && close()}
    >
      <Modal className="lab-modal">
        <Dialog className="lab" aria-label={says.heading} data-presenting={presenting.on || undefined}>
          {asked && (
            <Pages node={asked.node} first={asked.page ?? 'turn'} presenting={presenting} close={close} />
          )}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

interface PagesProps {
  readonly node: string | null;
  readonly first: PageId;
  readonly presenting: ReturnType<typeof usePresenting>;
  readonly close: () => void;
}

function Pages({ node, first, presenting, close }: PagesProps) {
  const { board, say } = useApp();
  const { job, schemeId, units } = useBoard((state) => state);
  const boardSpeed = useBoard((state) => state.speed);
  const route = useBoard((state) => state.solution.route);
  const turns = [...route.nodes.values()].filter(({ bend }) => bend);
  const [page, setPage] = useState<PageId>(first);
  const [picked, setPicked] = useState(node);
  const [guessing, setGuessing] = useState(false);
  const turn = turns.some(({ id }) => id === picked) ? picked : null;
  const scene = useMemo(
    () => (turn === null ? labScene(units) : { job, schemeId, node: turn }),
    [turn, job, schemeId, units],
  );
  const [chosenSpeed, setChosenSpeed] = useState<number | null>(null);
  const bench = turn === null;
  const top = trialOf(scene, 0).solution.speeds.length - 1;
  const speed = Math.min(top, chosenSpeed ?? (bench ? top : boardSpeed));
  const before = useMemo(() => trialOf(scene, speed), [scene, speed]);
  const [tried, setTried] = useState<{ of: string | null; choice: Made } | null>(null);
  const drawn = { kind: before.bend?.kind ?? 'smooth', radiusRatio: before.bend?.radiusRatio ?? 1 };
  const choice = tried?.of === turn ? tried.choice : drawn;
  const lab: Lab = {
    scene,
    drawn: !bench,
    units,
    speed,
    before,
    choice,
    choose: (next) => setTried({ of: turn, choice: next }),
    guessing,
  };
  const apply = () => {
    if (turn === null) return;
    const { kind, radiusRatio } = choice;
    board.dispatch(words.edits.route.asInLab, (draft) =>
      setBend(draft, schemeId, turn, { kind, ...(radiusRatio > 0 ? { radiusRatio } : {}) }),
    );
    setTried(null);
    say(says.made(capitalized(nodeName(route, turn))));
  };
  const speeds = before.solution.speeds;
  return (
    <LabContext value={lab}>
      <Tabs className="lab-tabs" selectedKey={page} onSelectionChange={(key) => setPage(key as PageId)}>
        <header className="lab-bar-top">
          <Heading slot="title">{says.heading}</Heading>
          <TabList className="lab-tab-list" aria-label={says.heading}>
            <Tab id="turn">{says.pages.turn}</Tab>
            <Tab id="kinds">{says.pages.kinds}</Tab>
            <Tab id="two">{says.pages.two}</Tab>
            <Tab id="run">{says.pages.run}</Tab>
            <Tab id="lessons">{says.pages.lessons}</Tab>
          </TabList>
          <div className="lab-bar-end">
            {page !== 'lessons' && (
              <Switch className="lab-switch" isSelected={guessing} onChange={setGuessing}>
                <span className="lab-switch-mark" aria-hidden="true" />
                {says.guessFirst}
              </Switch>
            )}
            <PresentButton presenting={presenting} />
            <IconButton icon="close" label={says.close} placement="left" onPress={close} />
          </div>
        </header>
        {page !== 'lessons' && page !== 'run' && (
          <div className="lab-subject">
            <div className="lab-pick">
              <span aria-hidden="true">{says.turn}</span>
              <select
                aria-label={says.turn}
                value={turn ?? ''}
                onChange={(event) => setPicked(event.target.value === '' ? null : event.target.value)}
              >
                <option value="">{says.bench}</option>
                {turns.map(({ id }) => (
                  <option key={id} value={id}>
                    {says.myDrawing(nodeName(route, id))}
                  </option>
                ))}
              </select>
            </div>
            <ToggleButtonGroup
              className="switch"
              aria-label={says.speed}
              selectionMode="single"
              disallowEmptySelection
              selectedKeys={[String(speed)]}
              onSelectionChange={(keys) => setChosenSpeed(Number([...keys][0]))}
            >
              {speeds.map((each, i) => (
                <ToggleButton key={`${each.hood} ${each.name}`} id={String(i)}>
                  {each.name}
                </ToggleButton>
              ))}
            </ToggleButtonGroup>
          </div>
        )}
        <TabPanel id="turn" className="lab-page">
          <TurnPage onApply={turn === null || same(choice, drawn) ? null : apply} />
        </TabPanel>
        <TabPanel id="kinds" className="lab-page">
          <KindsPage onTake={() => setPage('turn')} />
        </TabPanel>
        <TabPanel id="two" className="lab-page">
          <TwoPage />
        </TabPanel>
        <TabPanel id="run" className="lab-page">
          <RunPage />
        </TabPanel>
        <TabPanel id="lessons" className="lab-page">
          <LessonsPage units={units} />
        </TabPanel>
        <footer className="lab-foot">{says.foot}</footer>
      </Tabs>
    </LabContext>
  );
}

function same(a: Made, b: Made): boolean {
  return a.kind === b.kind && a.radiusRatio === b.radiusRatio;
}

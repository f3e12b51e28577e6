import { type ReactNode, useCallback, useRef, useState } from 'react';
import { Button, Dialog, Heading, Popover } from 'react-aria-components';
import { requiredDerivation } from '../../advice/required.ts';
import type { Derivation, DerivationInput, FigureRef } from '../../graph/derive/derivation.ts';
import { derive } from '../../graph/derive/derive.ts';
import {
  asSentence,
  catalogueRow,
  derivationText,
  notesOf,
  shownValue,
  sourceWords,
} from '../../graph/derive/text.ts';
import type { Provenance } from '../../hydraulics/types.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { ExplainContext } from './explainer.ts';
import { Formula } from './Formula.tsx';

const says = words.explain.panel;

/** Between a figure, or its panel, and the sheet that explains it, px. */
const GAP = 10;

/** Answers "where does that number come from?" for every figure inside it. */
export function Explainer({ children }: { children: ReactNode }) {
  const [path, setPath] = useState<readonly FigureRef[]>([]);
  const trigger = useRef<Element>(null);
  const [offset, setOffset] = useState(0);
  const explain = useCallback((ref: FigureRef, from: Element) => {
    trigger.current = from;
    setOffset(GAP + beyondPanel(from));
    setPath([ref]);
  }, []);
  const shown = path.at(-1);
  return (
    <ExplainContext value={explain}>
      {children}
      <Popover
        className="popover explain"
        triggerRef={trigger}
        isOpen={shown !== undefined}
        onOpenChange={(open) => {
          if (!open) setPath([]);
        }}
        placement={offset > GAP ? 'left top' : 'top start'}
        offset={offset}
      >
        {shown && (
          <Dialog className="explain-dialog">
            <Steps
              shown={shown}
              depth={path.length}
              onBack={() => setPath(path.slice(0, -1))}
              onDeeper={(ref) => setPath([...path, ref])}
              onClose={() => setPath([])}
            />
          </Dialog>
        )}
      </Popover>
    </ExplainContext>
  );
}

/** From a figure in the side panel to the panel's edge, so that the sheet stands beside the panel; 0 elsewhere. */
function beyondPanel(figure: Element): number {
  const panel = figure.closest('.side-panel');
  return panel ? figure.getBoundingClientRect().left - panel.getBoundingClientRect().left : 0;
}

interface StepsProps {
  readonly shown: FigureRef;
  readonly depth: number;
  readonly onBack: () => void;
  readonly onDeeper: (ref: FigureRef) => void;
  readonly onClose: () => void;
}

function Steps({ shown, depth, onBack, onDeeper, onClose }: StepsProps) {
  const units = useBoard((state) => state.units);
  const job = useBoard((state) => state.live);
  const solution = useBoard((state) => state.solution);
  const derivation =
    shown.figure === 'required airflow' ? requiredDerivation(job.kitchen) : derive(job, solution, shown);
  return (
    <>
      <div className="explain-bar">
        {depth > 1 ? (
          <Button className="text-button explain-back" onPress={onBack}>
            {says.back}
          </Button>
        ) : (
          <span className="explain-lead">{says.heading}</span>
        )}
        <span className="explain-tools">
          {derivation && <Copy text={derivationText(derivation, units)} />}
          <IconButton icon="close" label={words.shell.dialog.close} onPress={onClose} />
        </span>
      </div>
      {derivation ? (
        <Told derivation={derivation} onDeeper={onDeeper} />
      ) : (
        <>
          <Heading slot="title">{says.noDerivation}</Heading>
          <p>{says.nothing}</p>
        </>
      )}
    </>
  );
}

function Told({ derivation, onDeeper }: { derivation: Derivation; onDeeper: (ref: FigureRef) => void }) {
  const units = useBoard((state) => state.units);
  const symbols = [derivation.symbol, ...derivation.inputs.map((input) => input.symbol)];
  const { people, si } = shownValue(derivation, units);
  const notes = notesOf(derivation);
  return (
    <>
      <Heading slot="title">{derivation.title}</Heading>
      <p className="explain-value">
        <var>
          <Formula text={derivation.symbol} symbols={symbols} />
        </var>{' '}
        = <strong>{people}</strong>
        {si !== null && <small>{si}</small>}
      </p>
      <p className="explain-formula">
        <Formula text={derivation.formula} symbols={symbols} />
      </p>
      {derivation.inputs.length > 0 && (
        <table className="explain-inputs">
          <caption className="unseen">{says.inputs}</caption>
          <thead className="unseen">
            <tr>
              <th scope="col">{says.symbol}</th>
              <th scope="col">{says.what}</th>
              <th scope="col">{says.value}</th>
            </tr>
          </thead>
          <tbody>
            {derivation.inputs.map((input) => (
              <Input
                key={`${input.symbol} ${input.name} ${input.ref?.at ?? ''}`}
                input={input}
                onDeeper={onDeeper}
              />
            ))}
          </tbody>
        </table>
      )}
      {derivation.sources.length > 0 && (
        <section className="explain-sources" aria-label={says.sources}>
          {derivation.sources.map((source) => (
            <SourceTold key={source.row} of={source} />
          ))}
        </section>
      )}
      {notes.length > 0 && (
        <ul className="explain-notes">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function Input({ input, onDeeper }: { input: DerivationInput; onDeeper: (ref: FigureRef) => void }) {
  const units = useBoard((state) => state.units);
  const { people, si } = shownValue(input, units);
  const { ref } = input;
  return (
    <tr>
      <td>
        <Formula text={input.symbol} symbols={[input.symbol]} />
      </td>
      <th scope="row">
        {ref ? (
          <Button className="text-button explain-deeper" onPress={() => onDeeper(ref)}>
            {input.name}
          </Button>
        ) : (
          input.name
        )}
      </th>
      <td>
        {people}
        {si !== null && <small>{si}</small>}
      </td>
    </tr>
  );
}

function SourceTold({ of }: { of: Provenance }) {
  const row = catalogueRow(of);
  return (
    <div className="explain-source">
      {row && <p className="explain-row">{row.name}</p>}
      <p>{asSentence(of.source)}</p>
      {row?.reference && <p className="explain-aside">{says.reference(row.reference)}</p>}
      {row?.range && <p className="explain-aside">{says.range(row.range)}</p>}
      <p className="explain-aside">
        <span className="source-kind" data-kind={of.sourceKind}>
          {sourceWords[of.sourceKind]}
        </span>
        <code>{of.row}</code>
      </p>
    </div>
  );
}

function Copy({ text }: { text: string }) {
  const [tried, setTried] = useState<{ readonly text: string; readonly done: boolean } | null>(null);
  const now = tried?.text === text ? tried : null;
  const tell = (done: boolean) => () => setTried({ text, done });
  return (
    <Button
      className="text-button"
      onPress={() => void navigator.clipboard.writeText(text).then(tell(true), tell(false))}
    >
      {now?.done && <Icon name="tick" size={12} />}
      <span aria-live="polite">{now === null ? says.copy : now.done ? says.copied : says.refused}</span>
    </Button>
  );
}

import { useId, useState } from 'react';
import { Button, FieldError, Input, Label, TextArea, TextField } from 'react-aria-components';
import type { AirflowRule } from '../../advice/required.ts';
import { setRequiredAirflow } from '../../graph/edits/index.ts';
import { formatFlow, parseFlow } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { above } from './reading.ts';

const says = words.required.form;

interface OverrulingProps {
  readonly governing: AirflowRule;
  readonly overruled: AirflowRule | null;
}

/** An airflow in the place of what the rules ask for, with its reason: shown, changed and taken back. */
export function Overruling({ governing, overruled }: OverrulingProps) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const [open, setOpen] = useState(false);
  const takeBack = () =>
    board.dispatch(words.required.edits.takeBack, (job) => void setRequiredAirflow(job, null));
  if (open)
    return (
      <OwnAirflow
        flow={formatFlow(governing.flow, units)}
        reason={overruled ? governing.because : ''}
        onDone={() => setOpen(false)}
      />
    );
  return (
    <div className="overruling">
      {overruled && <p>{says.because(governing.because)}</p>}
      {overruled && governing.flow < overruled.flow && (
        <p className="caution">
          {says.below(formatFlow(overruled.flow, units), overruled.name, overruled.source)}
        </p>
      )}
      <div className="overruling-buttons">
        <Button className="button" onPress={() => setOpen(true)}>
          {says.open}
        </Button>
        {overruled && (
          <Button className="button" onPress={takeBack}>
            {says.takeBack}
          </Button>
        )}
      </div>
    </div>
  );
}

interface OwnAirflowProps {
  readonly flow: string;
  readonly reason: string;
  readonly onDone: () => void;
}

/** Air and reason are taken together, as one edit. */
function OwnAirflow({ flow, reason, onDone }: OwnAirflowProps) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const hint = useId();
  const [air, setAir] = useState(flow);
  const [why, setWhy] = useState(reason);
  const [wrong, setWrong] = useState<{ readonly air?: string; readonly why?: string }>({});
  const take = () => {
    const read = above(parseFlow(air, units), says.flowRefused);
    const missing = why.trim() === '';
    if (!read.ok || missing)
      return setWrong({
        ...(read.ok ? {} : { air: read.message }),
        ...(missing ? { why: says.reasonNeeded } : {}),
      });
    board.dispatch(
      words.required.edits.set,
      (job) => void setRequiredAirflow(job, { flow: read.value, reason: why }),
    );
    onDone();
  };
  return (
    <form
      className="overruling"
      aria-label={says.heading}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onDone();
      }}
    >
      <TextField
        className="field"
        autoFocus
        value={air}
        onChange={setAir}
        isInvalid={wrong.air !== undefined}
      >
        <Label>{says.flow}</Label>
        <Input spellCheck={false} autoComplete="off" />
        <FieldError className="field-error">{wrong.air}</FieldError>
      </TextField>
      <TextField
        className="field"
        value={why}
        maxLength={500}
        onChange={setWhy}
        isInvalid={wrong.why !== undefined}
      >
        <Label>{says.reason}</Label>
        <TextArea rows={2} aria-describedby={hint} />
        <span id={hint} className="field-note">
          {says.reasonHint}
        </span>
        <FieldError className="field-error">{wrong.why}</FieldError>
      </TextField>
      <div className="overruling-buttons">
        <Button className="button primary" type="submit">
          {says.set}
        </Button>
        <Button className="button" onPress={onDone}>
          {says.cancel}
        </Button>
      </div>
    </form>
  );
}

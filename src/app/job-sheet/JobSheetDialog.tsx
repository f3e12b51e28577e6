import { useEffect, useRef, useState } from 'react';
import {
  Button,
  Checkbox,
  CheckboxGroup,
  Dialog,
  Heading,
  Input,
  Label,
  Modal,
  ModalOverlay,
  Radio,
  RadioGroup,
  TextField,
} from 'react-aria-components';
import type { Paper } from '../../files/job-sheet/pdf/job-sheet-pdf.ts';
import type { SectionId } from '../../files/job-sheet/types.ts';
import { saveFile } from '../../files/save-file.ts';
import { formatPercent } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { allParts, fieldOf, fixedParts, kindOfSheet, type SheetWishes, sheetFile } from './make.ts';
import './job-sheet.css';

const says = words.paper.dialog;

/** Makes the job sheet as a PDF: on which paper, of which schemes, with which parts, for which day. */
export default function JobSheetDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.jobSheet);
  const close = () => ui.setState({ jobSheet: false });
  return (
    <ModalOverlay className="overlay" isOpen={open} isDismissable onOpenChange={(next) => !next && close()}>
      <Modal className="modal sheet-modal">
        <Dialog className="dialog">
          <Heading slot="title">{says.title}</Heading>
          <Choosing onClose={close} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Choosing({ onClose }: { readonly onClose: () => void }) {
  const { board, say, ui } = useApp();
  const job = useBoard((state) => state.job);
  const [wishes, setWishes] = useState<SheetWishes>(() => {
    const { units, schemeId } = board.getState();
    return {
      paper: units === 'imperial' ? 'letter' : 'a4',
      schemes: [schemeId],
      parts: allParts,
      date: fieldOf(new Date()),
    };
  });
  const [share, setShare] = useState<number | null>(null);
  const work = useRef<AbortController | null>(null);
  useEffect(() => () => work.current?.abort(), []);
  const set = (change: Partial<SheetWishes>) => setWishes({ ...wishes, ...change });

  const save = async () => {
    const control = new AbortController();
    work.current = control;
    setShare(0);
    try {
      const kind = kindOfSheet(job);
      const { signal } = control;
      const onShare = (done: number) => !signal.aborted && setShare(done);
      const saved = await saveFile(sheetFile(job, wishes, { signal, onShare }), kind);
      if (saved) {
        say(says.saved(kind.name));
        onClose();
      }
    } catch (error) {
      if (!control.signal.aborted)
        ui.setState({ notice: { title: says.failed, text: says.remedy, details: [detailOf(error)] } });
    } finally {
      control.abort();
      work.current = null;
      setShare(null);
    }
  };

  return (
    <>
      <div className="sheet-choices">
        <RadioGroup
          className="field choice"
          value={wishes.paper}
          onChange={(paper) => set({ paper: paper as Paper })}
          orientation="horizontal"
        >
          <Label>{says.paper}</Label>
          <div className="sheet-row">
            {(['a4', 'letter'] as const).map((paper) => (
              <Radio key={paper} value={paper} className="radio">
                {says.papers[paper]}
              </Radio>
            ))}
          </div>
        </RadioGroup>
        <TextField className="field" type="date" value={wishes.date} onChange={(date) => set({ date })}>
          <Label>{says.date}</Label>
          <Input />
        </TextField>
        <Ticks
          label={says.schemes}
          options={job.schemes.map(({ id, name }) => ({ id, name }))}
          chosen={wishes.schemes}
          onChange={(schemes) => set({ schemes })}
        />
        <Ticks
          label={says.parts}
          options={allParts.map((id) => ({ id, name: says.sections[id], fixed: fixedParts.includes(id) }))}
          chosen={wishes.parts}
          onChange={(parts) => set({ parts: parts as SectionId[] })}
        />
      </div>
      <p className="sheet-note">{says.note}</p>
      <div className="sheet-foot">
        <p className="sheet-progress" role="status">
          {share !== null && says.working(formatPercent(Math.round(share * 20) / 20))}
          {wishes.schemes.length === 0 && says.noScheme}
        </p>
        <div className="dialog-buttons">
          {share === null ? (
            <Button className="button" onPress={onClose}>
              {words.shell.dialog.close}
            </Button>
          ) : (
            <Button className="button" onPress={() => work.current?.abort()}>
              {words.shell.dialog.cancel}
            </Button>
          )}
          <Button
            className="button primary"
            autoFocus
            isDisabled={wishes.schemes.length === 0 || share !== null}
            onPress={() => void save()}
          >
            {says.save}
          </Button>
        </div>
      </div>
    </>
  );
}

interface TicksProps {
  readonly label: string;
  readonly options: readonly { readonly id: string; readonly name: string; readonly fixed?: boolean }[];
  readonly chosen: readonly string[];
  readonly onChange: (chosen: string[]) => void;
}

function Ticks({ label, options, chosen, onChange }: TicksProps) {
  return (
    <CheckboxGroup className="sheet-ticks" value={[...chosen]} onChange={onChange}>
      <Label>{label}</Label>
      {options.map(({ id, name, fixed }) => (
        <Checkbox key={id} value={id} className="tick" isDisabled={fixed ?? false}>
          <span className="tick-box" aria-hidden="true" />
          {name}
        </Checkbox>
      ))}
    </CheckboxGroup>
  );
}

function detailOf(error: unknown) {
  return { path: '', message: error instanceof Error ? error.message : String(error) };
}

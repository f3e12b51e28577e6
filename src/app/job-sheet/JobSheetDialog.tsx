import { useState } from 'react';
import { Checkbox, CheckboxGroup, Input, Label, Radio, RadioGroup, TextField } from 'react-aria-components';
import type { Paper } from '../../files/job-sheet/pdf/job-sheet-pdf.ts';
import type { SectionId } from '../../files/job-sheet/types.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { DialogBox } from '../DialogBox.tsx';
import { SavingFoot } from '../saving/SavingFoot.tsx';
import { LackingLetters } from './LackingLetters.tsx';
import { allParts, fieldOf, fixedParts, kindOfSheet, type SheetWishes, sheetFile } from './make.ts';
import './job-sheet.css';

const says = words.paper.dialog;

/** Makes the job sheet as a PDF: on which paper, of which schemes, with which parts, for which day. */
export default function JobSheetDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.jobSheet);
  const close = () => ui.setState({ jobSheet: false });
  return (
    <DialogBox width="medium" title={says.title} isOpen={open} onClose={close}>
      <Choosing onClose={close} />
    </DialogBox>
  );
}

function Choosing({ onClose }: { readonly onClose: () => void }) {
  const { board } = useApp();
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
  const noScheme = wishes.schemes.length === 0;
  const set = (change: Partial<SheetWishes>) => setWishes({ ...wishes, ...change });

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
      <LackingLetters />
      <SavingFoot
        save={says.save}
        isDisabled={noScheme}
        {...(noScheme && { hint: says.noScheme })}
        kind={() => kindOfSheet(job)}
        make={(progress) => sheetFile(job, wishes, progress)}
        says={{
          ...says,
          failed: (why) => ({
            title: says.failed,
            text: says.remedy,
            details: [{ path: '', message: why }],
          }),
        }}
        onClose={onClose}
      />
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

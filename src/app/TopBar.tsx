import { useState } from 'react';
import { Input, TextField, ToggleButton, ToggleButtonGroup, Toolbar } from 'react-aria-components';
import type { UnitSystem } from '../graph/document.ts';
import { words } from '../words/index.ts';
import { useApp, useBoard, useFiles } from './context.ts';
import { CommandButton } from './controls.tsx';
import { FileMenu } from './FileMenu.tsx';
import { fieldKeys } from './field-keys.ts';
import { SchemeTabs } from './SchemeTabs.tsx';
import { StepsMenu } from './StepsMenu.tsx';

const says = words.shell.topBar;

/** The job, its schemes, and what acts on the whole of it. */
export function TopBar() {
  return (
    <header className="top-bar">
      <h1 className="unseen">{says.program}</h1>
      <JobTitle />
      <FileMenu />
      <Toolbar className="bar-group" aria-label={says.undoAndRedo}>
        <CommandButton id="edit.undo" icon="undo" />
        <CommandButton id="edit.redo" icon="redo" />
        <StepsMenu />
      </Toolbar>
      <SchemeTabs />
      <div className="bar-group bar-end">
        <UnitsSwitch />
        <span className="wide-only">
          <ThemeButton />
        </span>
        <CommandButton id="view.settings" icon="settings" />
        <CommandButton id="view.find" icon="search" />
      </div>
    </header>
  );
}

function JobTitle() {
  const { board } = useApp();
  const title = useBoard((state) => state.job.title);
  const dirty = useFiles((state) => state.unsaved);
  const [text, setText] = useState<string | null>(null);
  const take = () => {
    const next = text?.trim();
    setText(null);
    if (next === undefined || next === title) return;
    board.dispatch(words.edits.job.rename, (job) => {
      job.title = next;
    });
  };
  return (
    <div className="job-title">
      <svg className="mark" width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
        <path d="M4 19v-6a9 9 0 0 1 9-9h6M11 19v-5a3 3 0 0 1 3-3h5" />
      </svg>
      <TextField
        aria-label={says.jobTitle}
        value={text ?? title}
        onChange={setText}
        onBlur={take}
        onKeyDown={fieldKeys({
          take: () => (document.activeElement as HTMLElement | null)?.blur(),
          drop: () => {
            setText(null);
            return text !== null;
          },
        })}
      >
        <Input placeholder={says.untitled} spellCheck={false} autoComplete="off" />
      </TextField>
      {dirty && <span className="unsaved-mark" title={says.changed} />}
    </div>
  );
}

function UnitsSwitch() {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  return (
    <ToggleButtonGroup
      className="switch"
      aria-label={says.units}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[units]}
      onSelectionChange={(keys) => {
        const next = [...keys][0] as UnitSystem | undefined;
        if (next && next !== units)
          board.dispatch(words.edits.job.changeUnits, (job) => {
            job.units = next;
          });
      }}
    >
      <ToggleButton id="imperial">{says.feetAndInches}</ToggleButton>
      <ToggleButton id="metric">{says.millimetres}</ToggleButton>
    </ToggleButtonGroup>
  );
}

function ThemeButton() {
  const theme = useBoard((state) => state.theme);
  return <CommandButton id="view.theme" icon={theme === 'dark' ? 'sun' : 'moon'} />;
}

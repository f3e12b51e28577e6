import { type ReactNode, useId, useState } from 'react';
import {
  Button,
  FieldError,
  Input,
  Label,
  type PressEvent,
  TextField,
  Tooltip,
  TooltipTrigger,
} from 'react-aria-components';
import type { FigureRef } from '../graph/derive/derivation.ts';
import type { Parsed } from '../units/index.ts';
import { commandById } from './commands.ts';
import { useApp, useBoard } from './context.ts';
import { Explained } from './explain/Explained.tsx';
import { fieldKeys } from './field-keys.ts';
import { Icon, type IconName } from './icons.tsx';
import { printed } from './shortcut.ts';
import { Term, type TermId } from './term/Term.tsx';

export const onMac = typeof navigator !== 'undefined' && /Mac|iPhone|iPad/.test(navigator.platform);

interface IconButtonProps {
  readonly icon: IconName;
  readonly label: string;
  readonly shortcut?: string | undefined;
  readonly isDisabled?: boolean;
  readonly pressed?: boolean;
  readonly placement?: 'right' | 'bottom' | 'top' | 'left';
  readonly onPress?: (event: PressEvent) => void;
}

/** A picture with a name: the name is its label, its tooltip and what a screen reader says. */
export function IconButton(props: IconButtonProps) {
  return (
    <TooltipTrigger delay={500} closeDelay={0}>
      <Button
        className="icon-button"
        aria-label={props.label}
        isDisabled={props.isDisabled ?? false}
        {...(props.pressed === undefined ? {} : { 'aria-pressed': props.pressed })}
        {...(props.onPress ? { onPress: props.onPress } : {})}
      >
        <Icon name={props.icon} />
      </Button>
      <Tooltip className="tooltip" placement={props.placement ?? 'bottom'} offset={6}>
        {props.label}
        {props.shortcut && <kbd>{printed(props.shortcut, onMac)}</kbd>}
      </Tooltip>
    </TooltipTrigger>
  );
}

/** A command of the registry as a picture. */
export function CommandButton(props: { id: string; icon: IconName; placement?: 'right' | 'bottom' }) {
  const app = useApp();
  const command = commandById(props.id);
  const title = useBoard(command.title);
  const enabled = useBoard(command.enabled);
  const checked = useBoard((state) => command.checked?.(state));
  const shortcut = command.shortcuts[0];
  return (
    <IconButton
      icon={props.icon}
      label={title}
      shortcut={shortcut}
      isDisabled={!enabled}
      {...(checked === undefined ? {} : { pressed: checked })}
      {...(props.placement ? { placement: props.placement } : {})}
      onPress={() => command.run(app)}
    />
  );
}

interface QuantityFieldProps {
  readonly label: string;
  readonly value: string;
  readonly parse: (text: string) => Parsed;
  readonly onCommit: (value: number) => void;
  /** What leaving the field empty does; where absent an empty field is not clear. */
  readonly onClear?: () => void;
  readonly description?: string;
}

/** A quantity typed with or without its unit; a wrong one says what is wrong and is not taken. */
export function QuantityField({ label, value, parse, onCommit, onClear, description }: QuantityFieldProps) {
  const [text, setText] = useState<string | null>(null);
  const [error, setError] = useState<string | null>(null);
  const about = useId();

  const drop = () => {
    setText(null);
    setError(null);
  };
  const take = () => {
    if (text === null || text.trim() === value) return drop();
    if (onClear && text.trim() === '') {
      drop();
      return onClear();
    }
    const parsed = parse(text);
    if (!parsed.ok) return setError(parsed.message);
    drop();
    onCommit(parsed.value);
  };

  return (
    <TextField
      className="field"
      value={text ?? value}
      isInvalid={error !== null}
      onChange={(next) => {
        setText(next);
        setError(null);
      }}
      onBlur={take}
      onKeyDown={fieldKeys({
        take,
        drop: () => {
          drop();
          return text !== null;
        },
      })}
    >
      <Label>{label}</Label>
      <Input aria-describedby={description ? about : undefined} spellCheck={false} autoComplete="off" />
      {description && !error && (
        <span id={about} className="field-note">
          {description}
        </span>
      )}
      <FieldError className="field-error">{error}</FieldError>
    </TextField>
  );
}

interface FigureProps {
  readonly name: string;
  readonly children: ReactNode;
  readonly note?: string;
  /** The word of the trade that its name is. */
  readonly term?: TermId;
  /** The derivation that the figure opens. */
  readonly refTo?: FigureRef;
}

/** One line of a table of figures: what, and how much. */
export function Figure({ name, children, note, term, refTo }: FigureProps) {
  return (
    <div className="figure">
      <dt>{term ? <Term of={term}>{name}</Term> : name}</dt>
      <dd>
        {refTo ? <Explained refTo={refTo}>{children}</Explained> : children}
        {note && <small>{note}</small>}
      </dd>
    </div>
  );
}

import type { TextFieldProps } from 'react-aria-components';

interface OwnKeys {
  /** Takes what was typed. */
  readonly take: () => void;
  /** Drops what was typed; false where there was nothing to drop. */
  readonly drop: () => boolean;
}

/** The keys of a field: what is not its own goes on to the dialog around it and to the shortcuts of the desk. */
export function fieldKeys({ take, drop }: OwnKeys): NonNullable<TextFieldProps['onKeyDown']> {
  return (event) => {
    if (event.key === 'Enter') return take();
    if (event.key !== 'Escape' || !drop()) event.continuePropagation();
  };
}

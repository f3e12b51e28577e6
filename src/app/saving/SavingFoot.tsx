import { useEffect, useRef, useState } from 'react';
import { type SavedKind, saveFile } from '../../files/save-file.ts';
import { formatPercent } from '../../units/index.ts';
import { useApp } from '../context.ts';
import { DialogFoot } from '../DialogBox.tsx';
import type { Notice } from '../ui.ts';
import type { Progress } from './progress.ts';

/** Steps in which progress is told: a screen reader says each. */
const STEPS = 20;

interface SavingFootProps {
  readonly save: string;
  readonly isDisabled: boolean;
  /** What is to be said while nothing is being made. */
  readonly hint?: string;
  readonly kind: () => SavedKind;
  /** Rejects once it is called off. */
  readonly make: (progress: Progress) => Promise<Blob>;
  readonly says: {
    readonly working: (share: string) => string;
    readonly saved: (name: string) => string;
    /** Of what went wrong in the making or the saving. */
    readonly failed: (why: string) => Notice;
  };
  readonly onClose: () => void;
}

/** The foot of a dialog that makes a file and saves it: how far it is, the way out of it, and the button that begins. */
export function SavingFoot({ save, isDisabled, hint, kind, make, says, onClose }: SavingFootProps) {
  const { say, ui } = useApp();
  const [share, setShare] = useState<number | null>(null);
  const work = useRef<AbortController | null>(null);
  useEffect(() => () => work.current?.abort(), []);

  const begin = async () => {
    const control = new AbortController();
    const { signal } = control;
    work.current = control;
    setShare(0);
    try {
      const of = kind();
      const onShare = (done: number) => !signal.aborted && setShare(done);
      if (await saveFile(make({ signal, onShare }), of)) {
        say(says.saved(of.name));
        onClose();
      }
    } catch (error) {
      if (!signal.aborted)
        ui.setState({ notice: says.failed(error instanceof Error ? error.message : String(error)) });
    } finally {
      control.abort();
      work.current = null;
      setShare(null);
    }
  };

  const working = share !== null;
  return (
    <DialogFoot
      leave={working ? 'cancel' : 'close'}
      onLeave={working ? () => work.current?.abort() : onClose}
      main={{ label: save, isDisabled: isDisabled || working, onPress: () => void begin() }}
    >
      <p role="status">{working ? says.working(formatPercent(Math.round(share * STEPS) / STEPS)) : hint}</p>
    </DialogFoot>
  );
}

import { useEffect, useState } from 'react';
import type { SheetId } from '../../graph/sheet.ts';
import { words } from '../../words/index.ts';
import { useApp } from '../context.ts';
import { sheetNames } from './sheet-names.ts';

/** A file dropped on a sheet is laid under it; dropped beside them it must not take the page's place. */
export function DropFiles() {
  const { underlays } = useApp();
  const [over, setOver] = useState<SheetId | null>(null);
  useEffect(() => {
    const carriesFile = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true;
    const drag = (event: DragEvent) => {
      if (!carriesFile(event)) return;
      event.preventDefault();
      const sheet = sheetUnder(event);
      if (event.dataTransfer) event.dataTransfer.dropEffect = sheet ? 'copy' : 'none';
      setOver(sheet);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(null);
    };
    const drop = (event: DragEvent) => {
      if (!carriesFile(event)) return;
      event.preventDefault();
      setOver(null);
      const sheet = sheetUnder(event);
      const file = event.dataTransfer?.files[0];
      if (sheet && file) void underlays.read(file, sheet);
    };
    window.addEventListener('dragover', drag);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', drag);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, [underlays]);
  return over && <div className="drop-hint">{words.underlay.list.drop(sheetNames[over])}</div>;
}

function sheetUnder(event: DragEvent): SheetId | null {
  const element = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-sheet]') : null;
  return (element?.dataset.sheet as SheetId | undefined) ?? null;
}

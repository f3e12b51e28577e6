import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { FieldAsk } from '../canvas/tools/ask.ts';
import { toScreen } from '../drawing/viewport.ts';
import type { SheetId } from '../graph/sheet.ts';
import { words } from '../words/index.ts';
import { useApp } from './context.ts';

/** Room kept between a field and the edge of the window, px. */
const MARGIN = 8;

/**
 * A field over the number or the words that it changes. Enter takes what is typed, Escape leaves it as it
 * was; leaving the field takes what can be taken. Words go on to a new line by Shift and Enter.
 */
export function SheetField({ field, onDone }: { readonly field: FieldAsk; readonly onDone: () => void }) {
  const { sheets } = useApp();
  const [text, setText] = useState(field.value);
  const [error, setError] = useState<string | null>(null);
  const input = useRef<HTMLInputElement & HTMLTextAreaElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const done = useRef(false);

  useLayoutEffect(() => {
    const view = sheets.views()[field.sheet];
    const sheet = sheetElement(field.sheet)?.getBoundingClientRect();
    if (!box.current || !view || !sheet) return;
    const at = toScreen(field.at, view);
    const { width, height } = box.current.getBoundingClientRect();
    const [x, y] = field.lines ? [at.x, at.y] : [at.x - width / 2, at.y - height / 2];
    const within = (low: number, wish: number, high: number) =>
      Math.round(Math.max(low, Math.min(wish, high)));
    box.current.style.left = `${within(sheet.left + MARGIN, sheet.left + x, sheet.right - width - MARGIN)}px`;
    box.current.style.top = `${within(sheet.top + MARGIN, sheet.top + y, sheet.bottom - height - MARGIN)}px`;
    input.current?.focus({ preventScroll: true });
    input.current?.select();
  }, [field, sheets]);

  const close = (backToSheet: boolean) => {
    done.current = true;
    onDone();
    if (backToSheet) sheetElement(field.sheet)?.focus({ preventScroll: true });
  };
  const take = (leaving: boolean) => {
    if (done.current) return;
    if (text === field.value) return close(!leaving);
    const why = field.commit(text);
    if (why === null || leaving) return close(!leaving);
    setError(why);
  };
  const leave = useRef(take);
  leave.current = take;
  useEffect(() => {
    // A sheet that is scrolled goes away from under its field.
    const scrolled = () => leave.current(true);
    window.addEventListener('wheel', scrolled, { passive: true });
    return () => window.removeEventListener('wheel', scrolled);
  }, []);

  const props = {
    ref: input,
    value: text,
    'aria-label': field.label,
    'aria-invalid': error !== null,
    'aria-describedby': error === null ? undefined : 'sheet-field-error',
    spellCheck: field.lines === true,
    autoComplete: 'off',
    onChange: (event: { target: { value: string } }) => {
      setText(event.target.value);
      setError(null);
    },
    onBlur: () => take(true),
    onKeyDown: (event: React.KeyboardEvent) => {
      if (event.key === 'Enter' && !event.shiftKey) {
        event.preventDefault();
        take(false);
      }
      if (event.key === 'Escape') {
        event.stopPropagation();
        close(true);
      }
    },
  };
  return (
    <div className="sheet-field" ref={box}>
      {field.lines ? (
        <textarea {...props} rows={3} placeholder={words.sheets.field.note} />
      ) : (
        <input {...props} />
      )}
      {error !== null && (
        <p className="sheet-field-error" id="sheet-field-error" role="alert">
          {error}
        </p>
      )}
    </div>
  );
}

function sheetElement(sheet: SheetId): HTMLElement | null {
  return document.querySelector<HTMLElement>(`[data-sheet="${sheet}"]`);
}

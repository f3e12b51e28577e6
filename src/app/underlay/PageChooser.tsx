import { useEffect, useRef, useState } from 'react';
import { Label, ListBox, ListBoxItem } from 'react-aria-components';
import type { Source } from '../../files/underlay/source.ts';
import { words } from '../../words/index.ts';

const says = words.underlay.place;

interface PageChooserProps {
  readonly source: Source;
  readonly page: number;
  readonly onChoose: (page: number) => void;
}

/** The pages of a document, small; each is drawn when it comes into view. */
export function PageChooser({ source, page, onChoose }: PageChooserProps) {
  const pages = Array.from({ length: source.pages }, (_, i) => i + 1);
  return (
    <div className="field">
      <Label id="pages-label">{says.page}</Label>
      <ListBox
        className="pages"
        aria-labelledby="pages-label"
        layout="grid"
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[page]}
        onSelectionChange={(keys) => {
          const [next] = keys === 'all' ? [] : [...keys];
          if (next !== undefined) onChoose(Number(next));
        }}
      >
        {pages.map((number) => (
          <ListBoxItem
            key={number}
            id={number}
            textValue={says.pageNumber(number)}
            aria-label={says.pageNumber(number)}
            className="page"
          >
            <SmallPage source={source} page={number} />
            <span>{number}</span>
          </ListBoxItem>
        ))}
      </ListBox>
    </div>
  );
}

function SmallPage({ source, page }: { source: Source; page: number }) {
  const frame = useRef<HTMLSpanElement>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const gone = new AbortController();
    const draw = async () => {
      const canvas = await source.preview(page, gone.signal);
      if (canvas && !gone.signal.aborted) element.replaceChildren(canvas.element);
    };
    const observer = new IntersectionObserver((entries) => {
      if (!entries.some((entry) => entry.isIntersecting)) return;
      observer.disconnect();
      draw().catch(() => {
        if (!gone.signal.aborted) setFailed(true);
      });
    });
    observer.observe(element);
    return () => {
      observer.disconnect();
      gone.abort();
    };
  }, [source, page]);
  return (
    <span className="small-page" aria-hidden="true">
      <span ref={frame} />
      {failed && says.notDrawn}
    </span>
  );
}

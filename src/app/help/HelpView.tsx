import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Button, Heading, Input, Label, TextField } from 'react-aria-components';
import type { HelpBlock, HelpSection } from '../../words/en/help.ts';
import { words } from '../../words/index.ts';
import { useApp, useUi } from '../context.ts';
import { FullView } from '../FullView.tsx';
import { startGuide } from '../guide/guide.ts';
import { Marked } from '../Marked.tsx';
import { ShortcutGroups } from '../ShortcutGroups.tsx';
import { Glossary, glossaryHas } from './Glossary.tsx';
import { findHelp } from './search.ts';
import './help.css';

const says = words.help.view;

/** The help over the whole window; closing it leads back to the desk as it was. */
export default function HelpView() {
  const { ui } = useApp();
  const open = useUi((state) => state.help !== null);
  const close = () => ui.setState({ help: null });
  return (
    <FullView name="help" label={says.title} isOpen={open} onClose={close}>
      <Page close={close} />
    </FullView>
  );
}

function Page({ close }: { close: () => void }) {
  const app = useApp();
  const wanted = useUi((state) => state.help?.section ?? null);
  const [typed, setTyped] = useState('');
  const page = useRef<HTMLElement>(null);
  const found = findHelp(words.help.sections, typed);
  const withGlossary =
    typed.trim() !== '' && !found.some(({ id }) => id === 'glossary') && glossaryHas(typed)
      ? [...found, ...words.help.sections.filter(({ id }) => id === 'glossary')]
      : found;

  const goTo = (id: string) => {
    const heading = page.current?.querySelector<HTMLElement>(`#help-${id}`);
    heading?.scrollIntoView({ block: 'start' });
    heading?.focus({ preventScroll: true });
  };
  useEffect(() => {
    if (wanted) page.current?.querySelector(`#help-${wanted}`)?.scrollIntoView({ block: 'start' });
  }, [wanted]);

  return (
    <>
      <header className="help-bar">
        <Heading slot="title">{says.title}</Heading>
        <TextField className="help-search" value={typed} onChange={setTyped} autoFocus>
          <Label>{says.search}</Label>
          <Input type="search" placeholder={says.hint} spellCheck={false} autoComplete="off" />
        </TextField>
        <span className="help-buttons">
          <Button
            className="button"
            onPress={() => {
              close();
              startGuide(app);
            }}
          >
            {says.guide}
          </Button>
          <Button className="button primary" onPress={close}>
            {says.back}
          </Button>
        </span>
      </header>
      <div className="help-body">
        <nav className="help-contents" aria-label={says.contents}>
          <ul>
            {withGlossary.map(({ id, title }) => (
              <li key={id}>
                <Button className="help-link" onPress={() => goTo(id)}>
                  {title}
                </Button>
              </li>
            ))}
          </ul>
        </nav>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
        <section className="help-page" ref={page} tabIndex={0} aria-label={says.title}>
          <p className="unseen" role="status">
            {typed.trim() === '' ? '' : says.found(words.counts.sections(withGlossary.length))}
          </p>
          {withGlossary.length === 0 && <p className="empty">{says.none(typed.trim())}</p>}
          {withGlossary.map((section) => (
            <Section key={section.id} section={section} typed={typed} />
          ))}
        </section>
      </div>
    </>
  );
}

function Section({ section, typed }: { section: HelpSection; typed: string }) {
  const { id, title, blocks } = section;
  return (
    <section aria-labelledby={`help-${id}`}>
      <h2 id={`help-${id}`} tabIndex={-1}>
        {title}
      </h2>
      {blocks.map((block, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a piece has no other name than its place
        <Block key={i} block={block} />
      ))}
      {id === 'keyboard' && <ShortcutGroups />}
      {id === 'glossary' && <Glossary typed={typed} />}
      {id === 'files' && typed.trim() === '' && <Kept />}
    </section>
  );
}

function Block({ block }: { block: HelpBlock }): ReactNode {
  switch (block.kind) {
    case 'heading':
      return <h3>{block.text}</h3>;
    case 'caution':
      return (
        <p className="caution">
          <Marked text={block.text} />
        </p>
      );
    case 'code':
      return (
        <pre>
          <code>{block.text}</code>
        </pre>
      );
    case 'text':
      return (
        <p>
          <Marked text={block.text} />
        </p>
      );
    case 'steps':
      return <ol>{block.items.map(item)}</ol>;
    case 'list':
      return <ul>{block.items.map(item)}</ul>;
  }
}

const item = (text: string) => (
  <li key={text}>
    <Marked text={text} />
  </li>
);

/** Whether this very browser would open the program without a network now. */
function Kept() {
  const kept = useUi((state) => state.keptOffline);
  return <p className="help-kept">{kept ? words.offline.kept.yes : words.offline.kept.no}</p>;
}

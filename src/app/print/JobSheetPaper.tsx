import type { JobSheet, SheetBlock, TitleBlock } from '../../files/job-sheet/types.ts';
import { Block } from './Block.tsx';
import './paper.css';

/** A job sheet as one long paper; the printer cuts it into pages. */
export function JobSheetPaper({ sheet: { title, sections } }: { sheet: JobSheet }) {
  return (
    <article className="paper" lang="en">
      <style>{pageRules(title)}</style>
      <Title title={title} />
      {sections.map(({ id, title: heading, newPage, blocks }) => (
        <section key={id} className={newPage ? 'paper-section new-page' : 'paper-section'} data-section={id}>
          <h2>{heading}</h2>
          {blocks.map((block) => (
            <Block key={keyOf(block)} block={block} />
          ))}
        </section>
      ))}
    </article>
  );
}

/** The job and its scheme stand large; the other facts below them. */
function Title({ title: { heading, job, scheme, facts } }: { title: TitleBlock }) {
  const others = facts.filter(({ text }) => text !== job && text !== scheme);
  return (
    <header className="paper-title">
      <p className="paper-kind">{heading}</p>
      <h1>{job}</h1>
      <p className="paper-scheme">{scheme}</p>
      <dl>
        {others.map(({ label, text }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </header>
  );
}

/** What stands at the foot of every page; only the rules of a page can say it. */
function pageRules({ footer }: TitleBlock): string {
  const text = footer.replace(/[^\p{L}\p{N}\p{P}\p{Zs}\p{S}]|["\\<]/gu, ' ');
  const look = 'font: 7pt "Inter Variable", sans-serif; color: #444; vertical-align: top; padding-top: 2mm;';
  return `@page job-sheet {
  margin: 12mm 12mm 15mm;
  @bottom-left { content: "${text}"; ${look} }
  @bottom-right { content: counter(page) " / " counter(pages); ${look} white-space: nowrap; }
}`;
}

/** What a block is, told apart from its neighbours. */
function keyOf(block: SheetBlock): string {
  switch (block.kind) {
    case 'table':
    case 'formula':
      return `${block.kind} ${block.id}`;
    case 'text':
    case 'heading':
      return `${block.kind} ${block.text}`;
    case 'drawing':
      return `drawing ${block.drawing}`;
    case 'chart':
      return `chart ${block.chart} ${block.speed}`;
    case 'findings':
      return `findings ${block.none}`;
    default:
      return block.kind;
  }
}

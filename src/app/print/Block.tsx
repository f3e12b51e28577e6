import type { FormulaBlock, SheetBlock, SheetFinding } from '../../files/job-sheet/types.ts';
import { words } from '../../words/index.ts';
import { Runs } from '../explain/Runs.tsx';
import { ChartFigure } from './ChartFigure.tsx';
import { DrawingFigure } from './DrawingFigure.tsx';
import { Table } from './Table.tsx';

const says = words.jobSheet.print;

/** One block of a job sheet. */
export function Block({ block }: { block: SheetBlock }) {
  switch (block.kind) {
    case 'text':
      return <p className={block.quiet ? 'paper-quiet' : undefined}>{block.text}</p>;
    case 'heading':
      return <h3>{block.text}</h3>;
    case 'facts':
      return (
        <dl className="paper-facts">
          {block.facts.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      );
    case 'cautions':
      return (
        <ul className="paper-cautions">
          {block.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      );
    case 'findings':
      return block.findings.length === 0 ? (
        <p>{block.none}</p>
      ) : (
        <ul className="paper-findings">
          {block.findings.map((finding) => (
            <FindingItem key={finding.id} finding={finding} />
          ))}
        </ul>
      );
    case 'table':
      return <Table table={block} />;
    case 'drawing':
      return <DrawingFigure block={block} />;
    case 'chart':
      return <ChartFigure block={block} />;
    case 'formula':
      return <Formula block={block} />;
    case 'signatures':
      return (
        <ul className="paper-signatures">
          {block.lines.map((line) => (
            <li key={line}>
              <span>{line}</span>
              <span>{words.jobSheet.signatures.name}</span>
              <span>{words.jobSheet.signatures.signature}</span>
            </li>
          ))}
        </ul>
      );
  }
}

function FindingItem({
  finding: { severity, mark, message, place, remedy, source },
}: {
  finding: SheetFinding;
}) {
  return (
    <li data-severity={severity}>
      <strong className="paper-mark">{mark}</strong>
      <span>{message}</span>
      {place !== '' && (
        <span className="paper-aside">
          {says.where} {place}.
        </span>
      )}
      {remedy !== '' && (
        <span className="paper-remedy">
          <strong>{says.remedy}</strong> {remedy}
        </span>
      )}
      {source !== '' && (
        <span className="paper-aside">
          {says.source} {source}
        </span>
      )}
    </li>
  );
}

/** Rows from which a formula may go on to the next page. */
const MANY_ROWS = 18;

function Formula({
  block: { number, title, runs, inputs, sources, notes, tables },
}: {
  block: FormulaBlock;
}) {
  const long = tables.reduce((sum, { rows }) => sum + rows.length, 0) > MANY_ROWS;
  return (
    <section className={long ? 'paper-formula long' : 'paper-formula'} aria-label={`${number} ${title}`}>
      <div className="paper-formula-head">
        <h3>
          <span>{number}</span> {title}
        </h3>
        <p className="paper-rule">
          <Runs runs={runs} />
        </p>
        {inputs.length > 0 && (
          <ul className="paper-inputs">
            {inputs.map((input) => (
              <li key={`${input.symbol} ${input.name}`}>
                <span className="paper-symbol">
                  <Runs runs={input.runs} />
                </span>{' '}
                {input.name}
                {input.unit !== '' && `, ${input.unit}`}
                {input.from !== undefined && <span className="paper-aside"> ({input.from})</span>}
              </li>
            ))}
          </ul>
        )}
      </div>
      {tables.map((table) => (
        <Table key={`${table.id} ${table.columns.map(({ head }) => head).join()}`} table={table} />
      ))}
      {sources.length > 0 && (
        <ul className="paper-sources">
          {sources.map((source) => (
            <li key={source}>{source}</li>
          ))}
        </ul>
      )}
      {notes.length > 0 && (
        <ul className="paper-sources notes">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

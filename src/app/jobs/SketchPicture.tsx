import type { SchemeSummary, Sketch } from '../../files/jobs/cards.ts';
import { legsOf } from '../../files/jobs/changes.ts';
import { words } from '../../words/index.ts';

interface SketchProps {
  readonly sketch: Sketch | null;
  readonly summary: readonly SchemeSummary[];
  readonly className?: string;
}

/** The small drawing of a job; a word where there is none. Its name stands beside it, so it has none of its own. */
export function SketchPicture({ sketch, summary, className = 'sketch' }: SketchProps) {
  if (sketch)
    return (
      <svg className={className} viewBox={sketch.viewBox} aria-hidden="true">
        {sketch.parts.map(({ fill, walls }) => (
          <g key={`${fill} ${walls}`}>
            <path className="sketch-fill" d={fill} />
            <path className="sketch-walls" d={walls} vectorEffect="non-scaling-stroke" />
          </g>
        ))}
      </svg>
    );
  const { noDrawing, tooLong } = words.jobs.view;
  return (
    <span className={`${className} sketch-none`} aria-hidden="true">
      {legsOf(summary) === 0 ? noDrawing : tooLong}
    </span>
  );
}

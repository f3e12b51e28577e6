import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import type { SheetId } from '../../graph/sheet.ts';
import { currentStyle, formatDay, type Style } from '../../units/index.ts';
import { cautionLines } from '../../words/cautions.ts';
import { words } from '../../words/index.ts';
import { programVersion } from '../version.ts';
import { appendixBlocks } from './appendix.ts';
import { chartBlocks } from './charts.ts';
import { findingBlocks } from './findings.ts';
import { fingerprintOf } from './fingerprint.ts';
import { breath, inSteps } from './in-steps.ts';
import { partBlocks } from './parts.ts';
import { resultBlocks } from './results.ts';
import { routeBlocks } from './route.ts';
import { type Subject, subjectOf } from './subject.ts';
import type { Fingerprint, JobSheet, SectionId, SheetBlock, SheetSection, TitleBlock } from './types.ts';

export interface SheetOptions {
  /** When it is made. */
  readonly date: Date;
  /** How dates, numbers and fractions of an inch are written; as on the desk where absent. */
  readonly style?: Style;
  /** Ends the work with its reason. */
  readonly signal?: AbortSignal;
}

const say = words.jobSheet;

/**
 * What the job sheet of a scheme says, solved afresh, in the job's units. The page can answer between its parts.
 *
 * @throws RangeError if the job has no scheme of that id; the signal's reason once it is aborted
 */
export async function jobSheetOf(job: Job, schemeId: string, options: SheetOptions): Promise<JobSheet> {
  const { date, style = currentStyle(), signal } = options;
  return await inSteps(style, sheetOf(job, schemeId, date), async () => {
    await breath();
    signal?.throwIfAborted();
  });
}

/** The most legs, counted once for every fan speed, of a sheet that is made at once. */
const atOnce = 600;

/**
 * The same sheet at once, as the desk writes: a page that is being printed waits for nothing. Null where that would
 * hold the page for seconds.
 *
 * @throws RangeError if the job has no scheme of that id
 */
export function jobSheetNow(job: Job, schemeId: string, date: Date): JobSheet | null {
  const speeds = job.hoods.reduce((sum, hood) => sum + hood.speeds.length, 0);
  if (schemeOf(job, schemeId).segments.length * Math.max(1, speeds) > atOnce) return null;
  const work = sheetOf(job, schemeId, date);
  for (;;) {
    const next = work.next();
    if (next.done) return next.value;
  }
}

function* sheetOf(job: Job, schemeId: string, date: Date): Generator<void, JobSheet, undefined> {
  const fingerprint = fingerprintOf(job);
  const subject = subjectOf(job, schemeId);
  yield;
  const appendix = yield* appendixBlocks(subject, fingerprint);
  const section = (id: SectionId, blocks: readonly SheetBlock[], newPage = false): SheetSection => ({
    id,
    title: say.sections[id],
    newPage,
    blocks,
  });
  const drawn = subject.solution.route.segments.size > 0;
  return {
    title: titleOf(subject, fingerprint, date),
    sections: [
      section('summary', [{ kind: 'cautions', cautions: cautionLines() }]),
      section('results', resultBlocks(subject)),
      section('drawings', drawingBlocks(subject), drawn),
      section('route', routeBlocks(subject), drawn),
      section('charts', chartBlocks(subject)),
      section('findings', findingBlocks(subject), drawn),
      section('parts', partBlocks(subject), drawn),
      section('signatures', [{ kind: 'signatures', lines: say.signatures.lines }]),
      section('appendix', appendix, true),
    ],
  };
}

function titleOf({ job, scheme, units }: Subject, fingerprint: Fingerprint, date: Date): TitleBlock {
  const title = job.title.trim() || say.title.noTitle;
  const day = formatDay(date);
  const { short } = fingerprint;
  return {
    heading: say.heading,
    job: title,
    schemeId: scheme.id,
    scheme: scheme.name,
    units,
    date: day,
    made: date.toISOString(),
    program: say.program,
    version: programVersion,
    fingerprint,
    facts: [
      { label: say.title.job, text: title },
      { label: say.title.scheme, text: scheme.name },
      { label: say.title.units, text: say.title[units] },
      { label: say.title.date, text: day },
      { label: say.title.program, text: say.title.version(say.program, programVersion) },
      { label: say.title.fingerprint, text: short },
    ],
    footer: say.title.footer(title, scheme.name, short),
  };
}

const views: readonly (SheetId | 'isometric')[] = ['floor', 'section-x', 'section-y', 'isometric'];

/** The sheets and the view from an angle, where there is any duct to be drawn. */
function drawingBlocks({ scheme, solution }: Subject): SheetBlock[] {
  if (solution.route.segments.size === 0) return [{ kind: 'text', text: say.route.empty }];
  return [
    ...views.map((drawing): SheetBlock => {
      const caption = say.drawings.captions[drawing];
      return {
        kind: 'drawing',
        drawing,
        caption,
        description: say.drawings.description(caption, scheme.name),
      };
    }),
    { kind: 'text', text: say.drawings.measure, quiet: true },
  ];
}

import { useState } from 'react';
import { Checkbox, Label, ProgressBar, Radio, RadioGroup } from 'react-aria-components';
import type { Picture, PictureMeasure } from '../../files/underlay/picture.ts';
import type { SheetId } from '../../graph/sheet.ts';
import { formatLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUnderlays } from '../context.ts';
import { DialogBox, DialogFoot } from '../DialogBox.tsx';
import type { Stage } from './desk.ts';
import { OpacitySlider } from './OpacitySlider.tsx';
import { PageChooser } from './PageChooser.tsx';
import { ScaleChooser } from './ScaleChooser.tsx';
import { sheetNames } from './sheet-names.ts';

const says = words.underlay.place;

/** Everything between choosing a file and seeing it under a sheet. */
export default function PlaceDialog() {
  const { underlays } = useApp();
  const { stage } = useUnderlays();
  return (
    <DialogBox
      className="place-underlay"
      title={headingOf(stage)}
      isOpen={stage.stage !== 'idle'}
      isDismissable={false}
      onClose={underlays.cancel}
    >
      {stage.stage === 'reading' && <Reading what={stage.what} />}
      {stage.stage === 'choosing' && <Choices key={stage.source.name} {...stage} />}
    </DialogBox>
  );
}

function headingOf(stage: Stage): string {
  if (stage.stage === 'reading') return stage.name;
  return stage.stage === 'choosing' ? says.heading(stage.source.name) : '';
}

function Reading({ what }: { what: string }) {
  const { underlays } = useApp();
  return (
    <>
      <ProgressBar isIndeterminate className="progress" aria-label={what}>
        <span className="progress-bar" />
        <span>{what}</span>
      </ProgressBar>
      <DialogFoot onLeave={underlays.cancel} leave="cancel" />
    </>
  );
}

const sheets: readonly SheetId[] = ['floor', 'section-x', 'section-y'];

type Choosing = Extract<Stage, { stage: 'choosing' }>;

function Choices({ source, picture, sheet: wanted }: Choosing) {
  const { underlays } = useApp();
  const [sheet, setSheet] = useState<SheetId>(wanted);
  const [page, setPage] = useState(1);
  const [ratio, setRatio] = useState<number | null>(null);
  const [opacity, setOpacity] = useState(picture?.bare ? 0.9 : 0.6);
  const [locked, setLocked] = useState(true);
  const paper = source.kind === 'pdf' || picture?.measure.kind === 'paper';
  return (
    <>
      {picture && <Preview picture={picture} />}
      {source.pages > 1 && <PageChooser source={source} page={page} onChoose={setPage} />}
      <RadioGroup
        className="field choice"
        value={sheet}
        onChange={(value) => setSheet(value as SheetId)}
        orientation="horizontal"
      >
        <Label>{says.sheet}</Label>
        {sheets.map((id) => (
          <Radio key={id} value={id} className="radio">
            {sheetNames[id]}
          </Radio>
        ))}
      </RadioGroup>
      {paper ? <ScaleChooser ratio={ratio} onChoose={setRatio} /> : <Told measure={picture?.measure} />}
      <OpacitySlider value={opacity} onChange={setOpacity} />
      <Checkbox className="tick" isSelected={locked} onChange={setLocked}>
        <span className="tick-box" aria-hidden="true" />
        {says.lock}
      </Checkbox>
      <DialogFoot
        onLeave={underlays.cancel}
        main={{
          label: says.place,
          onPress: () => void underlays.place({ sheet, page, ratio, opacity, locked }),
        }}
      />
    </>
  );
}

function Preview({ picture }: { picture: Picture }) {
  return (
    <div className="underlay-preview">
      <img src={picture.image} alt="" />
    </div>
  );
}

/** What is known of the scale before it is placed. */
function Told({ measure }: { measure: PictureMeasure | undefined }) {
  const units = useBoard((state) => state.units);
  const { stage } = useUnderlays();
  if (measure?.kind !== 'real' || stage.stage !== 'choosing' || !stage.picture)
    return <p className="hint">{says.scaleUnknown}</p>;
  const [width, height] = stage.picture.size;
  const across = formatLength(width * measure.scale, units);
  const down = formatLength(height * measure.scale, units);
  return (
    <p className="hint">
      {measure.assumed ? says.unitAssumed(measure.assumed, across, down) : says.ownScale(across, down)}
    </p>
  );
}

import { useMemo, useState } from 'react';
import { pictureSize } from '../../files/drawing-out/png.ts';
import { formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { DialogBox } from '../DialogBox.tsx';
import { SavingFoot } from '../saving/SavingFoot.tsx';
import { boardFor, drawingFile, kindOf, type Wishes } from './make.ts';
import { Preview } from './Preview.tsx';
import { WishFields } from './WishFields.tsx';
import './drawing-out.css';

const says = words.drawings.dialog;

/** Saves a sheet, or all of them, as SVG, PNG or DXF: what comes out is seen before it is saved. */
export default function DrawingDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.drawing);
  const close = () => ui.setState({ drawing: false });
  return (
    <DialogBox width="widest" title={says.title} isOpen={open} onClose={close}>
      <Choosing onClose={close} />
    </DialogBox>
  );
}

const first: Wishes = {
  format: 'svg',
  sheet: 'all',
  scale: null,
  theme: 'print',
  paper: true,
  dpi: 300,
  values: true,
  font: true,
};

function Choosing({ onClose }: { onClose: () => void }) {
  const { board: store } = useApp();
  const [wishes, setWishes] = useState(first);
  const job = useBoard((state) => state.job);
  const solution = useBoard((state) => state.solution);
  const speed = useBoard((state) => state.speed);
  const colourBy = useBoard((state) => state.colourBy);
  const board = useMemo(
    () => boardFor({ job, solution, speed, colourBy }, wishes),
    [job, solution, speed, colourBy, wishes],
  );
  const empty = solution.route.segments.size === 0;
  const tooLarge = wishes.format === 'png' && pictureSize(board, wishes.dpi).tooLarge;

  return (
    <>
      <div className="drawing-choices">
        <WishFields wishes={wishes} scale={board.scale} units={job.units} onChange={setWishes} />
        <div className="drawing-shown">
          {empty ? (
            <p className="drawing-empty">{says.nothing}</p>
          ) : (
            <Preview board={board} wishes={wishes} label={says.preview(says.sheets[wishes.sheet])} />
          )}
          <Size board={board} wishes={wishes} />
        </div>
      </div>
      <SavingFoot
        save={says.save(says.formats[wishes.format])}
        isDisabled={empty || tooLarge}
        kind={() => kindOf(store.getState(), wishes)}
        make={(progress) => drawingFile(store.getState(), wishes, progress)}
        says={{ ...says, failed: (why) => ({ title: says.failed, text: why, details: [] }) }}
        onClose={onClose}
      />
    </>
  );
}

/** How large the drawing becomes, or why it cannot be made. */
function Size({ board, wishes }: { board: ReturnType<typeof boardFor>; wishes: Wishes }) {
  const round = (mm: number) => formatTrimmed(Math.round(mm), 0);
  const paper = says.size(round(board.width), round(board.height));
  if (wishes.format === 'dxf')
    return <p className="drawing-size">{wishes.sheet === 'space' ? says.space : says.full}</p>;
  if (wishes.format === 'svg') return <p className="drawing-size">{paper}</p>;
  const { width, height, tooLarge, finest } = pictureSize(board, wishes.dpi);
  if (tooLarge)
    return (
      <p className="drawing-size field-error" role="alert">
        {says.tooLarge(String(finest))}
      </p>
    );
  return <p className="drawing-size">{`${says.pixels(round(width), round(height))}, ${paper}`}</p>;
}

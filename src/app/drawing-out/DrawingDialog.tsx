import { useEffect, useMemo, useRef, useState } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { pictureSize } from '../../files/drawing-out/png.ts';
import { saveFile } from '../../files/save-file.ts';
import { formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
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
    <ModalOverlay className="overlay" isOpen={open} isDismissable onOpenChange={(next) => !next && close()}>
      <Modal className="modal drawing-modal">
        <Dialog className="dialog">
          <Heading slot="title">{says.title}</Heading>
          <Choosing onClose={close} />
        </Dialog>
      </Modal>
    </ModalOverlay>
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
};

function Choosing({ onClose }: { onClose: () => void }) {
  const { board: store, say, ui } = useApp();
  const [wishes, setWishes] = useState(first);
  const job = useBoard((state) => state.job);
  const solution = useBoard((state) => state.solution);
  const speed = useBoard((state) => state.speed);
  const colourBy = useBoard((state) => state.colourBy);
  const board = useMemo(
    () => boardFor({ job, solution, speed, colourBy }, wishes),
    [job, solution, speed, colourBy, wishes],
  );
  const [share, setShare] = useState<number | null>(null);
  const work = useRef<AbortController | null>(null);
  useEffect(() => () => work.current?.abort(), []);

  const empty = solution.route.segments.size === 0;
  const tooLarge = wishes.format === 'png' && pictureSize(board, wishes.dpi).tooLarge;
  const save = async () => {
    const control = new AbortController();
    work.current = control;
    setShare(0);
    try {
      const shown = store.getState();
      const kind = kindOf(shown, wishes);
      const progress = { signal: control.signal, onShare: setShare };
      const saved = await saveFile(drawingFile(shown, wishes, progress), kind);
      if (saved) {
        say(says.saved(kind.name));
        onClose();
      }
    } catch (error) {
      if (!control.signal.aborted)
        ui.setState({ notice: { title: says.failed, text: messageOf(error), details: [] } });
    } finally {
      work.current = null;
      setShare(null);
    }
  };

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
      <div className="drawing-foot">
        <p className="drawing-progress" role="status">
          {share !== null && says.working(`${Math.round(share * 100)} %`)}
        </p>
        <div className="dialog-buttons">
          {share === null ? (
            <Button className="button" onPress={onClose}>
              {says.close}
            </Button>
          ) : (
            <Button className="button" onPress={() => work.current?.abort()}>
              {says.cancel}
            </Button>
          )}
          <Button
            className="button primary"
            autoFocus
            isDisabled={empty || tooLarge || share !== null}
            onPress={() => void save()}
          >
            {says.save(says.formats[wishes.format])}
          </Button>
        </div>
      </div>
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

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

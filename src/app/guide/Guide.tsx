import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { BoardState } from '../../canvas/board.ts';
import { words } from '../../words/index.ts';
import { stressed } from '../../words/strong.ts';
import { useApp, useUi } from '../context.ts';
import { Marked } from '../Marked.tsx';
import { beside } from './beside.ts';
import { endGuide } from './guide.ts';
import { type Place, type Side, steps } from './steps.ts';
import './guide.css';

const says = words.guide.card;

/** How often the marked thing is looked for again while nothing tells that it moved, ms. */
const LOOK = 200;
/** Room between the marked thing and its frame, px. */
const FRAME = 5;
/** Least distance of the frame from the edge of the window, px. */
const SIGHT = 3;

/** The tour: a frame around the real thing and a card beside it that goes on once the thing is done. */
export default function Guide() {
  const at = useUi((state) => state.guide);
  return at === null ? null : <Card key={at} at={at} />;
}

function Card({ at }: { at: number }) {
  const app = useApp();
  const step = steps[at];
  const card = useRef<HTMLElement>(null);
  const place = useFollowed(at);
  const spot = useBeside(card, place, step?.side);
  const { title, text } = step ? words.guide.steps[step.id] : words.guide.last;

  useEffect(() => {
    const heard = stressed(text).map((piece) => piece.text);
    // The first card is looked at; later ones are heard, and leave the hand where it works.
    if (at === 0) card.current?.focus({ preventScroll: true });
    else app.say(`${says.well} ${title}. ${heard.join('')}`);
  }, [at, title, text, app]);

  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      const elsewhere =
        event.target instanceof Element && event.target.closest('[role="dialog"], input, textarea');
      if (event.key === 'Escape' && !event.defaultPrevented && !elsewhere) endGuide(app);
    };
    window.addEventListener('keydown', hear);
    return () => window.removeEventListener('keydown', hear);
  }, [app]);

  return (
    <>
      {place && <div className="guide-light" aria-hidden="true" style={framed(place)} />}
      <section ref={card} className="guide-card" tabIndex={-1} aria-label={says.label} style={spot}>
        {step && <p className="guide-count">{says.of(at + 1, steps.length)}</p>}
        <h2>{title}</h2>
        <p>
          <Marked text={text} />
        </p>
        {step ? (
          <p className="guide-keys">
            {says.keyboard} {words.guide.steps[step.id].keys}
          </p>
        ) : (
          <p className="guide-keys">{words.guide.last.caution}</p>
        )}
        <div className="guide-buttons">
          {step ? (
            <>
              <Button className="button" onPress={() => app.ui.setState({ guide: at + 1 })}>
                {says.next}
              </Button>
              <Button className="text-button" onPress={() => endGuide(app)}>
                {says.end}
              </Button>
            </>
          ) : (
            <Button className="button primary" onPress={() => endGuide(app)}>
              {says.done}
            </Button>
          )}
        </div>
        {step && <p className="guide-escape">{says.escape}</p>}
      </section>
    </>
  );
}

/** Follows the marked thing about the window, and goes on to the next step once it was done. */
function useFollowed(at: number): Place | null {
  const app = useApp();
  const [place, setPlace] = useState<Place | null>(null);
  useEffect(() => {
    const step = steps[at];
    if (!step) return;
    step.begin?.(app);
    const from: BoardState = app.board.getState();
    let shown: Place | null = null;
    let opened = false;
    const look = () => {
      const open = step.during?.() ?? false;
      if (open) opened = true;
      else if (opened || step.done?.(app, from)) {
        app.ui.setState({ guide: at + 1 });
        return;
      }
      const now = step.place(app);
      if (same(now, shown)) return;
      shown = now;
      setPlace(now);
    };
    look();
    const timer = setInterval(look, LOOK);
    const stop = app.board.subscribe(look);
    // What opens over the desk becomes a child of the page, and may be gone before it is looked for again.
    const opening = new MutationObserver(look);
    opening.observe(document.body, { childList: true });
    window.addEventListener('resize', look);
    return () => {
      clearInterval(timer);
      stop();
      opening.disconnect();
      window.removeEventListener('resize', look);
    };
  }, [at, app]);
  return place;
}

/** The frame around a place, in full sight where the place touches the edge of the window. */
function framed({ left, top, width, height }: Place): Place {
  const [x, y] = [Math.max(SIGHT, left - FRAME), Math.max(SIGHT, top - FRAME)];
  return {
    left: x,
    top: y,
    width: Math.min(window.innerWidth - SIGHT, left + width + FRAME) - x,
    height: Math.min(window.innerHeight - SIGHT, top + height + FRAME) - y,
  };
}

function same(a: Place | null, b: Place | null): boolean {
  if (a === null || b === null) return a === b;
  return a.left === b.left && a.top === b.top && a.width === b.width && a.height === b.height;
}

/** Where the card stands: beside what it is about. */
function useBeside(card: RefObject<HTMLElement | null>, place: Place | null, side: Side | undefined) {
  const [spot, setSpot] = useState({ left: 0, top: 0 });
  useLayoutEffect(() => {
    const box = card.current;
    if (!box) return;
    const size = { width: box.offsetWidth, height: box.offsetHeight };
    setSpot(beside(place, size, { width: window.innerWidth, height: window.innerHeight }, side));
  }, [card, place, side]);
  return spot;
}

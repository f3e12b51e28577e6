import DxfParser from 'dxf-parser';
import { drawDxf } from './dxf.ts';
import { Refused } from './picture.ts';
import { cleanSvg } from './svg.ts';

/** Turns the texts of drawings into pictures, away from the page so that it stays alive. */
self.onmessage = ({ data }: MessageEvent<{ kind: 'svg' | 'dxf'; text: string }>) => {
  try {
    const value =
      data.kind === 'svg'
        ? cleanSvg(data.text)
        : drawDxf(data.text, (text) => new DxfParser().parseSync(text));
    self.postMessage({ ok: true, value });
  } catch (error) {
    self.postMessage({
      ok: false,
      refused: error instanceof Refused,
      message: String((error as Error).message),
    });
  }
};
